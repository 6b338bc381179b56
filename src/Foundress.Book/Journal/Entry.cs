namespace Foundress.Book.Journal;

/// <summary>
/// One immutable line of the book: who wrote what down, on which device, and when. Entries are never changed or erased;
/// a mistake is struck by a later entry that names it and gives the reason.
/// </summary>
/// <param name="Id">Made once by the device that wrote the entry. Two entries with the same id are the same entry.</param>
/// <param name="Operation">The keeper's operation the entry belongs to, for example <c>home</c>.</param>
/// <param name="Author">Who wrote it down, in the keeper's own words.</param>
/// <param name="Device">The device it was written on.</param>
/// <param name="Clock">When it was written down.</param>
/// <param name="Kind">What sort of record the payload is: see <see cref="Records.RecordKinds"/>. A kind this version does not know is kept and passed on.</param>
/// <param name="Schema">Version of the payload's form, from 1.</param>
/// <param name="Payload">The record as JSON text, kept exactly as it was received, so fields this version does not know survive.</param>
public sealed record Entry(
    EntryId Id,
    string Operation,
    string Author,
    string Device,
    HybridTime Clock,
    string Kind,
    int Schema,
    string Payload) : IComparable<Entry>
{
    /// <summary>
    /// The order of the book: by clock, then device, then id. The same on every device, whatever order entries arrived in.
    /// </summary>
    public int CompareTo(Entry? other)
    {
        if (other is null)
            return 1;
        var byClock = Clock.CompareTo(other.Clock);
        if (byClock != 0)
            return byClock;
        var byDevice = string.CompareOrdinal(Device, other.Device);
        return byDevice != 0 ? byDevice : Id.Value.CompareTo(other.Id.Value);
    }

    /// <summary>True when the left entry comes first.</summary>
    public static bool operator <(Entry left, Entry right) => left.CompareTo(right) < 0;

    /// <summary>True when the left entry comes later.</summary>
    public static bool operator >(Entry left, Entry right) => left.CompareTo(right) > 0;

    /// <summary>True when the left entry comes first or is the same.</summary>
    public static bool operator <=(Entry left, Entry right) => left.CompareTo(right) <= 0;

    /// <summary>True when the left entry comes later or is the same.</summary>
    public static bool operator >=(Entry left, Entry right) => left.CompareTo(right) >= 0;
}
