namespace Foundress.Science.Estimation;

/// <summary>What is known about weighing bees: all three figures are data.</summary>
public sealed record Weighing
{
    /// <summary>A way of weighing.</summary>
    /// <param name="spreadOfBees">Relative spread (standard deviation over mean) of the weight of single bees of one jar, above 0 and at most 1.</param>
    /// <param name="spreadOfPlaces">Relative spread of the mean weight between bees taken in different scoops of one place and day, 0 to 1; used when the sub-sample is not part of the jar.</param>
    /// <param name="scaleError">Standard error of one reading of the scale in grams, 0 or more: a resolution divided by √12 if nothing better is known.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public Weighing(double spreadOfBees, double spreadOfPlaces, double scaleError)
    {
        if (spreadOfBees is not (> 0d and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(spreadOfBees), spreadOfBees, "The relative spread of the weight of bees lies above 0 and at most 1, for example 0.12.");
        if (spreadOfPlaces is not (>= 0d and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(spreadOfPlaces), spreadOfPlaces, "The relative spread between scoops lies between 0 and 1.");
        if (!(scaleError >= 0d) || !double.IsFinite(scaleError))
            throw new ArgumentOutOfRangeException(nameof(scaleError), scaleError, "The error of the scale is in grams and 0 or more.");
        (SpreadOfBees, SpreadOfPlaces, ScaleError) = (spreadOfBees, spreadOfPlaces, scaleError);
    }

    /// <summary>Relative spread of the weight of single bees of one jar.</summary>
    public double SpreadOfBees { get; }

    /// <summary>Relative spread of the mean weight between scoops.</summary>
    public double SpreadOfPlaces { get; }

    /// <summary>Standard error of one reading of the scale, in grams.</summary>
    public double ScaleError { get; }

    /// <summary>The bees of a weighed jar.</summary>
    /// <param name="grams">Weight of all bees in the jar, above 0; the sub-sample included when it is part of the jar.</param>
    /// <param name="sample">The counted and weighed sub-sample.</param>
    /// <remarks>
    /// Ratio estimate with the delta method on the logarithm (W. G. Cochran 1977, Sampling Techniques, chapter 6):
    /// docs/methods/calibration.md.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The jar weighs less than the sub-sample taken from it, less than one bee, or so little that the scale's error leaves a log spread over 1.
    /// </exception>
    public BeeCount Bees(double grams, WeighedSample sample)
    {
        if (!(grams > 0d) || !double.IsFinite(grams))
            throw new ArgumentOutOfRangeException(nameof(grams), grams, "The weight of the bees is in grams and above 0.");
        if (!(sample.Bees >= 2))
            throw new ArgumentOutOfRangeException(nameof(sample), sample, "Give a sub-sample of bees that were counted and weighed.");
        if (sample.FromJar && grams < sample.Grams)
            throw new ArgumentOutOfRangeException(nameof(grams), grams, $"The jar cannot weigh less than the {sample.Grams} g of the sub-sample taken from it: give the weight of all its bees.");
        double bees = grams / sample.GramsPerBee;
        if (bees < 1d)
            throw new ArgumentOutOfRangeException(nameof(grams), grams, $"The weight is less than one bee's ({sample.GramsPerBee:G3} g): check the unit.");

        double ofBees = SpreadOfBees * SpreadOfBees;
        double ofScale = ScaleError * ScaleError;
        double scale = ofScale * ((1d / (grams * grams)) + (1d / (sample.Grams * sample.Grams)));

        // Bees of the sub-sample that are in the jar weigh the same on both sides of the ratio, so their share of the error drops out.
        double weights = sample.FromJar
            ? ofBees * Math.Max(0d, (1d / sample.Bees) - (1d / bees))
            : (ofBees * ((1d / sample.Bees) + (1d / bees))) + (SpreadOfPlaces * SpreadOfPlaces * 2d);
        double spread = Math.Sqrt(weights + scale);
        if (spread > 1d)
            throw new ArgumentOutOfRangeException(nameof(grams), grams, $"The scale's error of {ScaleError} g is too large for such a weight: weigh more bees or use a finer scale.");
        return BeeCount.Uncertain(BeeBasis.Weighed, bees, spread);
    }
}
