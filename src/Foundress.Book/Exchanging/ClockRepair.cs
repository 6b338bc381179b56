using Foundress.Book.Journal;

namespace Foundress.Book.Exchanging;

/// <summary>
/// Puts right when entries were written down, where the device's clock was far ahead, before they leave the device: the
/// server would not take them, and where they were read they would win against every later change for years.
/// </summary>
/// <remarks>
/// An entry keeps its id and its words; only its reading is brought back. Should the entry have got about already, by a
/// file, every device ends with the corrected one, for it comes first in the book's order.
/// </remarks>
/// <param name="now">The server's time.</param>
/// <param name="offset">How far the server's clock is ahead of this device's, in milliseconds; negative when it lags.</param>
internal sealed class ClockRepair(DateTimeOffset now, long offset)
{
    private readonly long _now = now.ToUnixTimeMilliseconds();
    private HybridTime _last;

    /// <summary>Whether an entry bears a reading that no clock can have shown yet.</summary>
    public bool IsAhead(Entry entry) => entry.Clock.Milliseconds > _now + HybridClock.Tolerance;

    /// <summary>The entries that are ahead, with readings of the time they were written as nearly as can be told, in the order they had.</summary>
    public IReadOnlyList<Entry> Mend(IEnumerable<Entry> entries)
    {
        var mended = new List<Entry>();
        foreach (var entry in entries.Where(IsAhead).Order())
        {
            // A clock that is still as wrong as it was tells the true time once the difference is taken off. One that was
            // put right since does not; then all that is known is that the entry was written before now.
            var told = entry.Clock.Milliseconds + offset;
            var reading = new HybridTime(told <= _now && told >= HybridClock.Earliest ? told : _now, 0);
            _last = reading > _last ? reading : _last.Next();
            mended.Add(entry with { Clock = _last });
        }

        return mended;
    }
}
