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
    public async Task Help_EveryCommand_HasAnExampleThatNamesIt(string command)
    {
        Assert.Equal(0, await _scene.RunAsync([.. command.Split(' '), "--help"]));
        Assert.Contains("Example", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("  foundress " + command, _scene.Out, StringComparison.Ordinal);
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
