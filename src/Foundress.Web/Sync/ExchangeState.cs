namespace Foundress.Web.Sync;

/// <summary>How the last exchange of entries with the server went.</summary>
public enum ExchangeState
{
    /// <summary>None was tried yet.</summary>
    NotTried,

    /// <summary>One is under way.</summary>
    Working,

    /// <summary>Both sides hold the same entries.</summary>
    Done,

    /// <summary>The server could not be reached, or did not answer as it should. Everything stays on this device.</summary>
    Failed,
}
