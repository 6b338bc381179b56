namespace Foundress.Server.Running;

/// <summary>How a piece of work ended.</summary>
internal enum WorkEnd
{
    /// <summary>As it was meant to.</summary>
    Done,

    /// <summary>The request could not be answered as it was made.</summary>
    Refused,

    /// <summary>By an error of the server's.</summary>
    Failed,
}
