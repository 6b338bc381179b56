using Foundress.Book;
using Foundress.Book.Journal;
using Foundress.Storage;

namespace Foundress.Cli.Running;

/// <summary>The book of one operation, read whole, and the pen to write in it.</summary>
internal sealed class BookAccess : IDisposable
{
    /// <summary>Who writes where nobody is named. It is kept in the book, so it is the same in every language.</summary>
    internal const string UsualAuthor = "command line";

    private BookAccess(BookStore store, Ledger ledger, Scribe scribe) => (Store, Ledger, Scribe) = (store, ledger, scribe);

    internal BookStore Store { get; }

    internal Ledger Ledger { get; }

    internal Scribe Scribe { get; }

    /// <summary>Opens the book, making it where there is none.</summary>
    internal static async Task<BookAccess> OpenAsync(BookPlace place, string operation, string author, Surroundings around, CancellationToken cancellation)
    {
        var store = await BookStore.OpenAsync(place.Directory, place.Options(around), cancellation);
        try
        {
            var clock = new HybridClock(around.Time);
            var entries = new List<Entry>();
            await foreach (var entry in store.ReadAllAsync(operation, cancellation))
            {
                clock.Witness(entry.Clock);
                entries.Add(entry);
            }

            var ledger = new Ledger();
            ledger.Add(entries);
            return new BookAccess(store, ledger, new Scribe(operation, author, around.Device, clock, new TimeOrderedIds(around.Time)));
        }
        catch
        {
            store.Dispose();
            throw;
        }
    }

    /// <summary>Opens a book that must be there: a slip in the folder's name must not look like an empty book.</summary>
    internal static Task<BookAccess> OpenExistingAsync(BookPlace place, string operation, Surroundings around, CancellationToken cancellation)
    {
        RequireExisting(place);
        return OpenAsync(place, operation, UsualAuthor, around, cancellation);
    }

    internal static void RequireExisting(BookPlace place)
    {
        // A slip in a database's name is told by its server.
        if (place.Database is not null)
            return;
        var folder = DataFolder.At(place.Directory);
        if (!File.Exists(folder.Database) && !Directory.Exists(folder.Backups))
            throw new UsageException(SharedTexts.FormatNoBook(folder.Path));
    }

    public void Dispose() => Store.Dispose();
}
