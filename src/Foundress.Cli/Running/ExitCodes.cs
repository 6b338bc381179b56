namespace Foundress.Cli.Running;

/// <summary>What the program tells scripts. Documented in <c>docs/csv.md</c> and in the help.</summary>
public static class ExitCodes
{
    /// <summary>All went well.</summary>
    public const int Fine = 0;

    /// <summary>The import went through, but some rows were not taken.</summary>
    public const int SomeRejected = 1;

    /// <summary>The command or one of its values is wrong, or the file given is not what it should be.</summary>
    public const int Usage = 2;

    /// <summary>The book or a file could not be read or written.</summary>
    public const int Storage = 3;

    /// <summary>A fault of the program.</summary>
    public const int Unexpected = 4;
}
