namespace Foundress.Cli.Tests;

public sealed class PlanAndDrawTests : IDisposable
{
    private const string Jars = "apiary,colony,date,method,mites,bees\nHome,1,2026-07-01,alcohol-wash,4,310\nHome,2,2026-07-01,alcohol-wash,4,300\nHill,1,2026-07-01,alcohol-wash,4,300\n";

    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    /// <summary>Rules of thumb: common practice, no source. Fewer than 10 colonies: all; one larger apiary: 8.</summary>
    [Theory]
    [InlineData("Home=9", "Home: 9 of 9 colonies.")]
    [InlineData("Home=10", "Home: 8 of 10 colonies.")]
    [InlineData("Home=200", "Home: 8 of 200 colonies.")]
    public async Task Plan_OneApiary_FollowsTheRuleOfThumb(string apiary, string expected)
    {
        Assert.Equal(0, await _scene.RunAsync("plan", "--apiary", apiary));
        Assert.Contains(expected, _scene.Out, StringComparison.Ordinal);
        Assert.Contains("common practice, no source", _scene.Out, StringComparison.Ordinal);
    }

    /// <summary>Several apiaries: 3 to 5 % of all colonies (common practice, no source): 5 % of 1,000 is 50.</summary>
    [Fact]
    public async Task Plan_SeveralApiaries_SharesOut()
    {
        Assert.Equal(0, await _scene.RunAsync("plan", "--apiary", "Home=400", "--apiary", "Hill=600", "--json"));
        Assert.Equal(50, _scene.Json().GetProperty("jars").GetInt32());
        Assert.Equal([("Hill", 30), ("Home", 20)], _scene.Json().GetProperty("apiaries").EnumerateArray()
            .Select(place => (place.GetProperty("apiary").GetString()!, place.GetProperty("take").GetInt32())));
    }

    [Fact]
    public async Task Plan_OfTheBook_CountsLivingColoniesAndNamesTheNextDate()
    {
        await _scene.RunOnBookAsync("import", "jars", _scene.Write("jars.csv", Jars));
        Assert.Equal(0, await _scene.RunOnBookAsync("plan", "--json"));
        var places = _scene.Json().GetProperty("apiaries").EnumerateArray().ToArray();
        Assert.Equal([("Hill", 1), ("Home", 2)], places.Select(place => (place.GetProperty("apiary").GetString()!, place.GetProperty("colonies").GetInt32())));
        Assert.All(places, place => Assert.Equal(System.Text.Json.JsonValueKind.Object, place.GetProperty("due").ValueKind));
    }

    [Fact]
    public async Task Draw_SameSeed_GivesTheSameDraw()
    {
        await _scene.RunAsync("draw", "--apiary", "Home=30", "--apiary", "Hill=12", "--take", "8", "--seed", "42");
        var first = _scene.Out;
        await _scene.RunAsync("draw", "--apiary", "Hill=12", "--apiary", "Home=30", "--take", "8", "--seed", "42");
        Assert.Equal(first, _scene.Out);
        await _scene.RunAsync("draw", "--apiary", "Home=30", "--apiary", "Hill=12", "--take", "8", "--seed", "43");
        Assert.NotEqual(first, _scene.Out);
    }

    [Fact]
    public async Task Draw_NoSeed_PrintsTheOneTaken()
    {
        Assert.Equal(0, await _scene.RunAsync("draw", "--apiary", "Home=12", "--json"));
        var draw = _scene.Json();
        Assert.Equal("4711", draw.GetProperty("seed").GetString());
        var place = draw.GetProperty("apiaries")[0];
        var names = place.GetProperty("chosen").EnumerateArray().Concat(place.GetProperty("reserves").EnumerateArray()).Select(name => name.GetString()).ToArray();
        Assert.Equal(8, place.GetProperty("chosen").GetArrayLength());
        Assert.Equal(Enumerable.Range(1, 12).Select(number => $"{number}").Order(), names.Order());
    }

    [Fact]
    public async Task Draw_Keep_WritesTheRoundIntoTheBook()
    {
        await _scene.RunOnBookAsync("import", "jars", _scene.Write("jars.csv", Jars));
        Assert.Equal(0, await _scene.RunOnBookAsync("draw", "--apiary", "home", "--seed", "5", "--keep", "--on", "2026-09-10"));
        var round = Assert.Single((await _scene.LedgerAsync()).State.Rounds.Values);
        Assert.Equal(("5", new DateOnly(2026, 9, 10)), (round.Plan.Seed, round.Plan.On));
        Assert.Equal(2, Assert.Single(round.Plan.Draws).Chosen.Count);
    }

    [Theory]
    [InlineData("plan --apiary Home=0", "--apiary 'Home=0'")]
    [InlineData("plan --apiary Home=x", "--apiary 'Home=x'")]
    [InlineData("plan --apiary Home=3 --apiary home=4", "given twice")]
    [InlineData("plan --apiary Home=3 --apiary Hill", "give every apiary a number of colonies")]
    [InlineData("plan --on 1.9.2026 --apiary Home=3", "--on '1.9.2026'")]
    [InlineData("draw --apiary Home=3 --take 4", "--take 4: Home has only 3 colonies")]
    [InlineData("draw --apiary Home=3 --take 0", "--take '0'")]
    [InlineData("draw --apiary Home=3 --seed -1", "--seed '-1'")]
    [InlineData("draw --apiary Home=3 --keep", "--keep: these apiaries are in no book")]
    public async Task PlanAndDraw_BadValue_NamesIt(string args, string expected)
    {
        Assert.Equal(2, await _scene.RunAsync(args.Split(' ')));
        Assert.Contains(expected, _scene.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("plan")]
    [InlineData("draw")]
    [InlineData("report")]
    [InlineData("backup")]
    public async Task BookCommands_NoBookThere_SayWhereTheyLooked(string command)
    {
        Assert.Equal(2, await _scene.RunOnBookAsync(command));
        Assert.Contains($"There is no book in {_scene.Data} yet", _scene.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_scene.Data));
    }
}
