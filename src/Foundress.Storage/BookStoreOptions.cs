using Foundress.Storage.Backups;

namespace Foundress.Storage;

/// <summary>How a store behaves.</summary>
public sealed record BookStoreOptions
{
    /// <summary>The PostgreSQL database that holds the book; none for the SQLite file of the data folder.</summary>
    /// <remarks>The data folder then holds the backups.</remarks>
    public PostgresAddress? Database { get; init; }

    /// <summary>The clock that stamps entries and backups.</summary>
    public TimeProvider Time { get; init; } = TimeProvider.System;

    /// <summary>Whether opening makes a backup when the newest is older than <see cref="BackupEvery"/>.</summary>
    public bool BackupAtStart { get; init; } = true;

    /// <summary>The age from which the newest backup counts as old.</summary>
    public TimeSpan BackupEvery { get; init; } = TimeSpan.FromHours(24);

    /// <summary>On how many days a backup is kept: the newest of each day, from 1.</summary>
    public int DaysKept { get; init; } = 14;

    /// <summary>What is copied with every backup, into a file beside it; nothing when there is none.</summary>
    public IBackupCompanion? Companion { get; init; }

    /// <summary>How long to wait for another program that is writing.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>Greatest number of database pages; none for what the disk holds. Lets a full disk be tried out.</summary>
    internal int? GreatestPages { get; init; }

    /// <summary>Whether the book must not be open in any other program.</summary>
    internal bool Alone { get; init; }

    /// <summary>Whether an empty database is made ready although there is a book or a backup in the folder: it is about to be copied.</summary>
    internal bool TakesOver { get; init; }
}
