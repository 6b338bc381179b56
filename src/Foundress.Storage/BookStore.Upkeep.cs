using Foundress.Storage.Backups;
using Microsoft.EntityFrameworkCore;

namespace Foundress.Storage;

/// <content>What a server that runs on for weeks asks of the book.</content>
public sealed partial class BookStore
{
    // ENOSPC, as .NET hands it on.
    private const int NoSpace = 28;

    /// <summary>Writes to the disk and reads from it, and changes nothing by it.</summary>
    /// <exception cref="StorageException">The book cannot be read or written.</exception>
    public Task CheckWritableAsync(CancellationToken cancellation = default) =>
        _database.GuardAsync(async () =>
        {
            await using var context = _database.Open();
            await context.Entries.AnyAsync(cancellation);
            // The row that says which book this is, with what it says already.
            return await context.Books.ExecuteUpdateAsync(set => set.SetProperty(book => book.Incarnation, book => book.Incarnation), cancellation);
        });

    /// <summary>
    /// Makes a backup when the newest is older than <see cref="BookStoreOptions.BackupEvery"/>, and removes dated ones beyond
    /// <see cref="BookStoreOptions.DaysKept"/>; not when <see cref="BookStoreOptions.BackupAtStart"/> says that there shall be none.
    /// </summary>
    /// <returns>The backup; null when none was due.</returns>
    /// <exception cref="StorageException">It could not be made; the book is unharmed.</exception>
    public async Task<Backup?> BackUpIfDueAsync(CancellationToken cancellation = default)
    {
        if (!_options.BackupAtStart || (await OperationsAsync(cancellation)).Count == 0)
            return null;
        try
        {
            return await BackUpAsync(cancellation);
        }
        catch (IOException error) when (error is not StorageException && error.HResult == NoSpace)
        {
            throw new StorageException(
                StorageFault.DiskFull, Folder.Backups, $"There is no room left on the disk for a backup in {Folder.Backups}. The book is unharmed. Free some space and try again.", error);
        }
        catch (Exception error) when (error is (IOException or UnauthorizedAccessException) and not StorageException)
        {
            throw new StorageException(
                StorageFault.Disk, Folder.Backups, $"The backups in {Folder.Backups} cannot be read or written. The book is unharmed. Allow reading and writing there.", error);
        }
    }

    private async Task<Backup?> BackUpAsync(CancellationToken cancellation)
    {
        var isDue = _backups.List() is not [var newest, ..] || _options.Time.GetUtcNow() - newest.Made >= _options.BackupEvery;
        if (!isDue)
            return null;
        var made = await BackupAsync(cancellation: cancellation);
        _backups.Prune(_options.DaysKept);
        return made;
    }
}
