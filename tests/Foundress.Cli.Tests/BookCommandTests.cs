using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using CsvHelper;
using Foundress.Book.Demo;
using Foundress.Knowledge;
using Foundress.Storage;

namespace Foundress.Cli.Tests;

/// <summary>The book for others: what is due, the register, the map, labels and controls from files.</summary>
public sealed class BookCommandTests : IDisposable
{
    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    [Fact]
    public async Task Due_DemoBook_TellsTheSameAsTextAndJson()
    {
        await DemoAsync();
        Assert.Equal(0, await _scene.RunOnBookAsync("due", "--operation", "demo"));
        var lines = _scene.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(0, await _scene.RunOnBookAsync("due", "--operation", "demo", "--json"));
        var items = _scene.Json().EnumerateArray().ToArray();
        Assert.NotEmpty(items);
        Assert.Equal(lines.Length, items.Length);
        Assert.All(lines.Zip(items), pair => Assert.Contains(pair.Second.GetProperty("text").GetString()!, pair.First, StringComparison.Ordinal));
    }

    // Read back by python3-icalendar (Debian), a program that has nothing in common with the library the file is written with.
    [Fact]
    public async Task Due_Calendar_AnotherProgramReadsTheSameDates()
    {
        await DemoAsync();
        var path = Path.Combine(_scene.Folder, "dates.ics");
        Assert.Equal(0, await _scene.RunOnBookAsync("due", "--operation", "demo", "--format", "ics", "--app", "https://bees.example", "--out", path));
        var read = await PythonAsync(
            """
            import sys, json, icalendar
            c = icalendar.Calendar.from_ical(open(sys.argv[1], 'rb').read())
            print(json.dumps([dict(uid=str(e['UID']), summary=str(e['SUMMARY']), start=e['DTSTART'].dt.isoformat(), end=e['DTEND'].dt.isoformat(), url=str(e['URL']), stamp=e['DTSTAMP'].dt.isoformat()) for e in c.walk('VEVENT')]))
            """, path);
        Assert.Equal(0, await _scene.RunOnBookAsync("due", "--operation", "demo", "--json"));
        var items = _scene.Json().EnumerateArray().ToArray();
        var events = JsonDocument.Parse(read).RootElement.EnumerateArray().ToArray();
        Assert.Equal(items.Length, events.Length);
        Assert.Equal(events.Length, events.Select(one => one.GetProperty("uid").GetString()).Distinct().Count());
        foreach (var (item, dated) in items.Zip(events))
        {
            Assert.Equal($"{item.GetProperty("apiary").GetString()}: {item.GetProperty("text").GetString()}", dated.GetProperty("summary").GetString());
            Assert.Equal(item.GetProperty("from").GetString(), dated.GetProperty("start").GetString());
            Assert.Equal(Day(item, "to").AddDays(1), Day(dated, "end"));
            Assert.StartsWith("https://bees.example/", dated.GetProperty("url").GetString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Register_Csv_AnotherLibraryReadsEveryRecord()
    {
        await DemoAsync();
        Assert.Equal(0, await _scene.RunOnBookAsync("register", "--operation", "demo", "--format", "csv"));
        using var csv = new CsvReader(new StringReader(_scene.Out), CultureInfo.InvariantCulture);
        Assert.True(await csv.ReadAsync());
        Assert.True(csv.ReadHeader());
        var rows = new List<(string Agent, string Start, string Withdrawal)>();
        while (await csv.ReadAsync())
            rows.Add((csv.GetField("agent")!, csv.GetField("start")!, csv.GetField("withdrawal_days")!));
        Assert.Equal(0, await _scene.RunOnBookAsync("register", "--operation", "demo", "--json"));
        var records = _scene.Json().GetProperty("records").EnumerateArray().ToArray();
        Assert.NotEmpty(records);
        Assert.Equal(records.Select(record => (record.GetProperty("agent").GetString()!, record.GetProperty("start").GetString()!, record.GetProperty("withdrawalDays").GetInt32().ToString(CultureInfo.InvariantCulture))), rows);
    }

    [Fact]
    public async Task Register_Filters_AndWrongOnes_AreNamed()
    {
        await DemoAsync();
        Assert.Equal(0, await _scene.RunOnBookAsync("register", "--operation", "demo", "--agent", "tau-fluvalinate strips", "--apiary", "Mill orchard"));
        Assert.Contains("Tau-fluvalinate", _scene.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Formic", _scene.Out, StringComparison.Ordinal);
        Assert.Equal(2, await _scene.RunOnBookAsync("register", "--operation", "demo", "--from", "2026-05-01", "--to", "2026-04-01"));
        Assert.Contains("turn them round", _scene.Error, StringComparison.Ordinal);
        Assert.Equal(2, await _scene.RunOnBookAsync("register", "--operation", "demo", "--agent", "oxalic acid"));
        Assert.Contains("write which", _scene.Error, StringComparison.Ordinal);
    }

    // The demo's invented colonies grow while they are treated: taken into account, the control looks better than without.
    [Fact]
    public async Task Proof_DemoBook_ForecastTakesTheGrowthOut()
    {
        await DemoAsync();
        Assert.Equal(0, await _scene.RunOnBookAsync("proof", "--operation", "demo", "--apiary", "Mill orchard", "--from", "2026-08-01", "--json"));
        var corrected = Assert.Single(_scene.Json().EnumerateArray());
        Assert.Equal("forecast", corrected.GetProperty("correction").GetString());
        Assert.Equal(0, await _scene.RunOnBookAsync("proof", "--operation", "demo", "--apiary", "Mill orchard", "--from", "2026-08-01", "--json", "--uncorrected"));
        var plain = Assert.Single(_scene.Json().EnumerateArray());
        Assert.Equal("none", plain.GetProperty("correction").GetString());
        Assert.Equal(corrected.GetProperty("uncorrected").GetDouble(), plain.GetProperty("efficacy").GetDouble());
        Assert.True(corrected.GetProperty("efficacy").GetDouble() > plain.GetProperty("efficacy").GetDouble());
        Assert.Equal(0, await _scene.RunOnBookAsync("proof", "--operation", "demo"));
        Assert.Contains("against what the forecast says would have been", _scene.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Labels_AndMap_NeedABookAndAnAddress()
    {
        Assert.Equal(2, await _scene.RunOnBookAsync("map"));
        await DemoAsync();
        Assert.Equal(2, await _scene.RunOnBookAsync("labels", "--app", "here"));
        Assert.Contains("--app 'here'", _scene.Error, StringComparison.Ordinal);
        Assert.Equal(0, await _scene.RunOnBookAsync("labels", "--operation", "demo", "--app", "https://bees.example/", "--apiary", "Heather bank"));
        Assert.Contains("<svg class=\"qr\"", _scene.Out, StringComparison.Ordinal);
        Assert.Equal(0, await _scene.RunOnBookAsync("map", "--operation", "demo"));
        Assert.Equal("FeatureCollection", _scene.Json().GetProperty("type").GetString());
    }

    [Fact]
    public async Task Import_Controls_KeepsGoodRowsAndWritesTheOthersToTheRejectFile()
    {
        var jars = _scene.Write("jars.csv", "apiary,colony,date,method,mites,bees\nHome,1,2026-07-01,alcohol-wash,9,300\nHome,2,2026-07-01,alcohol-wash,7,300\n");
        Assert.Equal(0, await _scene.RunOnBookAsync("import", "jars", jars));
        var file = _scene.Write("controls.csv", "apiary,colony,agent,start,end\nHome,all,thymol,2026-07-05,2026-08-02\nHome,3,thymol,2026-07-05,2026-08-02\n");
        Assert.Equal(1, await _scene.RunOnBookAsync("import", "controls", file));
        Assert.Contains("row 3: colony '3'", _scene.Error, StringComparison.Ordinal);
        Assert.Contains("1 use of controls imported", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("No colony of this name", await File.ReadAllTextAsync(Path.Combine(_scene.Folder, "controls.rejected.csv")), StringComparison.Ordinal);
        var use = Assert.Single((await _scene.LedgerAsync()).State.Controls.Values);
        Assert.Equal(2, use.Facts.Colonies.Count);
        Assert.Equal(1, await _scene.RunOnBookAsync("import", "controls", file, "--rejects", Path.Combine(_scene.Folder, "again.csv")));
        Assert.Contains("0 uses of controls imported, 1 already in the book", _scene.Out, StringComparison.Ordinal);
        Assert.Equal(0, await _scene.RunOnBookAsync("register"));
        Assert.Contains("2 colonies: 1, 2", _scene.Out, StringComparison.Ordinal);
    }

    private async Task DemoAsync()
    {
        using var store = await BookStore.OpenAsync(_scene.Data);
        await store.AppendAsync("demo", DemoBook.Entries(KnowledgeBase.Load(), DemoBook.DefaultSeed, new DateOnly(2026, 9, 1)));
    }

    private static DateOnly Day(JsonElement of, string name) => DateOnly.ParseExact(of.GetProperty(name).GetString()!, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static async Task<string> PythonAsync(string code, string file)
    {
        var start = new ProcessStartInfo("/usr/bin/python3") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add(code);
        start.ArgumentList.Add(file);
        try
        {
            using var python = Process.Start(start)!;
            var output = python.StandardOutput.ReadToEndAsync();
            var error = await python.StandardError.ReadToEndAsync();
            await python.WaitForExitAsync();
            Assert.SkipWhen(error.Contains("No module named 'icalendar'", StringComparison.Ordinal), "python3-icalendar is not installed: ./test installs it.");
            Assert.True(python.ExitCode == 0, error);
            return await output;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Assert.Skip("/usr/bin/python3 is not installed.");
            throw;
        }
    }
}
