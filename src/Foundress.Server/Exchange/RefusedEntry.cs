namespace Foundress.Server.Exchange;

/// <summary>An entry that was not kept.</summary>
/// <param name="Index">Its place in the array that was sent, from 0.</param>
/// <param name="Id">Its id, where it had one that could be read.</param>
/// <param name="Reason">Why: the field and what was expected.</param>
public sealed record RefusedEntry(int Index, string? Id, string Reason);
