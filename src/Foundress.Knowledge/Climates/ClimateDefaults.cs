namespace Foundress.Knowledge;

/// <summary>Picks a climate for a keeper who has not.</summary>
public static class ClimateDefaults
{
    /// <summary>The climate a site starts with until the keeper chooses.</summary>
    /// <param name="climates">The climates known.</param>
    /// <param name="latitude">Degrees, north positive, -90 to 90. Latitude alone is a poor guide to a climate: ask the keeper.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="latitude"/> is not from -90 to 90.</exception>
    public static Climate DefaultFor(this Catalog<Climate> climates, double latitude)
    {
        if (latitude is not (>= -90 and <= 90))
            throw new ArgumentOutOfRangeException(nameof(latitude), latitude, "A latitude lies from -90 (south) to 90 (north) degrees.");
        var degrees = Math.Abs(latitude);
        foreach (var climate in climates)
        {
            if (climate.IsDefaultAt(degrees))
                return climate;
        }

        throw new KnowledgeException($"No climate is the default at {degrees} degrees from the equator: the bands in climates.json must cover 0 to 90.");
    }
}
