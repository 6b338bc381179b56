using System.Globalization;

namespace Foundress.Science;

/// <summary>A probability, 0 to 1. Immutable; ordering is by size.</summary>
public readonly record struct Chance : IComparable<Chance>
{
    private Chance(double value) => Value = value;

    /// <summary>The probability, 0 to 1 inclusive.</summary>
    public double Value { get; }

    /// <summary>The chance that it does not happen.</summary>
    public Chance Complement => new(1d - Value);

    /// <summary>A chance from a probability.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is below 0, above 1 or not a number.</exception>
    public static Chance Of(double probability) =>
        probability is >= 0d and <= 1d
            ? new(probability)
            : throw new ArgumentOutOfRangeException(nameof(probability), probability, "A chance lies between 0 and 1.");

    /// <inheritdoc/>
    public int CompareTo(Chance other) => Value.CompareTo(other.Value);

    /// <summary>True when the left chance is smaller.</summary>
    public static bool operator <(Chance left, Chance right) => left.Value < right.Value;

    /// <summary>True when the left chance is larger.</summary>
    public static bool operator >(Chance left, Chance right) => left.Value > right.Value;

    /// <summary>True when the left chance is smaller or the same.</summary>
    public static bool operator <=(Chance left, Chance right) => left.Value <= right.Value;

    /// <summary>True when the left chance is larger or the same.</summary>
    public static bool operator >=(Chance left, Chance right) => left.Value >= right.Value;

    /// <summary>For logs and debugging, for example <c>0.916</c>.</summary>
    public override string ToString() => Value.ToString("G6", CultureInfo.InvariantCulture);
}
