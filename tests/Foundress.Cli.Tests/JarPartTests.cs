namespace Foundress.Cli.Tests;

/// <summary>Repeat passes, weighed and counted jars, mite falls and opened brood on the command line.</summary>
public sealed class JarPartTests : IDisposable
{
    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    /// <summary>Outside check, Seber &amp; Le Cren 1967: N = 18² / (18 - 2) = 20.25, r = 1 - 2/18.</summary>
    [Fact]
    public async Task Jar_TwoPasses_GiveTheRemovalEstimateBesideTheCountedLevel()
    {
        Assert.Equal(0, await _scene.RunAsync("jar", "--passes", "18,2", "--bees", "310", "--json"));
        var jar = _scene.Json();
        var removal = jar.GetProperty("removal");
        Assert.Equal(20.25, removal.GetProperty("mites").GetDouble(), 9);
        Assert.Equal(1 - (2 / 18d), removal.GetProperty("recoveryOfPass").GetDouble(), 9);
        Assert.False(removal.GetProperty("next").GetProperty("worthIt").GetBoolean());
        Assert.Equal(100 * 20 / 310d, jar.GetProperty("level").GetDouble(), 9);
        Assert.Equal(100 * 20.25 / 310, removal.GetProperty("levelIfAllWereFound").GetDouble(), 9);
        Assert.Equal(2, jar.GetProperty("ifCorrected").GetArrayLength());
    }

    [Fact]
    public async Task Jar_PassesThatDoNotFall_RefuseAnEstimateAndSayWhy()
    {
        Assert.Equal(0, await _scene.RunAsync("jar", "--passes", "5,6", "--bees", "310", "--json"));
        var removal = _scene.Json().GetProperty("removal");
        Assert.Equal("no-decline", removal.GetProperty("refused").GetString());
        Assert.Equal(System.Text.Json.JsonValueKind.Null, removal.GetProperty("mites").ValueKind);
        Assert.Equal(0, await _scene.RunAsync("jar", "--passes", "5,6", "--bees", "310"));
        Assert.Contains("no number is given", _scene.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Jar_WeighedWithACountedSample_TakesTheRatio()
    {
        Assert.Equal(0, await _scene.RunAsync("jar", "--mites", "9", "--grams", "31.5", "--sample-bees", "100", "--sample-grams", "10.4", "--json"));
        var bees = _scene.Json().GetProperty("bees");
        Assert.Equal(303, bees.GetProperty("count").GetDouble());
        Assert.Equal("weighed", bees.GetProperty("basis").GetString());
        Assert.InRange(bees.GetProperty("logSpread").GetDouble(), 0.01, 0.05);
    }

    [Theory]
    [InlineData("--sample-grams '40'", "--grams", "31.5", "--sample-bees", "100", "--sample-grams", "40")]
    [InlineData("--sample-bees is missing", "--grams", "31.5", "--sample-grams", "10")]
    [InlineData("--grams is missing", "--sample-bees", "100", "--sample-grams", "10")]
    [InlineData("--grams '0'", "--grams", "0")]
    [InlineData("--sample-bees '1'", "--grams", "31.5", "--sample-bees", "1", "--sample-grams", "0.1")]
    [InlineData("leave out --bees", "--grams", "31.5", "--bees", "300")]
    public async Task Jar_WeightsThatDoNotFit_NameTheOption(string said, params string[] args)
    {
        Assert.Equal(2, await _scene.RunAsync(["jar", "--mites", "9", .. args]));
        Assert.Contains(said, _scene.Error, StringComparison.Ordinal);
    }

    /// <summary>Posterior by hand (Gelman et al. 2013, section 3.3): prior 300 bees worth 2 jars, three counted jars of 350: centre (2 ln 300 + 3 ln 350) / 5.</summary>
    [Fact]
    public async Task Calibrate_File_GivesThePosterior()
    {
        var file = _scene.Write("counted.csv", "observer,measure,bees\nAnna,half-cup-us,350\nAnna,half-cup-us,350\nAnna,half-cup-us,350\nBen,,287\n");
        Assert.Equal(0, await _scene.RunAsync("calibrate", file, "--measure", "125-ml", "--json"));
        var scoops = _scene.Json();
        Assert.Equal(2, scoops.GetArrayLength());
        Assert.Equal(Math.Exp(((2 * Math.Log(300)) + (3 * Math.Log(350))) / 5), scoops[0].GetProperty("usualBees").GetDouble(), 6);
        Assert.Equal("in-use", scoops[0].GetProperty("use").GetString());
        Assert.Equal(("Ben", "125-ml", "too-few"), (scoops[1].GetProperty("observer").GetString(), scoops[1].GetProperty("measure").GetString(), scoops[1].GetProperty("use").GetString()));
        Assert.Equal(0, await _scene.RunAsync("calibrate", file));
        Assert.Contains("usual jar: 329 bees", _scene.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Calibrate_Book_ReadsTheCountedJarsThatNameTheirMeasure()
    {
        var file = _scene.Write("jars.csv", "apiary,colony,date,method,mites,bees,measure\nHome,1,2026-07-01,alcohol-wash,3,340,half-cup-us\nHome,2,2026-07-01,alcohol-wash,3,350,half-cup-us\nHome,3,2026-07-01,alcohol-wash,3,360,\n");
        Assert.Equal(0, await _scene.RunOnBookAsync("import", "jars", file, "--author", "Anna"));
        Assert.Equal(0, await _scene.RunOnBookAsync("calibrate", "--json"));
        var scoop = Assert.Single(_scene.Json().EnumerateArray());
        Assert.Equal("Anna", scoop.GetProperty("observer").GetString());
        Assert.Equal([340, 350], scoop.GetProperty("counted").EnumerateArray().Select(bees => bees.GetInt32()));
    }

    [Theory]
    [InlineData("Row 3, bees '0'", "bees\n310\n0\n", "half-cup-us")]
    [InlineData("no such measure", "bees\n310\n", "thimble")]
    public async Task Calibrate_BadInput_NamesIt(string said, string text, string measure)
    {
        Assert.Equal(2, await _scene.RunAsync("calibrate", _scene.Write("bad.csv", text), "--measure", measure));
        Assert.Contains(said, _scene.Error, StringComparison.Ordinal);
    }

    /// <summary>Outside check: regional guide, 20 mites in 5 days are 4 a day; exact Poisson limits of 20 are 12.2165 and 30.8884 (R, poisson.test).</summary>
    [Fact]
    public async Task Fall_TwentyInFiveDays_IsFourADayOnItsOwnScale()
    {
        Assert.Equal(0, await _scene.RunAsync("fall", "--mites", "20", "--days", "5", "--date", "2026-07-14", "--lines", "hannover-fall", "--json"));
        var fall = _scene.Json();
        Assert.Equal(4, fall.GetProperty("value").GetDouble(), 9);
        Assert.Equal(12.2165 / 5, fall.GetProperty("lower").GetDouble(), 4);
        Assert.Equal(30.8884 / 5, fall.GetProperty("upper").GetDouble(), 4);
        Assert.Equal("below", fall.GetProperty("judgement").GetString());
        Assert.Equal("mites/day", fall.GetProperty("unit").GetString());
        Assert.True(fall.GetProperty("allMites").GetProperty("highest").GetDouble() > 10 * fall.GetProperty("allMites").GetProperty("lowest").GetDouble());
    }

    [Fact]
    public async Task Fall_Broodless_IsVoid()
    {
        Assert.Equal(0, await _scene.RunAsync("fall", "--mites", "20", "--days", "5", "--date", "2026-07-14", "--lines", "hannover-fall", "--broodless"));
        Assert.Contains("The colony has no brood", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("cannot be told", _scene.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Brood_TwelveOfAHundred_IsBelowTheSevereLine()
    {
        Assert.Equal(0, await _scene.RunAsync("brood", "--cells", "100", "--infested", "12", "--mites", "15", "--lines", "uk-drone-brood", "--json"));
        Assert.Equal("below", _scene.Json().GetProperty("judgement").GetString());
        Assert.Equal(12, _scene.Json().GetProperty("value").GetDouble(), 9);
    }

    [Theory]
    [InlineData("--days is missing", "fall", "--mites", "3")]
    [InlineData("--share '0'", "fall", "--mites", "3", "--days", "3", "--share", "0")]
    [InlineData("--lines 'common-practice'", "fall", "--mites", "3", "--days", "3", "--lines", "common-practice")]
    [InlineData("--infested '9'", "brood", "--cells", "5", "--infested", "9")]
    [InlineData("--mites '2'", "brood", "--cells", "50", "--infested", "9", "--mites", "2")]
    public async Task OtherCounts_BadValue_NamesIt(string said, params string[] args)
    {
        Assert.Equal(2, await _scene.RunAsync(args));
        Assert.Contains(said, _scene.Error, StringComparison.Ordinal);
    }
}
