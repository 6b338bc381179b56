namespace Foundress.Storage;

/// <summary>Where things lie in a data folder.</summary>
/// <param name="Path">The folder.</param>
public sealed record DataFolder(string Path)
{
    /// <summary>Name of the database file.</summary>
    public const string DatabaseName = "foundress.db";

    /// <summary>The database.</summary>
    public string Database => System.IO.Path.Combine(Path, DatabaseName);

    /// <summary>The folder of backups.</summary>
    public string Backups => System.IO.Path.Combine(Path, "backups");

    /// <summary>Held by every program that has the book open.</summary>
    internal string OpenLock => System.IO.Path.Combine(Path, "foundress.open.lock");

    /// <summary>Held while tables are made or changed.</summary>
    internal string SetupLock => System.IO.Path.Combine(Path, "foundress.setup.lock");

    /// <summary>The folder for the keeper's data on this computer, when none is named.</summary>
    /// <remarks>On Linux <c>~/.local/share/foundress</c>, on Windows <c>%LOCALAPPDATA%\foundress</c>, on macOS <c>~/Library/Application Support/foundress</c>.</remarks>
    public static DataFolder Default => new(System.IO.Path.Combine(
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "foundress"));

    /// <summary>The folder with a full path.</summary>
    public static DataFolder At(string path) => new(System.IO.Path.GetFullPath(path));

    /// <summary>Makes the folder if it is not there.</summary>
    /// <exception cref="StorageException">It cannot be made.</exception>
    internal void Create()
    {
        try
        {
            Directory.CreateDirectory(Path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new StorageException(
                StorageFault.ReadOnly, Path,
                $"The data folder {Path} cannot be made: {error.Message} Choose another folder with --data, or allow writing there.", error);
        }
    }
}
