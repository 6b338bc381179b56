namespace Foundress.Storage.Transfer;

/// <summary>What became of one operation when a book was copied into a PostgreSQL database.</summary>
/// <param name="Operation">The operation.</param>
/// <param name="Entries">How many entries it has in the folder.</param>
/// <param name="Added">How many of them were new in PostgreSQL; the others were there from before.</param>
/// <param name="Fingerprint">
/// Of the entries in the folder: the sum, modulo 2^256, of the SHA-256 of each, so that their order does not count.
/// </param>
/// <param name="FingerprintThere">Of what PostgreSQL holds under the same ids, read back after the copy.</param>
/// <param name="Different">
/// Ids under which PostgreSQL holds another entry than the folder: an earlier one in the order of the book, which both would
/// hold once they met.
/// </param>
public sealed record OperationTransfer(
    string Operation, long Entries, long Added, string Fingerprint, string FingerprintThere, IReadOnlyList<Guid> Different)
{
    /// <summary>Whether PostgreSQL holds every entry of the folder, character for character.</summary>
    public bool IsSame => Different.Count == 0 && Fingerprint == FingerprintThere;
}
