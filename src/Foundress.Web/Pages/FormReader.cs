using System.Globalization;
using Foundress.Book.Wording;
using Foundress.Web.Kit;
using Foundress.Web.Shell;

namespace Foundress.Web.Pages;

/// <summary>Reads the typed texts of a form into values, and gathers what is wrong field by field.</summary>
/// <param name="draft">What was typed.</param>
public sealed class FormReader(FormDraft draft)
{
    private readonly Dictionary<string, string> _problems = [];

    /// <summary>What was typed.</summary>
    public FormDraft Draft => draft;

    /// <summary>Whether every field read so far was in order.</summary>
    public bool Fine => _problems.Count == 0;

    /// <summary>How many fields need a look.</summary>
    public int Count => _problems.Count;

    /// <summary>What is wrong with a field; null when nothing is.</summary>
    public string? this[string field] => _problems.GetValueOrDefault(field);

    /// <summary>Notes what is wrong with a field, unless something already is.</summary>
    public void Add(string field, string problem) => _problems.TryAdd(field, problem);

    /// <summary>A text, or null when it is empty.</summary>
    public string? Text(string field) => draft[field].Trim() is { Length: > 0 } text ? text : null;

    /// <summary>A text that must be given.</summary>
    /// <param name="field">The field.</param>
    /// <param name="missing">What to say when it is empty.</param>
    public string Needed(string field, string missing)
    {
        if (Text(field) is { } text)
            return text;
        Add(field, missing);
        return string.Empty;
    }

    /// <summary>A number, or null when the field is empty.</summary>
    public double? Number(string field, NumberRule rule)
    {
        if (NumberText.Read(draft[field], rule, CultureInfo.CurrentCulture, out var value) is { } problem)
            Add(field, problem);
        return value;
    }

    /// <summary>A day that must be given and must not lie after another.</summary>
    public DateOnly Day(string field, DateOnly latest)
    {
        if (!TryIso(draft[field], out var day))
            Add(field, FormTexts.NoDay);
        else if (day > latest)
            Add(field, FormTexts.FormatDayInFuture(Say.Day(day), Say.Day(latest)));
        else if (day.Year < 1990)
            Add(field, FormTexts.FormatDayBefore1990(Say.Day(day)));
        return day;
    }

    /// <summary>Yes, no, or null when neither was chosen.</summary>
    public bool? YesNo(string field) => draft[field] switch
    {
        "yes" => true,
        "no" => false,
        _ => null,
    };

    /// <summary>Reads the text of a field as a day.</summary>
    public static bool TryIso(string text, out DateOnly day) => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out day);
}
