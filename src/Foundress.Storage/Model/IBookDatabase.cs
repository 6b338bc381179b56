using Foundress.Storage.Backups;

namespace Foundress.Storage.Model;

/// <summary>What differs between the database systems that can hold the book.</summary>
internal interface IBookDatabase : IDisposable
{
    /// <summary>Which book this is, as last seen; see <see cref="StoredBook.Incarnation"/>.</summary>
    Guid Incarnation { get; }

    /// <summary>How many writers of this program may be at work at once, each in another operation.</summary>
    int Writers { get; }

    BookContext Open();

    /// <summary>Runs work on the database, turning what the system says into what the keeper can use. The work may be run again.</summary>
    /// <exception cref="StorageException">It could not be done.</exception>
    Task<T> GuardAsync<T>(Func<Task<T>> work);

    /// <summary>Looks the database over and makes it ready for use. The caller holds the folder's set-up lock.</summary>
    Task PrepareAsync(BackupFolder backups, CancellationToken cancellation);

    /// <summary>Looks whether it is still the book that was opened, before entries are read.</summary>
    Task LookAsync(BookContext context, CancellationToken cancellation);

    /// <summary>Makes ready for reading entries in the order of commit.</summary>
    Task ReadInOrderAsync(BookContext context, CancellationToken cancellation);

    /// <summary>The rows an operation has under some ids, few enough for one statement.</summary>
    Task<List<StoredEntry>> FindAsync(BookContext context, string operation, Guid[] ids, CancellationToken cancellation);

    /// <summary>
    /// Waits, within a transaction, until it is the only one that adds to an operation, so that the order of sequence
    /// numbers is the order of commit and no reader passes over an entry.
    /// </summary>
    Task TakeTurnAsync(BookContext context, string operation, CancellationToken cancellation);

    /// <summary>Adds rows within a transaction, but none whose operation already has its id.</summary>
    /// <returns>The rows that were not added.</returns>
    Task<IReadOnlyList<StoredEntry>> AddNewAsync(BookContext context, IReadOnlyCollection<StoredEntry> rows, CancellationToken cancellation);

    /// <summary>Writes a whole, checked copy as a SQLite file, flushed to the disk, while the book stays in use.</summary>
    /// <param name="target">The file, which must not exist.</param>
    void Copy(string target);

    /// <summary>Checks everything that is stored, indexes included.</summary>
    /// <returns>The number of entries.</returns>
    Task<long> CheckAsync(CancellationToken cancellation);
}
