namespace Foundress.Server.Security;

/// <summary>How often an address may be asked.</summary>
internal enum Pace
{
    /// <summary>As often as one likes.</summary>
    Free,

    /// <summary>As guessing must not be possible: counted by the address it comes from.</summary>
    Entrance,

    /// <summary>As devices exchange: counted by person.</summary>
    Exchange,
}
