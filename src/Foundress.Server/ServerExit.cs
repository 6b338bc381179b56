namespace Foundress.Server;

/// <summary>The codes the server ends with.</summary>
public static class ServerExit
{
    /// <summary>Stopped when asked to.</summary>
    public const int Done = 0;

    /// <summary>A running server was asked for and is not there or not ready.</summary>
    public const int NotReady = 1;

    /// <summary>An option is unknown or has a value it cannot have.</summary>
    public const int BadOption = 2;

    /// <summary>The port is taken.</summary>
    public const int PortInUse = 3;

    /// <summary>The book cannot be opened.</summary>
    public const int NoBook = 4;
}
