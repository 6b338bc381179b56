using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Knowledge;
using Microsoft.Playwright;
using Record = Foundress.Book.Records.Record;

namespace Foundress.Browser.Tests;

/// <summary>An apiary of four colonies in a file of records, each 20 days ago with 40 mites in 300 bees.</summary>
internal sealed class ControlYard
{
    private readonly Scribe _scribe;
    private readonly List<Entry> _entries = [];

    internal ControlYard(bool supersOn = false, bool jars = true)
    {
        var ids = new TimeOrderedIds(TimeProvider.System);
        _scribe = new Scribe("home", "tester", "yard", new HybridClock(TimeProvider.System), ids);
        Apiary = new ApiaryId(ids.Next());
        Write(new PolicyRecord(Jurisdiction: Jurisdiction.EuropeanUnion), new ApiaryRecord(Apiary, "Linden yard", 50.5, 5.25));
        Colonies = [.. Enumerable.Range(1, 4).Select(_ => new ColonyId(ids.Next()))];
        for (var i = 0; i < Colonies.Count; i++)
        {
            Write(new ColonyRecord(Colonies[i], $"L{i + 1}", Apiary, Today.AddDays(-200)), new InspectionRecord(Colonies[i], Today.AddDays(-19), 8, 4, SupersOn: supersOn));
            if (jars)
                Jar(i, Today.AddDays(-20), 40);
        }
    }

    // Where the visitors' browsers are: near midnight it is another day there than here.
    internal static DateOnly Today => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(DateTimeOffset.UtcNow, TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin")).DateTime);

    internal ApiaryId Apiary { get; }

    internal IReadOnlyList<ColonyId> Colonies { get; }

    internal ControlId NewControl() => new(_scribe.Ids.Next());

    internal void Jar(int colony, DateOnly on, int mites) => Write(new JarRecord(on, "alcohol-wash", [mites], JarBees.Counted(300), Colonies[colony]));

    internal void Write(params Record[] records) => _entries.AddRange(records.Select(_scribe.Write));

    /// <summary>Takes everything written so far into the visitor's book, by the way a keeper would.</summary>
    internal async Task EnterAsync(Visitor visitor)
    {
        var page = visitor.Page;
        await visitor.GoAsync("settings");
        await page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "yard.json", MimeType = "application/json", Buffer = EntryJson.WriteMany(_entries).ToArray() });
        await page.GetByText("read from “yard.json”").WaitForAsync();
    }

    internal static string Iso(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
