using System.Text.Json;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;
using Microsoft.Playwright;
using Record = Foundress.Book.Records.Record;

namespace Foundress.Browser.Tests;

/// <summary>Another device of the same keeper, whose records arrive while a page is open.</summary>
/// <param name="visitor">The visitor whose page is looked at.</param>
internal sealed class Elsewhere(Visitor visitor)
{
    private readonly HybridClock _clock = new(TimeProvider.System);
    private readonly TimeOrderedIds _ids = new(TimeProvider.System);

    /// <summary>What the visitor's own book says.</summary>
    internal async Task<BookState> BookAsync()
    {
        var stored = await visitor.Page.EvaluateAsync<string>("import('/js/store.js').then(store => store.readAfter('home', 0))");
        using var document = JsonDocument.Parse(stored);
        var ledger = new Book.Ledger();
        ledger.Add([.. document.RootElement.GetProperty("entries").EnumerateArray().Select(EntryJson.Read)]);
        foreach (var entry in ledger.Entries)
            _clock.Witness(entry.Clock);
        return ledger.State;
    }

    /// <summary>Records made there come into the visitor's book by another tab, as an exchange would bring them.</summary>
    internal async Task ArriveAsync(params Record[] records)
    {
        var scribe = new Scribe("home", "helper", "elsewhere", _clock, _ids);
        var tab = await visitor.NewPageAsync();
        await tab.GotoAsync("/settings");
        await tab.Locator("input[type=file]").SetInputFilesAsync(new FilePayload
        {
            Name = "elsewhere.json",
            MimeType = "application/json",
            Buffer = EntryJson.WriteMany([.. records.Select(scribe.Write)]).ToArray(),
        });
        await tab.GetByText("read from “elsewhere.json”").WaitForAsync();
        await tab.CloseAsync();
        await visitor.Page.BringToFrontAsync();
    }
}
