namespace Foundress.Book.Journal;

/// <summary>
/// One device's hybrid logical clock: every reading is later than all readings it gave and all it was shown, as far as they
/// can be right.
/// </summary>
/// <remarks>
/// A wall clock may be a day off without harm. What is further off is met so:
/// a device whose clock <em>lags</em> still writes after everything it was shown, because the server's time says that those
/// readings can be right; a device whose clock is <em>ahead</em> writes by the server's time as soon as it has heard it, and
/// what it wrote before is put right before it leaves the device (<see cref="Exchanging.ExchangeRound"/>).
/// Safe for concurrent use.
/// </remarks>
/// <param name="time">The wall clock.</param>
public sealed class HybridClock(TimeProvider time)
{
    /// <summary>By how many milliseconds clocks may differ without any of them being called wrong: a day.</summary>
    public const long Tolerance = 24 * 60 * 60 * 1000;

    /// <summary>The start of 2025 in milliseconds: no entry was written before, so a clock that shows less is wrong.</summary>
    public const long Earliest = 1_735_689_600_000;

    private readonly Lock _gate = new();
    private HybridTime _latest;
    private long _offset;
    private long _floor;

    /// <summary>How far the server's clock was ahead of this wall clock when it was last heard, in milliseconds; 0 while it was not.</summary>
    public long Offset
    {
        get
        {
            lock (_gate)
                return _offset;
        }
    }

    /// <summary>A reading later than every earlier one.</summary>
    public HybridTime Tick()
    {
        lock (_gate)
        {
            var now = new HybridTime(Math.Max(0, IsAhead ? Wall + _offset : Wall), 0);
            _latest = now > _latest ? now : _latest.Next();
            return _latest;
        }
    }

    /// <summary>Takes note of a reading made elsewhere, so that the next one here is later.</summary>
    /// <remarks>
    /// A reading more than a day ahead of the time comes from a device whose clock is wrong. Its entry is kept, but this
    /// clock does not follow it, or one bad phone would carry every device into the future.
    /// </remarks>
    public void Witness(HybridTime seen)
    {
        lock (_gate)
            Follow(seen);
    }

    /// <summary>Takes note of a time that has certainly passed, in milliseconds since 1970: the last that a server told.</summary>
    public void NotBefore(long milliseconds)
    {
        lock (_gate)
            _floor = Math.Max(_floor, milliseconds);
    }

    /// <summary>Takes note of the time a server tells now.</summary>
    /// <param name="elsewhere">The server's time.</param>
    /// <param name="seen">All readings this device has been shown, so that a clock that had run ahead can fall back behind none of them.</param>
    public void Hear(DateTimeOffset elsewhere, IEnumerable<HybridTime> seen)
    {
        lock (_gate)
        {
            var told = elsewhere.ToUnixTimeMilliseconds();
            _offset = told - Wall;
            _floor = Math.Max(_floor, told);
            if (_latest.Milliseconds > Limit)
                _latest = default;
            foreach (var reading in seen)
                Follow(reading);
        }
    }

    private long Wall => time.GetUtcNow().ToUnixTimeMilliseconds();

    private bool IsAhead => _offset < -Tolerance;

    private long Limit => (IsAhead ? Wall + _offset : Math.Max(Wall, _floor)) + Tolerance;

    private void Follow(HybridTime seen)
    {
        if (seen > _latest && seen.Milliseconds <= Limit)
            _latest = seen;
    }
}
