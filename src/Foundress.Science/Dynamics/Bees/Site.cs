namespace Foundress.Science.Dynamics.Bees;

/// <summary>Where colonies stand, as far as their season depends on it.</summary>
public readonly record struct Site
{
    /// <summary>A site.</summary>
    /// <param name="hemisphere">Its half of the world.</param>
    /// <param name="degreesFromEquator">0 to 90; null when not known: the climate's own season is then taken as it stands.</param>
    /// <param name="altitude">Metres above the sea, -430 to 6,000; null when not known.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public Site(Hemisphere hemisphere, double? degreesFromEquator = null, double? altitude = null)
    {
        if (degreesFromEquator is { } degrees && degrees is not (>= 0 and <= 90))
            throw new ArgumentOutOfRangeException(nameof(degreesFromEquator), degrees, "The distance from the equator lies between 0 and 90 degrees.");
        if (altitude is { } metres && metres is not (>= -430 and <= 6000))
            throw new ArgumentOutOfRangeException(nameof(altitude), metres, "An altitude lies between -430 and 6,000 metres.");
        (Hemisphere, DegreesFromEquator, Altitude) = (hemisphere, degreesFromEquator, altitude);
    }

    /// <summary>Its half of the world.</summary>
    public Hemisphere Hemisphere { get; }

    /// <summary>Degrees from the equator, 0 to 90; null when not known.</summary>
    public double? DegreesFromEquator { get; }

    /// <summary>Metres above the sea; null when not known.</summary>
    public double? Altitude { get; }

    /// <summary>The site at a latitude, south negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static Site At(double latitude, double? altitude = null)
    {
        if (latitude is not (>= -90 and <= 90))
            throw new ArgumentOutOfRangeException(nameof(latitude), latitude, "A latitude lies from -90 (south) to 90 (north) degrees.");
        return new(latitude < 0 ? Hemisphere.South : Hemisphere.North, Math.Abs(latitude), altitude);
    }
}
