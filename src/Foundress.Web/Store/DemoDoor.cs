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

    /// <summary>Makes the invented records up and opens their book.</summary>
    /// <exception cref="StoreException">The device could not keep them.</exception>
    public async Task EnterAsync()
    {
        var entries = DemoBook.Entries(KnowledgeBase.Load(), DemoBook.DefaultSeed, session.Today);
        // They are for looking around on this device: the server is not given them.
        await session.TakeInAsync(Operations.Demo, entries, pending: false);
        await store.SetAsync(SeedKey, DemoBook.DefaultSeed.ToString(CultureInfo.InvariantCulture));
        await session.SwitchAsync(Operations.Demo);
    }
}
