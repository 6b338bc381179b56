using Foundress.Book.Records;
using Foundress.Science;
using Foundress.Science.Estimation;

namespace Foundress.Book.Calibrating;

/// <summary>The interval of one example jar, by what is known of its bees: shows what counting jars, and counting this jar, are worth.</summary>
/// <param name="Mites">Mites of the example jar.</param>
/// <param name="AsSaid">With the number of bees the measure is said to hold.</param>
/// <param name="AsTaught">With what the counted jars teach so far; none when they differ too much for one scoop.</param>
/// <param name="AfterMore">The same once as many more jars are counted as <see cref="More"/> says, should they be alike.</param>
/// <param name="IfCounted">With the bees of this very jar counted.</param>
public sealed record CountingGain(int Mites, LevelInterval AsSaid, LevelInterval? AsTaught, LevelInterval? AfterMore, LevelInterval IfCounted)
{
    /// <summary>How many more counted jars are looked at.</summary>
    public const int More = 10;

    /// <summary>Works it out.</summary>
    /// <param name="scoop">What the counted jars teach.</param>
    /// <param name="said">The bees as the measure is said to hold them.</param>
    /// <param name="mites">Mites of the example jar, 0 or more.</param>
    /// <param name="confidence">Confidence of the intervals, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static CountingGain Of(TaughtScoop scoop, JarBees said, int mites, double confidence)
    {
        var usual = Math.Max(1, Math.Round(scoop.Calibration.UsualBees));
        LevelInterval? With(double spread) => spread <= 1 ? Interval(BeeCount.Uncertain(BeeBasis.Assumed, usual, spread)) : null;
        LevelInterval Interval(BeeCount bees) => LevelPosterior.FromJar(mites, bees).Interval(confidence);
        return new CountingGain(
            mites, Interval(said.AsBeeCount), With(scoop.Calibration.ExpectedLogSpreadAfter(0)), With(scoop.Calibration.ExpectedLogSpreadAfter(More)),
            Interval(BeeCount.Counted((int)usual)));
    }
}
