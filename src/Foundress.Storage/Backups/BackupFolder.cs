using System.Globalization;

namespace Foundress.Storage.Backups;

/// <summary>The dated backups of a data folder: <c>backups/foundress-YYYYMMDD-HHMMSSZ.db</c>.</summary>
internal sealed class BackupFolder
{
    public const string BeforeUpdate = "before-update";
    public const string BeforeRestore = "before-restore";

    /// <summary>What the name of a file of accounts has behind that of the backup it belongs to.</summary>
    public const string OfAccounts = ".accounts";

    private const string Prefix = "foundress-";
    private const string Suffix = ".db";
    private const string Unfinished = ".part";
    private const string Stamp = "yyyyMMdd-HHmmss'Z'";
    private const int StampLength = 16;

    // One dated backup at a time: two of the same second would take the same free name.
    private static readonly Lock Naming = new();

    private readonly DataFolder _folder;
    private readonly TimeProvider _time;
    private readonly Action<string> _copy;
    private readonly IBackupCompanion? _companion;

    /// <summary>The backups of a book.</summary>
    /// <param name="folder">The data folder.</param>
    /// <param name="time">The clock that names them.</param>
    /// <param name="copy">Writes a whole, checked copy of the book to a file.</param>
    /// <param name="companion">What is copied with it, into a file beside it.</param>
    public BackupFolder(DataFolder folder, TimeProvider time, Action<string> copy, IBackupCompanion? companion) =>
        (_folder, _time, _copy, _companion) = (folder, time, copy, companion);

    /// <summary>The backups, newest first.</summary>
    public IReadOnlyList<Backup> List() => ListOf(_folder);

    /// <summary>The backups in a data folder, newest first.</summary>
    public static IReadOnlyList<Backup> ListOf(DataFolder folder)
    {
        if (!Directory.Exists(folder.Backups))
            return [];
        var found = new List<Backup>();
        foreach (var file in new DirectoryInfo(folder.Backups).EnumerateFiles(Prefix + "*" + Suffix))
        {
            var name = file.Name.AsSpan(Prefix.Length, file.Name.Length - Prefix.Length - Suffix.Length);
            if (name.Length >= StampLength
                && DateTimeOffset.TryParseExact(
                    name[..StampLength], Stamp, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var made)
                && (name.Length == StampLength || name[StampLength] == '-'))
                found.Add(new Backup(file.FullName, made, Reason(name[StampLength..]), file.Length, Beside(file.FullName)));
        }

        found.Sort((left, right) => right.Made != left.Made
            ? right.Made.CompareTo(left.Made)
            : string.CompareOrdinal(right.File, left.File));
        return found;
    }

    /// <summary>Makes a dated backup.</summary>
    /// <param name="reason">Why, where it is not the daily one; otherwise empty.</param>
    public Backup Make(string reason = "")
    {
        var made = _time.GetUtcNow();
        lock (Naming)
            return Make(FreeName(made, reason), made, reason);
    }

    /// <summary>Makes a backup at a place of the keeper's choosing, which must be free.</summary>
    public Backup MakeAt(string target)
    {
        var full = Path.GetFullPath(target);
        if (Array.Find([full, full + OfAccounts], name => File.Exists(name) || Directory.Exists(name)) is { } taken)
        {
            throw new StorageException(
                StorageFault.BadBackup, taken, $"There is already a file {taken}. No backup was made: choose a name that is free.");
        }

        return Make(full, _time.GetUtcNow(), "");
    }

    /// <summary>
    /// Removes daily backups but the newest of each of the last days that have one. Those made before an update or a
    /// restore stay: they may hold the only copy of what was replaced.
    /// </summary>
    public void Prune(int daysKept)
    {
        var seen = new HashSet<DateOnly>();
        foreach (var backup in List())
        {
            if (backup.Reason.Length > 0)
                continue;
            var isNewestOfDay = seen.Add(DateOnly.FromDateTime(backup.Made.UtcDateTime));
            if (isNewestOfDay && seen.Count <= daysKept)
                continue;
            if (backup.Accounts is not null)
                File.Delete(backup.Accounts);
            File.Delete(backup.File);
        }

        var yesterday = _time.GetUtcNow().AddDays(-1).UtcDateTime;
        foreach (var file in new DirectoryInfo(_folder.Backups).EnumerateFiles("*" + Unfinished))
        {
            if (file.LastWriteTimeUtc < yesterday)
                file.Delete();
        }
    }

    /// <summary>Moves a database that cannot be copied, with its log, among the backups, byte for byte.</summary>
    /// <returns>Where it lies now.</returns>
    public string SetAside()
    {
        Directory.CreateDirectory(_folder.Backups);
        var target = FreeName(_time.GetUtcNow(), "damaged") + ".aside";
        foreach (var part in new[] { "-wal", "-shm", "" })
        {
            if (File.Exists(_folder.Database + part))
                File.Move(_folder.Database + part, target + part);
        }

        return target;
    }

    private Backup Make(string target, DateTimeOffset made, string reason)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            var part = target + "." + Path.GetRandomFileName() + Unfinished;
            _copy(part);
            CopyCompanion(target, part);
            Finish(part, target);
            return new Backup(target, made, reason, new FileInfo(target).Length, Beside(target));
        }
        catch (Exception error) when (error is (IOException and not StorageException) or UnauthorizedAccessException)
        {
            throw new StorageException(
                StorageFault.ReadOnly, target,
                $"The backup {target} cannot be written: {error.Message} The book itself is unharmed. Choose a folder that can be written.", error);
        }
    }

    // A backup without its accounts would not be due again: it is either whole or not made.
    private void CopyCompanion(string target, string part)
    {
        var beside = target + OfAccounts + "." + Path.GetRandomFileName() + Unfinished;
        try
        {
            if (_companion?.Copy(beside) == true)
                File.Move(beside, target + OfAccounts);
        }
        catch
        {
            File.Delete(part);
            throw;
        }
    }

    private static void Finish(string part, string target)
    {
        try
        {
            File.Move(part, target);
        }
        catch
        {
            File.Delete(target + OfAccounts);
            throw;
        }
    }

    private static string? Beside(string backup) => File.Exists(backup + OfAccounts) ? backup + OfAccounts : null;

    private string FreeName(DateTimeOffset made, string reason)
    {
        var stem = Path.Combine(_folder.Backups, Prefix + made.UtcDateTime.ToString(Stamp, CultureInfo.InvariantCulture));
        var tail = reason.Length > 0 ? "-" + reason : "";
        var name = stem + tail + Suffix;
        for (var n = 2; File.Exists(name); n++)
            name = string.Create(CultureInfo.InvariantCulture, $"{stem}{tail}-{n}{Suffix}");
        return name;
    }

    // "-before-restore-2" and "-2" carry a number only because two were made within one second.
    private static string Reason(ReadOnlySpan<char> tail)
    {
        var text = tail.TrimStart('-');
        var last = text.LastIndexOf('-');
        if (int.TryParse(text[(last + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out _))
            text = last < 0 ? [] : text[..last];
        return text.ToString();
    }
}
