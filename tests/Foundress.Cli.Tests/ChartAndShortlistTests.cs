using System.Text.Json;

namespace Foundress.Cli.Tests;

public sealed class ChartAndShortlistTests : IDisposable
{
    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    /// <summary>First lines by Wald's formulas for counts clumped with shape k (docs/methods/sequential.md), worked by hand: g = ln[3 (k+3) / (k+9)], d = k ln[(k+9)/(k+3)], A = ln 9.</summary>
    [Fact]
    public async Task Chart_LowAndHigh_GivesWaldsLinesAndHowRoundsEnd()
    {
        Assert.Equal(0, await _scene.RunAsync("chart", "--low", "1", "--high", "3", "--jars", "10", "--shape", "1.3", "--json"));
        var lines = _scene.Json().GetProperty("lines").EnumerateArray().ToArray();
        var g = Math.Log(3 * (1.3 + 3) / (1.3 + 9));
        var d = 1.3 * Math.Log((1.3 + 9) / (1.3 + 3));
        Assert.Equal((int)Math.Ceiling((Math.Log(9) + (5 * d)) / g), lines[4].GetProperty("actFrom").GetInt32());
        Assert.Equal((int)Math.Floor((-Math.Log(9) + (5 * d)) / g), lines[4].GetProperty("waitUpTo").GetInt32());
        Assert.Equal(JsonValueKind.Null, lines[0].GetProperty("waitUpTo").ValueKind);
        // Kuno 1969: 1 / (0.25² - 1 / (1.3 · jars)); 1 / (1.3 · 10) is more than 0.0625, so ten colonies cannot give it.
        Assert.All(_scene.Json().GetProperty("preciseFrom").EnumerateArray(), mites => Assert.Equal(JsonValueKind.Null, mites.ValueKind));
        var ends = _scene.Json().GetProperty("ends").EnumerateArray().ToArray();
        Assert.All(ends, end => Assert.Equal(1, end.GetProperty("wait").GetDouble() + end.GetProperty("act").GetDouble(), 9));
        Assert.True(ends[0].GetProperty("act").GetDouble() < ends[1].GetProperty("act").GetDouble());
    }

    [Theory]
    [InlineData("--high", "0.5", "lies above the one at which to wait")]
    [InlineData("--error", "60", "from 1 to 40")]
    [InlineData("--jars", "x", "write a number")]
    public async Task Chart_BadValue_NamesTheOption(string option, string value, string expected)
    {
        string[] usual = option == "--high" ? ["chart", "--low", "1"] : ["chart", "--low", "1", "--high", "3"];
        Assert.Equal(2, await _scene.RunAsync([.. usual, option, value]));
        Assert.Contains(option, _scene.Error, StringComparison.Ordinal);
        Assert.Contains(expected, _scene.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task PlanDesign_FortyColonies_SaysWhatTheJarsBuy()
    {
        Assert.Equal(0, await _scene.RunAsync("plan", "--apiary", "Hill=40", "--design", "--json"));
        var rows = _scene.Json().GetProperty("apiaries")[0].GetProperty("design").GetProperty("rows").EnumerateArray().ToArray();
        Assert.Equal([3, 5, 8, 12, 40], rows.Select(row => row.GetProperty("colonies").GetInt32()));
        // SciPy 1.10.1: 1 - hypergeom.pmf(0, 40, 4, 8)
        Assert.Equal(0.6065215012583434, rows[2].GetProperty("findsOne").GetDouble(), 9);
        Assert.Equal(0, await _scene.RunAsync("plan", "--apiary", "Hill=40", "--design"));
        Assert.Contains("what a number of jars buys", _scene.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Draw_EarlyWithSheet_WritesThePageToPrint()
    {
        var sheet = _scene.Write("sheet.html", string.Empty);
        Assert.Equal(0, await _scene.RunAsync("draw", "--apiary", "Home=12", "--take", "5", "--seed", "4", "--early", "--sheet", sheet));
        var page = await File.ReadAllTextAsync(sheet, TestContext.Current.CancellationToken);
        Assert.Contains("Stop and act from", page, StringComparison.Ordinal);
        Assert.Contains("seed 4", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Shortlist_GrowthDiffers_RanksTheSlowestFirst()
    {
        var rows = Enumerable.Range(1, 6).SelectMany(n => new[] { $"Home,{n},2026-05-01,alcohol-wash,12,300", $"Home,{n},2026-07-01,alcohol-wash,{(n == 4 ? 2 : 60)},300" });
        await _scene.RunOnBookAsync("import", "jars", _scene.Write("jars.csv", "apiary,colony,date,method,mites,bees\n" + string.Join('\n', rows) + "\n"));
        Assert.Equal(0, await _scene.RunOnBookAsync("shortlist", "--json"));
        var first = _scene.Json().GetProperty("colonies")[0];
        Assert.Equal("4", first.GetProperty("colony").GetString());
        Assert.True(first.GetProperty("growthPerDay").GetDouble() < 0);
        Assert.Equal(2, await _scene.RunOnBookAsync("shortlist", "--apiary", "Home=3"));
        Assert.Contains("--apiary", _scene.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ahead_BookWithHighJars_SaysWhoIsOverNowAndIsTheSameEachTime()
    {
        await _scene.RunOnBookAsync("import", "jars", _scene.Write("jars.csv", "apiary,colony,date,method,mites,bees\nHome,1,2026-08-20,alcohol-wash,40,300\nHome,2,2026-08-20,alcohol-wash,1,300\n"));
        Assert.Equal(0, await _scene.RunOnBookAsync("ahead", "--days", "30"));
        Assert.Contains("more likely over the line than not today (1)", _scene.Out, StringComparison.Ordinal);
        var first = _scene.Out;
        await _scene.RunOnBookAsync("ahead", "--days", "30");
        Assert.Equal(first, _scene.Out);
        await _scene.RunOnBookAsync("ahead", "--days", "30", "--json");
        Assert.Equal("Home", _scene.Json()[0].GetProperty("apiary").GetString());
        Assert.Equal(2, await _scene.RunOnBookAsync("ahead", "--days", "0"));
        Assert.Contains("--days", _scene.Error, StringComparison.Ordinal);
    }
}
