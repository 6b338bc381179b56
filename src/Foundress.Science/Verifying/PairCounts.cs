namespace Foundress.Science.Verifying;

/// <summary>Counts and exposures of one colony before and after; mites are real numbers so that expected counts can be tried out.</summary>
internal readonly record struct PairCounts(double MitesBefore, double MitesAfter, double ExposureBefore, double ExposureAfter, double LogSpread)
{
    /// <summary>The same with so many times the jars after, at the level found.</summary>
    public PairCounts WithAfter(int times) => this with { MitesAfter = MitesAfter * times, ExposureAfter = ExposureAfter * times };
}
