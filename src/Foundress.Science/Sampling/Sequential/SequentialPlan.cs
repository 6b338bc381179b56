using Foundress.Science.Estimation;

namespace Foundress.Science.Sampling;

/// <summary>
/// Sampling that stops as soon as the jars so far tell a low level from a high one: Wald's sequential probability ratio test,
/// ended after a fixed number of jars. Immutable.
/// </summary>
/// <remarks>
/// A. Wald 1945, Ann. Math. Stat. 16:117-186; 1947, Sequential Analysis. Formulas, sources and limits: docs/methods/sequential.md.
/// </remarks>
public sealed record SequentialPlan
{
    // Mites for which a line and a whole number differ by rounding only.
    private const double Hair = 1e-9;

    // Beyond so many mites a chart is of no use and the recursion no longer quick.
    private const double MostMites = 20_000d;

    private readonly double _perMite;
    private readonly double _perJar;
    private readonly SequentialLine[] _lines;

    /// <summary>A plan.</summary>
    /// <param name="aim">What it is to tell apart.</param>
    /// <param name="law">How mites are distributed: clumped when each jar comes from another colony.</param>
    /// <exception cref="ArgumentOutOfRangeException">A level has no meaning under the law, or the round would be decided by more than 20,000 mites.</exception>
    public SequentialPlan(SequentialAim aim, CountLaw law)
    {
        ArgumentNullException.ThrowIfNull(aim);
        ArgumentNullException.ThrowIfNull(law);
        law.Check(aim.High);
        (Aim, Law) = (aim, law);
        (_perMite, _perJar) = law.Ratio(aim.Low.PerBee, aim.High.PerBee, aim.BeesPerJar);
        if (!(ActLine(aim.MostJars) <= MostMites))
            throw new ArgumentOutOfRangeException(nameof(aim), aim, $"The round would be decided by more than {MostMites} mites: plan for fewer jars or lower levels.");
        _lines = new SequentialLine[aim.MostJars];
        for (int i = 0; i < _lines.Length; i++)
            _lines[i] = Line(i + 1);
    }

    /// <summary>What it is to tell apart.</summary>
    public SequentialAim Aim { get; }

    /// <summary>How mites are distributed.</summary>
    public CountLaw Law { get; }

    /// <summary>The chart: a row for each number of jars, the last one without going on.</summary>
    public IReadOnlyList<SequentialLine> Lines => _lines;

    /// <summary>The lower line before rounding: mites at or below which to wait, for a plan without end; may be negative.</summary>
    /// <param name="jars">Jars taken, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="jars"/> is below 1.</exception>
    public double WaitLine(int jars) => LineAt(jars, Aim.LogWait);

    /// <summary>The upper line before rounding: mites at or above which to act, for a plan without end.</summary>
    /// <param name="jars">Jars taken, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="jars"/> is below 1.</exception>
    public double ActLine(int jars) => LineAt(jars, Aim.LogAct);

    /// <summary>Where a round stands, with the bees that the jars really held.</summary>
    /// <param name="jars">The jars in the order taken; jars after the first decision do not change it. An uncertain number of bees is taken at its median.</param>
    public SequentialReading Judge(IReadOnlyList<JarCount> jars)
    {
        ArgumentNullException.ThrowIfNull(jars);
        double ratio = 0d;
        for (int i = 0; i < jars.Count; i++)
        {
            (double perMite, double perJar) = Law.Ratio(Aim.Low.PerBee, Aim.High.PerBee, jars[i].Exposure);
            ratio += (perMite * jars[i].Mites) - perJar;
            bool last = i + 1 == Aim.MostJars;
            if (ratio >= (last ? Hair * perMite : Aim.LogAct - (Hair * perMite)))
                return new(SequentialDecision.Act, i + 1, ratio);
            if (last || ratio <= Aim.LogWait + (Hair * perMite))
                return new(SequentialDecision.Wait, i + 1, ratio);
        }

        return new(SequentialDecision.GoOn, jars.Count, ratio);
    }

    /// <summary>How rounds end at a true level: exact for the plan with its whole-number lines and its end, by recursion over the jars.</summary>
    /// <param name="truth">The true level.</param>
    /// <remarks>Not Wald's approximations, which neglect how far a jar overshoots a line. Accurate to about 1e-11, absolute.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The level has no meaning under the law.</exception>
    public SequentialOutcome OutcomeAt(MiteLevel truth)
    {
        Law.Check(truth);
        double[] mass = Masses(truth, _lines.Max(line => line.ActFrom));
        double[] going = [1d];
        double wait = 0d;
        double act = 0d;
        double jars = 0d;
        foreach (SequentialLine line in _lines)
        {
            double alive = Sum(going);
            jars += alive;
            double[] next = Convolve(going, mass, line.ActFrom);
            act += Math.Max(0d, alive - Sum(next));
            for (int mites = 0; mites <= Math.Min(line.WaitUpTo ?? -1, next.Length - 1); mites++)
            {
                wait += next[mites];
                next[mites] = 0d;
            }

            going = next;
        }

        double all = wait + act;
        return new(Chance.Of(wait / all), Chance.Of(act / all), jars);
    }

    private static double[] Convolve(double[] going, double[] mass, int below)
    {
        double[] next = new double[below];
        for (int before = 0; before < going.Length; before++)
        {
            double chance = going[before];
            if (chance == 0d)
                continue;
            for (int mites = before; mites < below; mites++)
                next[mites] += chance * mass[mites - before];
        }

        return next;
    }

    private static double Sum(double[] chances)
    {
        double sum = 0d;
        foreach (double chance in chances)
            sum += chance;
        return sum;
    }

    private double[] Masses(MiteLevel truth, int most)
    {
        // A jar with more mites than the highest line ends the round whatever came before.
        double[] mass = new double[most];
        if (truth.PerBee == 0d)
        {
            mass[0] = 1d;
            return mass;
        }

        for (int mites = 0; mites < most; mites++)
            mass[mites] = Law.Mass(mites, truth.PerBee, Aim.BeesPerJar);
        return mass;
    }

    private double LineAt(int jars, double logRatio)
    {
        if (jars < 1)
            throw new ArgumentOutOfRangeException(nameof(jars), jars, "The lines are drawn for at least one jar.");
        return (logRatio + (_perJar * jars)) / _perMite;
    }

    // After the last jar the likelier of the two levels decides (Wald 1947, section 3.8).
    private SequentialLine Line(int jars)
    {
        if (jars == Aim.MostJars)
        {
            int middle = (int)Math.Floor(LineAt(jars, 0d) + Hair);
            return new(jars, middle, middle + 1);
        }

        int wait = (int)Math.Floor(WaitLine(jars) + Hair);
        return new(jars, wait < 0 ? null : wait, (int)Math.Ceiling(ActLine(jars) - Hair));
    }
}
