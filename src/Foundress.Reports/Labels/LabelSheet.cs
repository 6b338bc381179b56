using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Reports.Drawing;
using Foundress.Reports.Reporting;

namespace Foundress.Reports.Labels;

/// <summary>The sheet of labels to cut out: each opens the page of its colony.</summary>
public static class LabelSheet
{
    /// <summary>The labels of the living colonies of some apiaries.</summary>
    /// <param name="state">The book.</param>
    /// <param name="apiaries">The apiaries, in the order wanted.</param>
    /// <param name="today">The reader's day.</param>
    /// <param name="app">Where the app is opened from the hive, such as <c>https://bees.example/</c>.</param>
    /// <exception cref="ArgumentException">The address is not an absolute http or https address.</exception>
    public static IReadOnlyList<ColonyLabel> Labels(BookState state, IEnumerable<ApiaryId> apiaries, DateOnly today, string app)
    {
        ArgumentNullException.ThrowIfNull(state);
        var at = Address(app) ?? throw new ArgumentException(LabelTexts.FormatNoAddress(app), nameof(app));
        return
        [
            .. apiaries.SelectMany(id => state.ColoniesIn(id, today).Select(colony =>
                new ColonyLabel(state.Apiaries[id].Name, colony.Name, new Uri(at, $"colony/{colony.Id}").AbsoluteUri))),
        ];
    }

    /// <summary>An address of the app as it is used for labels; null when it is none.</summary>
    public static Uri? Address(string app) =>
        Uri.TryCreate(app?.Trim(), UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https" && uri.AbsoluteUri.Length < 200
            ? new Uri(uri.GetLeftPart(UriPartial.Path).TrimEnd('/') + "/")
            : null;

    /// <summary>The sheet as one HTML page that prints on A4 and US letter paper.</summary>
    /// <param name="labels">The labels.</param>
    public static string Page(IReadOnlyList<ColonyLabel> labels)
    {
        ArgumentNullException.ThrowIfNull(labels);
        var page = new Html();
        page.Raw($"<!doctype html>\n<html lang=\"{Languages.Current.Code}\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Element("title", LabelTexts.Title).Raw("<style>\n").Raw(Stylesheet.Labels).Raw("</style>\n</head>\n<body class=\"labelpage\">\n");
        return page.Raw(Labels(labels)).Raw("</body>\n</html>\n").ToString();
    }

    /// <summary>The labels alone. Every text in them is escaped.</summary>
    /// <param name="labels">The labels.</param>
    public static string Labels(IReadOnlyList<ColonyLabel> labels)
    {
        ArgumentNullException.ThrowIfNull(labels);
        var page = new Html();
        page.Raw("<ul class=\"labels\">\n");
        foreach (var label in labels)
        {
            page.Raw("<li>").Raw(QrPicture.Draw(label.Address)).Raw("<div>").Element("strong", label.Colony).Element("span", label.Apiary)
                .Raw("</div></li>\n");
        }

        return page.Raw("</ul>\n").ToString();
    }
}
