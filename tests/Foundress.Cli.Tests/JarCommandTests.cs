namespace Foundress.Cli.Tests;

public sealed class JarCommandTests : IDisposable
{
    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    /// <summary>Outside check, SciPy: exact Poisson limits 2.39185 and 7.34051; gamma(14.5, scale 1/320) tail over 0.03 is 0.91605.</summary>
    [Fact]
    public async Task Jar_FourteenOn320_AgreesWithSciPy()
    {
        Assert.Equal(0, await _scene.RunAsync("jar", "--mites", "14", "--bees", "320", "--line", "3", "--json"));
        var jar = _scene.Json();
        Assert.Equal(4.375, jar.GetProperty("level").GetDouble(), 12);
        var interval = jar.GetProperty("interval");
        Assert.Equal(2.39185, interval.GetProperty("lower").GetDouble(), 5);
        Assert.Equal(7.34051, interval.GetProperty("upper").GetDouble(), 5);
        Assert.Equal("exact-poisson", interval.GetProperty("method").GetString());
        Assert.Equal(0.95, interval.GetProperty("confidence").GetDouble());
        Assert.Equal(0.91605, jar.GetProperty("chanceOverLine").GetDouble(), 5);
        Assert.Equal("above", jar.GetProperty("judgement").GetString());
        Assert.Equal("", _scene.Error);
    }

    /// <summary>Outside check, SciPy: 9 mites in 300 bees, Clopper-Pearson 1.38 to 5.62, Wilson 1.59 to 5.60.</summary>
    [Fact]
    public async Task Jar_NineOn300_OffersTheProportionIntervals()
    {
        Assert.Equal(0, await _scene.RunAsync("jar", "--mites", "9", "--bees", "300", "--json"));
        var others = _scene.Json().GetProperty("otherIntervals").EnumerateArray()
            .ToDictionary(one => one.GetProperty("method").GetString()!, one => (one.GetProperty("lower").GetDouble(), one.GetProperty("upper").GetDouble()));
        Assert.Equal((1.59, 5.60), (Math.Round(others["wilson"].Item1, 2), Math.Round(others["wilson"].Item2, 2)));
        Assert.Equal((1.38, 5.62), (Math.Round(others["clopper-pearson"].Item1, 2), Math.Round(others["clopper-pearson"].Item2, 2)));
    }

    [Fact]
    public async Task Jar_AssumedBees_WidensTheInterval()
    {
        await _scene.RunAsync("jar", "--mites", "14", "--bees", "300", "--json");
        var counted = Width();
        Assert.Equal(0, await _scene.RunAsync("jar", "--mites", "14", "--basis", "assumed", "--measure", "half-cup-us", "--json"));
        Assert.True(Width() > counted);
        var bees = _scene.Json().GetProperty("bees");
        Assert.Equal(("assumed", "half-cup-us", 300), (bees.GetProperty("basis").GetString(), bees.GetProperty("measure").GetString(), bees.GetProperty("count").GetDouble()));
        Assert.Equal("posterior", _scene.Json().GetProperty("interval").GetProperty("method").GetString());
    }

    [Fact]
    public async Task Jar_Passes_AreAddedUp()
    {
        Assert.Equal(0, await _scene.RunAsync("jar", "--passes", "18,2", "--bees", "310", "--method", "sugar-shake", "--json"));
        var jar = _scene.Json();
        Assert.Equal((20, "sugar-shake"), (jar.GetProperty("mites").GetInt32(), jar.GetProperty("method").GetString()));
        Assert.Equal([18, 2], jar.GetProperty("passes").EnumerateArray().Select(pass => pass.GetInt32()));
    }

    /// <summary>The handbook prints 14.3 for 43 mites on 310 bees; its own formula, mites / bees × 100, gives 13.87.</summary>
    [Fact]
    public async Task Jar_HandbookExample_IsWhatItsFormulaGives()
    {
        await _scene.RunAsync("jar", "--mites", "43", "--bees", "310", "--json");
        Assert.Equal(13.87, _scene.Json().GetProperty("level").GetDouble(), 2);
    }

    [Fact]
    public async Task Jar_NoMites_NeverSaysNone()
    {
        Assert.Equal(0, await _scene.RunAsync("jar", "--mites", "0", "--bees", "300"));
        Assert.Contains("not proof of none", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("0.00 mites per 100 bees; 95 % interval 0.00 to 1.2.", _scene.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Jar_Text_SaysIntervalChanceAndCautions()
    {
        Assert.Equal(0, await _scene.RunAsync("jar", "--mites", "14", "--bees", "320", "--line", "3", "--working"));
        Assert.Contains("Alcohol wash, 14 mites on 320 bees:", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("4.4 mites per 100 bees; 95 % interval 2.4 to 7.3.", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("92 in 100", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("lit smoker", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("Garwood 1936", _scene.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Jar_MethodOnAnotherScaleThanTheLines_IsNotJudged()
    {
        Assert.Equal(0, await _scene.RunAsync("jar", "--mites", "14", "--bees", "300", "--method", "ether-roll", "--lines", "common-practice", "--json"));
        Assert.Equal(System.Text.Json.JsonValueKind.Null, _scene.Json().GetProperty("judgement").ValueKind);
        Assert.Contains("Scales are not converted", _scene.Json().GetProperty("notJudged").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--mites -3 --bees 300", "--mites '-3': A number of mites cannot be negative.")]
    [InlineData("--mites 3.5 --bees 300", "--mites '3.5': Mites are counted whole")]
    [InlineData("--mites 20000 --bees 300", "--mites '20000': No jar gives more than 10000 mites")]
    [InlineData("--bees 300", "--mites is missing")]
    [InlineData("--mites 3", "--bees is missing")]
    [InlineData("--mites 3 --bees 0", "--bees '0': A jar without bees")]
    [InlineData("--mites 3 --bees 300.5", "--bees '300.5': Counted bees are whole: round the number, or give 'weighed' or 'assumed' as --basis")]
    [InlineData("--mites 3 --bees 300 --passes 2,2", "--passes '2,2' add up to 4, but --mites says 3")]
    [InlineData("--passes 1,1,1,1,1,1,1,1,1,1,1 --bees 300", "11 passes are given; at most 10")]
    [InlineData("--mites 3 --bees 300 --method alcohol-wahs", "did you mean 'alcohol-wash'?")]
    [InlineData("--mites 3 --bees 300 --basis guessed", "--basis 'guessed'")]
    [InlineData("--mites 3 --bees 300 --basis counted --measure half-cup-us", "--measure 'half-cup-us'")]
    [InlineData("--mites 3 --measure bucket", "--measure 'bucket': there is no such measure")]
    [InlineData("--mites 3 --bees 300 --line abc", "--line 'abc'")]
    [InlineData("--mites 3 --bees 300 --line 0", "--line '0'")]
    [InlineData("--mites 3 --bees 300 --lines none", "--lines 'none'")]
    [InlineData("--mites 3 --bees 300 --confidence 95", "--confidence '95'")]
    [InlineData("--mites 3 --bees 300 --date 2026-09-02", "--date '2026-09-02': The day lies in the future")]
    [InlineData("--mites 3 --bees 300 --mite 4", "--mite")]
    public async Task Jar_BadValue_NamesItAndTheFix(string args, string expected)
    {
        Assert.Equal(2, await _scene.RunAsync(["jar", .. args.Split(' ')]));
        Assert.Contains(expected, _scene.Error, StringComparison.Ordinal);
        Assert.Equal("", _scene.Out);
    }

    private double Width()
    {
        var interval = _scene.Json().GetProperty("interval");
        return interval.GetProperty("upper").GetDouble() - interval.GetProperty("lower").GetDouble();
    }
}
