using System.Globalization;
using Foundress.Book;
using Foundress.Book.Demo;
using Foundress.Book.Reporting;
using Foundress.Book.Seasons;
using Foundress.Knowledge;
using Foundress.Reports.Drawing;
using Foundress.Reports.Reporting;
using Foundress.Reports.Tests.Support;

namespace Foundress.Reports.Tests.Drawing;

/// <summary>What the book's own builders make can be drawn as it comes.</summary>
public sealed class DemoDrawingTests
{
    [Fact]
    public void Write_DemoBook_DrawsEveryApiary()
    {
        var today = new DateOnly(2026, 9, 3);
        var knowledge = KnowledgeBase.Load();
        var ledger = new Ledger();
        ledger.Add(DemoBook.Entries(knowledge, DemoBook.DefaultSeed, today));
        var strips = new SeasonStrips(ledger.State, knowledge, CultureInfo.InvariantCulture);
        var apiaries = new List<ApiaryReport>();
        foreach (var apiary in ledger.State.Apiaries.Values)
        {
            var strip = strips.Of(apiary, today);
            apiaries.Add(new(apiary.Name, 1, strip, [], []));
            var root = SvgReader.Parse(SeasonStripDrawing.Draw(strip, "s", DrawingShape.Wide, CultureInfo.InvariantCulture));
            SvgReader.AssertInside(root);
            Assert.Equal(strip.Jars.Count, root.OfClass("fd-jar").Count());
            Assert.Equal(strip.Others.Count, root.OfClass("fd-count").Count());
        }

        Assert.True(apiaries.Sum(apiary => apiary.Strip.Jars.Count) > 50);
        Assert.True(apiaries.Sum(apiary => apiary.Strip.Others.Count) > 5);
        var page = HtmlReport.Write(new("Demo", today.AddYears(-2), today, true, 0.95, "lines", apiaries, []), CultureInfo.InvariantCulture);
        Assert.Contains("Invented data", page, StringComparison.Ordinal);
    }
}
