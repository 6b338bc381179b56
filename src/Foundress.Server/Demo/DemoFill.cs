using Foundress.Book.Journal;
using Foundress.Storage;

namespace Foundress.Server.Demo;

/// <summary>Puts the invented records in, unless they are there.</summary>
internal static class DemoFill
{
    public static async Task RunAsync(BookStore store, IDemoBook demo, TimeProvider time)
    {
        if (await store.CountAsync(Operations.Demo) > 0)
            return;
        var today = DateOnly.FromDateTime(time.GetLocalNow().Date);
        await store.AppendAsync(Operations.Demo, demo.Entries(today));
    }
}
