using System.Globalization;

namespace Foundress.Science;

/// <summary>
/// An infestation level of adult bees: mites for each 100 adult bees. An intensity, not a proportion: one bee can carry
/// several mites, so a level may exceed 100.
/// </summary>
/// <remarks>
/// Levels from different counting methods are on different scales (a wash, a sugar shake and an ether roll of the same
/// bees do not release the same share of mites). This type does not know the method; whoever compares two levels must.
/// Ordering is by size. Safe for concurrent use: immutable.
/// </remarks>
public readonly record struct MiteLevel : IComparable<MiteLevel>
{
    private MiteLevel(double per100Bees) => Per100Bees = per100Bees;

    /// <summary>Mites for each 100 adult bees; finite and not negative.</summary>
    public double Per100Bees { get; }

    /// <summary>Mites for each adult bee: a hundredth of <see cref="Per100Bees"/>.</summary>
    public double PerBee => Per100Bees / 100d;

    /// <summary>A level given as mites for each 100 adult bees.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="mites"/> is negative, infinite or not a number.</exception>
    public static MiteLevel Per100(double mites) =>
        double.IsFinite(mites) && mites >= 0
            ? new(mites)
            : throw new ArgumentOutOfRangeException(nameof(mites), mites, "A level is a finite number of mites per 100 bees, 0 or more.");

    /// <summary>A level given as mites for each single adult bee.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="mites"/> is negative, infinite or not a number.</exception>
    public static MiteLevel FromPerBee(double mites) => Per100(mites * 100d);

    /// <inheritdoc/>
    public int CompareTo(MiteLevel other) => Per100Bees.CompareTo(other.Per100Bees);

    /// <summary>True when the left level is lower.</summary>
    public static bool operator <(MiteLevel left, MiteLevel right) => left.Per100Bees < right.Per100Bees;

    /// <summary>True when the left level is higher.</summary>
    public static bool operator >(MiteLevel left, MiteLevel right) => left.Per100Bees > right.Per100Bees;

    /// <summary>True when the left level is lower or the same.</summary>
    public static bool operator <=(MiteLevel left, MiteLevel right) => left.Per100Bees <= right.Per100Bees;

    /// <summary>True when the left level is higher or the same.</summary>
    public static bool operator >=(MiteLevel left, MiteLevel right) => left.Per100Bees >= right.Per100Bees;

    /// <summary>For logs and debugging, for example <c>4.375/100</c>; not for people, who get their own locale's form.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Per100Bees:G6}/100");
}
