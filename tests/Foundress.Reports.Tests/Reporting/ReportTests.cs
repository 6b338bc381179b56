using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Foundress.Reports.Reporting;
using Foundress.Reports.Tests.Support;

namespace Foundress.Reports.Tests.Reporting;

public sealed class ReportTests
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    [Fact]
    public void WriteText_InventedSeason_MatchesStoredText() => Approve.Matches("report.txt", TextReport.Write(Invented.Report(), English));

    [Fact]
    public void WriteJson_InventedSeason_MatchesStoredText() => Approve.Matches("report.json", JsonReport.Write(Invented.Report()) + "\n");

    [Fact]
    public void WriteHtml_InventedSeason_MatchesStoredPage() => Approve.Matches("report.html", HtmlReport.Write(Invented.Report(), English));

    [Fact]
    public void WriteText_InventedSeason_KeepsToTheWidth() =>
        Assert.All(TextReport.Write(Invented.Report(), English).Split('\n'), line => Assert.InRange(line.Length, 0, 100));

    [Fact]
    public void WriteHtml_InventedSeason_HoldsNoScriptAndNoInlineStyle()
    {
        var html = HtmlReport.Write(Invented.Report(), English);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotMatch(new Regex("<[^>]* style="), html);
        Assert.DoesNotContain("http", html.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Single(Regex.Matches(html, "<style"));
    }

    [Fact]
    public void WriteHtml_InventedSeason_IsWellFormedWithUniqueIds()
    {
        // Apart from the doctype and the void meta elements the page keeps to XML's rules, so an XML parser can check its nesting.
        var html = HtmlReport.Write(Invented.Report(), English).Replace("<!doctype html>", "", StringComparison.Ordinal);
        html = Regex.Replace(html, "<meta ([^>]*)>", "<meta $1/>");
        html = Regex.Replace(html, "<style>.*?</style>", "", RegexOptions.Singleline);
        var ids = XDocument.Parse(html).Descendants().SelectMany(element => element.Attributes("id")).Select(id => id.Value).ToList();
        Assert.NotEmpty(ids);
        Assert.Equal(ids.Count, ids.Distinct().Count());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Write_Invented_IsMarkedOnlyWhenItIs(bool invented)
    {
        var report = Invented.Report() with { Invented = invented };
        Assert.Equal(invented, HtmlReport.Write(report, English).Contains("Invented data", StringComparison.Ordinal));
        Assert.Equal(invented, TextReport.Write(report, English).Contains("Invented data", StringComparison.Ordinal));
        using var json = JsonDocument.Parse(JsonReport.Write(report));
        Assert.Equal(invented, json.RootElement.GetProperty("invented").GetBoolean());
    }

    [Fact]
    public void Write_NoMites_NeverClaimsThatThereAreNone()
    {
        foreach (var text in (string[])[TextReport.Write(Invented.Report(), English), HtmlReport.Write(Invented.Report(), English)])
        {
            Assert.Contains("0 (upper limit 1.3)", text, StringComparison.Ordinal);
            Assert.DoesNotContain("free", text.Replace("break-free", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void WriteJson_InventedSeason_KeepsEveryJarUnrounded()
    {
        var report = Invented.Report();
        using var json = JsonDocument.Parse(JsonReport.Write(report));
        var jars = json.RootElement.GetProperty("apiaries")[0].GetProperty("season").GetProperty("jars");
        Assert.Equal(report.Apiaries[0].Strip.Jars.Select(jar => jar.Level), jars.EnumerateArray().Select(jar => jar.GetProperty("levelPer100").GetDouble()));
    }

    [Fact]
    public void WriteText_GermanCulture_WritesItsNumbers() =>
        Assert.Contains("0 (upper limit 1,3)", TextReport.Write(Invented.Report(), CultureInfo.GetCultureInfo("de-DE")), StringComparison.Ordinal);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void Write_ConfidenceThatIsNone_NamesIt(double confidence)
    {
        var report = Invented.Report() with { Confidence = confidence };
        Assert.Contains("confidence", Assert.Throws<ArgumentException>(() => TextReport.Write(report, English)).Message, StringComparison.Ordinal);
        Assert.Contains("confidence", Assert.Throws<ArgumentException>(() => JsonReport.Write(report)).Message, StringComparison.Ordinal);
        Assert.Contains("confidence", Assert.Throws<ArgumentException>(() => HtmlReport.Write(report, English)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WriteText_ControlCharacters_DoNotReachTheTerminal()
    {
        var report = Invented.Report() with { Operation = "Bees\u001b[31m\nred" };
        var text = TextReport.Write(report, English);
        Assert.DoesNotContain('\u001b', text);
        Assert.StartsWith("Bees [31m red: ", text, StringComparison.Ordinal);
    }
}
