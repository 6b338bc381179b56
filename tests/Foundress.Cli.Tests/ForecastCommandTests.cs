using System.Globalization;

namespace Foundress.Cli.Tests;

public sealed class ForecastCommandTests : IDisposable
{
    private const string Sites = "apiary,latitude,longitude\nHome,48.1,11.5\nSouth,-36.8,174.7\nNew,41,-74\n";
    private const string Jars = "apiary,colony,date,method,mites,bees\nHome,1,2025-06-20,alcohol-wash,6,290\nHome,1,2025-05-20,alcohol-wash,2,310\nHome,2,2025-05-20,alcohol-wash,3,300\nHome,2,2025-06-20,alcohol-wash,9,300\nSouth,A,2025-01-10,sugar-shake,4,150\n";
    private const string Targets = "apiary,colony,date,bees\nHome,1,2025-08-01,300\nHome,3,2025-08-01,300\nSouth,A,2025-03-10,250\nNew,x,2025-08-15,300\n";

    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    [Fact]
    public async Task Forecast_FourFiles_GivesARowForEachTargetInOrder()
    {
        Assert.Equal(0, await Run(Jars, Targets, "a.csv"));
        var rows = Rows("a.csv");
        Assert.Equal(5, rows.Length);
        Assert.Equal("apiary,colony,date,bees,q01,q02", string.Join(',', rows[0].Take(6)));
        Assert.Equal(4 + 99 + 99, rows[0].Length);
        Assert.Equal("level_q99", rows[0][^1]);
        Assert.Equal(["Home", "3", "2025-08-01", "300"], rows[2].Take(4));
        foreach (var row in rows.Skip(1))
        {
            var counts = row.Skip(4).Take(99).Select(cell => int.Parse(cell, CultureInfo.InvariantCulture)).ToArray();
            var levels = row.Skip(103).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray();
            Assert.Equal(counts.Order(), counts);
            Assert.Equal(levels.Order(), levels);
            Assert.True(counts[98] > counts[49]);
        }
    }

    [Fact]
    public async Task Forecast_RowsInAnotherOrder_GivesTheSameNumbers()
    {
        await Run(Jars, Targets, "a.csv");
        var lines = Jars.Trim().Split('\n');
        await Run(string.Join('\n', [lines[0], .. lines.Skip(1).Reverse()]) + "\n", Targets, "b.csv");
        Assert.Equal(File.ReadAllText(Path.Combine(_scene.Folder, "a.csv")), File.ReadAllText(Path.Combine(_scene.Folder, "b.csv")));
    }

    [Fact]
    public async Task Forecast_ColonyNeverSampled_FollowsItsApiary()
    {
        await Run(Jars.Replace(",6,290", ",60,290", StringComparison.Ordinal).Replace(",9,300", ",80,300", StringComparison.Ordinal), Targets, "high.csv");
        await Run(Jars.Replace(",6,290", ",0,290", StringComparison.Ordinal).Replace(",9,300", ",0,300", StringComparison.Ordinal), Targets, "low.csv");
        Assert.True(Median("high.csv", 2) > 3 * Median("low.csv", 2));
        Assert.Equal(Median("high.csv", 4), Median("low.csv", 4));
    }

    [Fact]
    public async Task Forecast_Control_LowersItsColonyOnly()
    {
        await Run(Jars, Targets, "free.csv");
        var controls = _scene.Write("controls.csv", "apiary,colony,agent,start,end\nHome,1,amitraz,2025-05-01,2025-07-25\n");
        await Run(Jars, Targets, "treated.csv", "--controls", controls);
        Assert.True(Median("treated.csv", 1) < Median("free.csv", 1));
        Assert.Equal(Median("free.csv", 3), Median("treated.csv", 3));
    }

    [Fact]
    public async Task Forecast_Inspections_AreUsed()
    {
        await Run(Jars, Targets, "plain.csv");
        var inspections = _scene.Write("inspections.csv", "apiary,colony,date,frames_of_bees,frames_of_brood\nHome,1,2025-06-20,3,0\n");
        Assert.Equal(0, await Run(Jars, Targets, "seen.csv", "--inspections", inspections));
        Assert.NotEqual(Rows("plain.csv")[1], Rows("seen.csv")[1]);
    }

    [Theory]
    [InlineData("Nowhere,1,2025-08-01,300", "targets, row 6: apiary 'Nowhere': This apiary is not in the file of sites: add a row with its latitude and longitude.")]
    [InlineData("Home,1,01.08.2025,300", "targets, row 6: date '01.08.2025': Write days as yyyy-MM-dd")]
    [InlineData("Home,1,2025-08-01,0", "targets, row 6: bees '0': A jar without bees says nothing")]
    [InlineData("Home,,2025-08-01,300", "targets, row 6: colony: The name is missing.")]
    public async Task Forecast_BadTarget_IsNamedAndTheRestForetold(string row, string message)
    {
        Assert.Equal(1, await Run(Jars, Targets + row + "\n", "a.csv"));
        Assert.Contains(message, _scene.Error, StringComparison.Ordinal);
        Assert.Equal(5, Rows("a.csv").Length);
    }

    [Fact]
    public async Task Forecast_UnknownAgent_NamesTheKnown()
    {
        var controls = _scene.Write("controls.csv", "apiary,colony,agent,start,end\nHome,1,snake oil,2025-05-01,2025-05-10\n");
        Assert.Equal(1, await Run(Jars, Targets, "a.csv", "--controls", controls));
        Assert.Contains("controls, row 2: agent 'snake oil': This control is not known. Known are amitraz-strips", _scene.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Forecast_SitesWithoutLatitude_SaysWhichColumnIsNeeded()
    {
        var sites = _scene.Write("s.csv", "apiary,lat\nHome,48\n");
        var code = await _scene.RunAsync("forecast", "--jars", _scene.Write("j.csv", Jars), "--sites", sites, "--targets", _scene.Write("t.csv", Targets), "--out", "x.csv");
        Assert.Equal(2, code);
        Assert.Contains("The columns latitude, longitude are missing. Needed in a file of sites: apiary, latitude, longitude.", _scene.Error, StringComparison.Ordinal);
    }

    private Task<int> Run(string jars, string targets, string output, params string[] more) => _scene.RunAsync(
    [
        "forecast", "--jars", _scene.Write("jars.csv", jars), "--sites", _scene.Write("sites.csv", Sites), "--targets", _scene.Write("targets.csv", targets),
        "--particles", "500", "--seed", "1", "--out", Path.Combine(_scene.Folder, output), .. more,
    ]);

    private string[][] Rows(string file) => [.. File.ReadAllLines(Path.Combine(_scene.Folder, file)).Select(line => line.Split(','))];

    private int Median(string file, int row) => int.Parse(Rows(file)[row][4 + 49], CultureInfo.InvariantCulture);
}
