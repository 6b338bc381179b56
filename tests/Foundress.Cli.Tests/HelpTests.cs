namespace Foundress.Cli.Tests;

public sealed class HelpTests : IDisposable
{
    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    [Theory]
    [InlineData("jar")]
    [InlineData("calibrate")]
    [InlineData("fall")]
    [InlineData("brood")]
    [InlineData("plan")]
    [InlineData("draw")]
    [InlineData("choose")]
    [InlineData("import jars")]
    [InlineData("import controls")]
    [InlineData("proof")]
    [InlineData("due")]
    [InlineData("register")]
    [InlineData("map")]
    [InlineData("labels")]
    [InlineData("report")]
    [InlineData("forecast")]
    [InlineData("backup")]
    [InlineData("restore")]
    [InlineData("transfer")]
    public async Task Help_EveryCommand_HasAnExampleThatNamesIt(string command)
    {
        Assert.Equal(0, await _scene.RunAsync([.. command.Split(' '), "--help"]));
        Assert.Contains("Example", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("  foundress " + command, _scene.Out, StringComparison.Ordinal);
    }

    // Whatever can be told the folder of the book can be told its database, and nothing else.
    [Theory]
    [InlineData("due", true)]
    [InlineData("import jars", true)]
    [InlineData("backup", true)]
    [InlineData("transfer", true)]
    [InlineData("jar", false)]
    public async Task Help_CommandsThatOpenTheBook_OfferTheDatabase(string command, bool offers)
    {
        Assert.Equal(0, await _scene.RunAsync([.. command.Split(' '), "--help"]));
        Assert.Equal(offers, _scene.Out.Contains("--database", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Help_Root_NamesTheExitCodes()
    {
        Assert.Equal(0, await _scene.RunAsync("--help"));
        Assert.Contains("Exit codes: 0 fine", _scene.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("jars", "--help")]
    [InlineData("import", "import --help")]
    [InlineData("import jars", "import jars --help")]
    [InlineData("", "--help")]
    public async Task Run_WrongCommand_PointsToTheHelp(string args, string hint)
    {
        Assert.Equal(2, await _scene.RunAsync(args.Split(' ', StringSplitOptions.RemoveEmptyEntries)));
        Assert.Contains("Try: foundress " + hint, _scene.Error, StringComparison.Ordinal);
    }
}
