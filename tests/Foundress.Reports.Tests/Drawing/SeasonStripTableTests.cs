using System.Globalization;
using CsCheck;
using Foundress.Reports.Drawing;
using Foundress.Reports.Tests.Support;

namespace Foundress.Reports.Tests.Drawing;

public sealed class SeasonStripTableTests
{
    [Fact]
    public void Rows_AnyValidStrip_HasARowForEachMark() => Gens.Strip.Sample(
        strip =>
        {
            var rows = SeasonStripTable.Rows(strip, CultureInfo.InvariantCulture);
            var root = SvgReader.Parse(SeasonStripDrawing.Draw(strip, "s", DrawingShape.Wide, CultureInfo.InvariantCulture));
            var drawn = root.Descendants().SelectMany(element => element.Attributes("data-jar")).Select(jar => jar.Value).Order();
            Assert.Equal(drawn, rows.Where(row => row.Kind == StripRowKind.Jar).Select(row => row.Jar!.Value.ToString()).Order());
            Assert.Equal(root.OfClass("fd-due").Count(), rows.Count(row => row.Kind == StripRowKind.Due));
            Assert.Equal(strip.Lines.Count, rows.Count(row => row.Kind == StripRowKind.Line));
            Assert.Equal(strip.Phases.Count, rows.Count(row => row.Kind == StripRowKind.Phase));
            Assert.Equal(rows.Select(row => row.From).Order(), rows.Select(row => row.From));
        },
        iter: 200);

    [Fact]
    public void Rows_NoMites_GivesTheUpperLimit()
    {
        var row = SeasonStripTable.Rows(Invented.Southern(), CultureInfo.InvariantCulture).First(row => row.Kind == StripRowKind.Jar);
        Assert.Equal("0 (upper limit 1.3)", row.Finding);
        Assert.Equal("0 mites, 300 bees, alcohol wash", row.Basis);
    }

    [Fact]
    public void Rows_GermanCulture_WritesItsNumbers()
    {
        var rows = SeasonStripTable.Rows(Invented.Southern(), CultureInfo.GetCultureInfo("de-DE"));
        Assert.Contains(rows, row => row.Finding == "act above 2,5");
        Assert.All(rows, row => Assert.Matches("^[0-9]{1,2} [A-Z][a-z]{2,3} [0-9]{4}", row.When));
    }
}
