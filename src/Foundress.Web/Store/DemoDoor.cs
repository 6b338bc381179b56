using System.Globalization;
using Foundress.Book.Demo;
using Foundress.Book.Journal;
using Foundress.Knowledge;

namespace Foundress.Web.Store;

/// <summary>The way into the invented book: made up on this device, without a server.</summary>
/// <param name="session">The open book.</param>
/// <param name="store">The device's store.</param>
public sealed class DemoDoor(BookSession session, IEntryStore store)
{
    /// <summary>Setting that says from which seed the invented records on this device were made.</summary>
    public const string SeedKey = "demo-seed";

    /// <summary>Makes the invented records up, unless this device has them, and opens their book.</summary>
    /// <exception cref="StoreException">The device could not keep them.</exception>
    public async Task EnterAsync()
    {
        // Made up again on another day they would bear the same ids and say something else.
        if ((await store.ReadAfterAsync(Operations.Demo, 0)).Entries.Count == 0)
            await MakeUpAsync();
        await session.SwitchAsync(Operations.Demo);
    }

    // The seed first: with records and no seed the book would be taken for one of the server's.
    private async Task MakeUpAsync()
    {
        await store.SetAsync(SeedKey, DemoBook.DefaultSeed.ToString(CultureInfo.InvariantCulture));
        var entries = DemoBook.Entries(KnowledgeBase.Load(), DemoBook.DefaultSeed, session.Today);
        // They are for looking around on this device: the server is not given them.
        await session.TakeInAsync(Operations.Demo, entries, pending: false);
    }
}
