namespace Foundress.Storage;

/// <summary>
/// A lock between programs on one computer: an open file, so it cannot outlive the program that holds it, even one that is
/// killed.
/// </summary>
internal sealed class FolderLock : IDisposable
{
    private readonly FileStream _file;

    private FolderLock(FileStream file) => _file = file;

    /// <summary>Takes the lock together with others that share it.</summary>
    /// <returns>Null when another program holds it alone.</returns>
    public static FolderLock? TryShare(string path)
    {
        if (!File.Exists(path))
        {
            // Another program may be first: either way the file is there afterwards.
            using var made = Guard(path, () => new FileStream(path, FileMode.OpenOrCreate, FileAccess.Write, FileShare.ReadWrite));
        }

        return Take(path, () => new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read));
    }

    /// <summary>Takes the lock alone.</summary>
    /// <returns>Null when any other program holds it.</returns>
    public static FolderLock? TryAlone(string path) =>
        Take(path, () => new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));

    /// <summary>Takes the lock alone, waiting for others to let go.</summary>
    /// <returns>Null when the wait was in vain.</returns>
    public static async Task<FolderLock?> AloneAsync(string path, TimeSpan patience, CancellationToken cancellation)
    {
        var pause = TimeSpan.FromMilliseconds(50);
        for (var waited = TimeSpan.Zero; ; waited += pause)
        {
            if (TryAlone(path) is { } held)
                return held;
            if (waited >= patience)
                return null;
            await Task.Delay(pause, cancellation);
        }
    }

    public void Dispose() => _file.Dispose();

    private static FolderLock? Take(string path, Func<FileStream> open)
    {
        try
        {
            return new FolderLock(Guard(path, open));
        }
        catch (IOException error) when (error is not (StorageException or FileNotFoundException or DirectoryNotFoundException or PathTooLongException))
        {
            return null;
        }
    }

    private static FileStream Guard(string path, Func<FileStream> open)
    {
        try
        {
            return open();
        }
        catch (UnauthorizedAccessException error)
        {
            throw ReadOnly(path, error);
        }
        catch (IOException error) when (IsReadOnlyDisk(error))
        {
            throw ReadOnly(path, error);
        }
    }

    private static StorageException ReadOnly(string path, Exception error)
    {
        var folder = Path.GetDirectoryName(path)!;
        return new StorageException(
            StorageFault.ReadOnly, folder,
            $"The data folder {folder} cannot be written. Allow writing there, or choose another folder with --data.", error);
    }

    // EROFS of Linux and macOS, ERROR_WRITE_PROTECT of Windows, as .NET passes them on.
    private static bool IsReadOnlyDisk(IOException error) => error.HResult is 30 || (error.HResult & 0xFFFF) == 19;
}
