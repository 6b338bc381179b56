namespace Foundress.Storage;

/// <summary>What kept the book from being read or written.</summary>
public enum StorageFault
{
    /// <summary>The disk refused in a way not named below.</summary>
    Disk,

    /// <summary>The file is damaged. It has been left as it was.</summary>
    Damaged,

    /// <summary>The file is not a database, or is one of another program. It has been left as it was.</summary>
    NotABook,

    /// <summary>The database is gone although there are backups of it.</summary>
    Missing,

    /// <summary>The file or its folder cannot be written.</summary>
    ReadOnly,

    /// <summary>There is no room left. What was to be added was not kept; all that was acknowledged is.</summary>
    DiskFull,

    /// <summary>The database was written by a newer version of the program. It has been left as it was.</summary>
    Newer,

    /// <summary>Another program holds the database.</summary>
    InUse,

    /// <summary>A backup cannot be used.</summary>
    BadBackup,

    /// <summary>The database server cannot be reached, or the connection to it was lost.</summary>
    Unreachable,

    /// <summary>The database server does not let the user in, or does not let it do what is needed.</summary>
    Refused,

    /// <summary>What is to be copied into already holds entries. They have been left as they were.</summary>
    NotEmpty,
}
