namespace Foundress.Storage.Backups;

/// <summary>What is copied with every backup of a book, into a file beside it.</summary>
public interface IBackupCompanion
{
    /// <summary>Writes a whole, checked copy, flushed to the disk. The target must not exist.</summary>
    /// <returns>False when there is nothing to copy; no file is made then.</returns>
    /// <exception cref="StorageException">It could not be made; nothing is left of it.</exception>
    bool Copy(string target);
}
