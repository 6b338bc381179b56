namespace Foundress.Cli.Tests;

public sealed class ReportCommandTests : IDisposable
{
    private const string Jars =
        "apiary,colony,date,method,mites,bees\nHome,1,2026-07-01,alcohol-wash,14,320\nHome,2,2026-07-01,alcohol-wash,0,300\nHill,1,2026-07-02,sugar-shake,4,300\n";

    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    [Fact]
    public async Task Report_Text_ShowsApiariesJarsAndIntervals()
    {
        await ImportAsync();
        Assert.Equal(0, await _scene.RunOnBookAsync("report"));
        Assert.Contains("2 Sep 2025 to 1 Sep 2026", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("Home", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("2.4 to 7.3", _scene.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Invented data", _scene.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Report_Json_AddsTheDayUp()
    {
        await ImportAsync();
        Assert.Equal(0, await _scene.RunOnBookAsync("report", "--json", "--apiary", "HOME"));
        var day = Assert.Single(Assert.Single(_scene.Json().GetProperty("apiaries").EnumerateArray()).GetProperty("days").EnumerateArray());
        Assert.Equal((2, 14, 620), (day.GetProperty("jars").GetInt32(), day.GetProperty("mites").GetInt32(), day.GetProperty("bees").GetDouble()));
    }

    [Fact]
    public async Task Report_Html_IsWrittenToTheFile()
    {
        await ImportAsync();
        var file = Path.Combine(_scene.Folder, "season.html");
        Assert.Equal(0, await _scene.RunOnBookAsync("report", "--format", "html", "--out", file));
        Assert.Equal("", _scene.Out);
        Assert.StartsWith("<!doctype html>", await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken), StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("--from 2026-08-01 --to 2026-07-01", "--from 2026-08-01 lies after --to 2026-07-01")]
    [InlineData("--format pdf", "pdf")]
    [InlineData("--apiary Valley", "--apiary 'Valley': the book has no such apiary. It has: Hill, Home.")]
    public async Task Report_BadValue_NamesIt(string args, string expected)
    {
        await ImportAsync();
        Assert.Equal(2, await _scene.RunOnBookAsync(["report", .. args.Split(' ')]));
        Assert.Contains(expected, _scene.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Report_FileThatCannotBeWritten_IsAStorageProblem()
    {
        await ImportAsync();
        Assert.Equal(3, await _scene.RunOnBookAsync("report", "--out", Path.Combine(_scene.Folder, "no", "such", "season.txt")));
    }

    private Task<int> ImportAsync() => _scene.RunOnBookAsync("import", "jars", _scene.Write("jars.csv", Jars));
}
