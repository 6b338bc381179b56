using System.Globalization;
using Foundress.Reports.Drawing;
using Foundress.Reports.Reporting;
using Foundress.Reports.Tests.Support;

namespace Foundress.Reports.Tests.Reporting;

public sealed class GermanReportTests
{
    private static readonly CultureInfo German = CultureInfo.GetCultureInfo("de-DE");

    [Fact]
    public void WriteHtml_GermanReader_SaysItsLanguageAndSpeaksIt()
    {
        var html = In(German, () => HtmlReport.Write(Invented.Report(), German));
        Assert.Contains("<html lang=\"de\">", html, StringComparison.Ordinal);
        Assert.Contains("<caption>Proben nach Volk</caption>", html, StringComparison.Ordinal);
        Assert.Contains("(0 bis 2,0)", html, StringComparison.Ordinal);
        Assert.DoesNotContain("Jars by colony", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Heads_OneReaderAfterAnother_AreInTheLanguageOfEach()
    {
        var german = In(German, () => SeasonStripTable.Heads);
        var english = In(CultureInfo.GetCultureInfo("en-GB"), () => SeasonStripTable.Heads);
        Assert.Equal(("Wann", "When"), (german[0], english[0]));
    }

    [Fact]
    public void Draw_KeyForAGermanReader_NamesTheLines() =>
        Assert.Contains(">Handlungsschwelle<", In(German, () => KeyDrawing.Draw("key", DrawingShape.Narrow)), StringComparison.Ordinal);

    private static T In<T>(CultureInfo language, Func<T> write)
    {
        var before = CultureInfo.CurrentUICulture;
        CultureInfo.CurrentUICulture = language;
        try
        {
            return write();
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }
}
