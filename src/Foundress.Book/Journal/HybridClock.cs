namespace Foundress.Book.Journal;

/// <summary>
/// One device's hybrid logical clock: every reading is later than all readings it gave and all it was shown.
/// </summary>
/// <remarks>Safe for concurrent use.</remarks>
/// <param name="time">The wall clock.</param>
public sealed class HybridClock(TimeProvider time)
{
    private readonly Lock _gate = new();
    private HybridTime _latest;

    /// <summary>A reading later than every earlier one.</summary>
    public HybridTime Tick()
    {
        lock (_gate)
        {
            var wall = new HybridTime(Math.Max(0, time.GetUtcNow().ToUnixTimeMilliseconds()), 0);
            _latest = wall > _latest ? wall : _latest.Next();
            return _latest;
        }
    }

    /// <summary>Takes note of a reading made elsewhere, so that the next one here is later.</summary>
    /// <remarks>
    /// A reading more than a day ahead of this wall clock comes from a device whose clock is wrong. Its entry is kept,
    /// but this clock does not follow it, or one bad phone would carry every device into the future.
    /// </remarks>
    public void Witness(HybridTime seen)
    {
        lock (_gate)
        {
            var limit = time.GetUtcNow().AddDays(1).ToUnixTimeMilliseconds();
            if (seen > _latest && seen.Milliseconds <= limit)
                _latest = seen;
        }
    }
}
