using System.Globalization;

namespace Foundress.Book.Journal;

/// <summary>
/// A reading of a hybrid logical clock (Kulkarni et al. 2014): wall-clock milliseconds, and a counter for readings within
/// the same millisecond or while the wall clock lags behind what was already seen. Orders entries across devices so that
/// whatever an author had seen comes before what the author wrote next.
/// </summary>
/// <remarks>
/// This says when something was <em>written down</em>. The day it happened is a separate, editable date in the record.
/// The text form sorts as the value does.
/// </remarks>
public readonly record struct HybridTime : IComparable<HybridTime>
{
    private const long GreatestMilliseconds = (1L << 48) - 1;

    /// <summary>A reading.</summary>
    /// <param name="milliseconds">Milliseconds since 1970-01-01 UTC, 0 to 2^48 - 1.</param>
    /// <param name="counter">0 to 65,535.</param>
    /// <exception cref="ArgumentOutOfRangeException">A part is out of its range.</exception>
    public HybridTime(long milliseconds, int counter)
    {
        if (milliseconds is < 0 or > GreatestMilliseconds)
            throw new ArgumentOutOfRangeException(nameof(milliseconds), milliseconds, "Milliseconds since 1970 lie between 0 and 2^48 - 1.");
        if (counter is < 0 or > ushort.MaxValue)
            throw new ArgumentOutOfRangeException(nameof(counter), counter, "The counter lies between 0 and 65535.");
        (Milliseconds, Counter) = (milliseconds, counter);
    }

    /// <summary>Milliseconds since 1970-01-01 UTC.</summary>
    public long Milliseconds { get; }

    /// <summary>Position among readings of the same millisecond.</summary>
    public int Counter { get; }

    /// <summary>The wall-clock part.</summary>
    public DateTimeOffset Instant => DateTimeOffset.FromUnixTimeMilliseconds(Milliseconds);

    /// <summary>The reading that directly follows this one.</summary>
    public HybridTime Next() => Counter < ushort.MaxValue ? new(Milliseconds, Counter + 1) : new(Milliseconds + 1, 0);

    /// <summary>Reads the text form: twelve hexadecimal digits, a hyphen, four hexadecimal digits.</summary>
    /// <returns>False when the text has another form.</returns>
    public static bool TryParse(ReadOnlySpan<char> text, out HybridTime time)
    {
        time = default;
        if (text.Length != 17 || text[12] != '-'
            || !long.TryParse(text[..12], NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var milliseconds)
            || !int.TryParse(text[13..], NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var counter))
            return false;
        time = new(milliseconds, counter);
        return true;
    }

    /// <inheritdoc/>
    public int CompareTo(HybridTime other) =>
        Milliseconds != other.Milliseconds ? Milliseconds.CompareTo(other.Milliseconds) : Counter.CompareTo(other.Counter);

    /// <summary>True when the left reading is earlier.</summary>
    public static bool operator <(HybridTime left, HybridTime right) => left.CompareTo(right) < 0;

    /// <summary>True when the left reading is later.</summary>
    public static bool operator >(HybridTime left, HybridTime right) => left.CompareTo(right) > 0;

    /// <summary>True when the left reading is earlier or the same.</summary>
    public static bool operator <=(HybridTime left, HybridTime right) => left.CompareTo(right) <= 0;

    /// <summary>True when the left reading is later or the same.</summary>
    public static bool operator >=(HybridTime left, HybridTime right) => left.CompareTo(right) >= 0;

    /// <summary>The sortable text form, for example <c>0199a3c1f2b4-0000</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Milliseconds:x12}-{Counter:x4}");
}
