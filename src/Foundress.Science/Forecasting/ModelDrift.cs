using Foundress.Science.Dynamics;
using Foundress.Science.Numerics;

namespace Foundress.Science.Forecasting;

/// <summary>
/// What the model leaves out: the farther a level is foretold behind the last count, the farther it strays from every course
/// the model knows.
/// </summary>
/// <remarks>
/// A lognormal factor with a spread that grows, at first with the root of time, and levels off; one for each particle for all days, in the manner of
/// Kennedy &amp; O'Hagan 2001 (J R Stat Soc B 63:425-464): a model that is tuned but wrong must say so. It strays
/// farther after a control: trials of one agent differ from each other as wholes.
/// </remarks>
internal sealed class ModelDrift(int particles)
{
    private const double Month = 30d;

    // After so many days a control has shown what it does.
    private const double ControlDays = 14d;

    private readonly float[] _drifts = new float[particles];
    private ForecastPriors? _priors;
    private int _lastCount;

    /// <summary>Begins anew for a run: the same drifts for every course that goes on from it.</summary>
    internal void Begin(ColonyHistory history, int until, ForecastPriors priors, uint seed)
    {
        (_priors, _lastCount) = (priors, LastCount(history, until));
        SeededGenerator generator = SeededGenerator.ForPart(seed, "what the model leaves out");
        for (int i = 0; i < _drifts.Length; i++)
            _drifts[i] = (float)generator.NextNormal();
    }

    /// <summary>Lets the loads of days in a row stray, laid out a stride apart.</summary>
    internal void Apply(float[] loads, ColonyDays days, int firstDay, int count)
    {
        int stride = MiteEnsemble.StrideOf(_drifts.Length);
        for (int day = 0; day < count; day++)
            Apply(loads.AsSpan(day * stride, _drifts.Length), days, firstDay + day);
    }

    /// <summary>Lets the loads of one day stray; up to the last count nothing does.</summary>
    internal void Apply(Span<float> loads, ColonyDays days, int day)
    {
        var (spread, lowered) = SpreadOn(days, day);
        if (spread == 0d)
            return;
        for (int i = 0; i < _drifts.Length; i++)
            loads[i] *= (float)PortableFunctions.Exp((spread * _drifts[i]) + lowered);
    }

    /// <summary>How far loads of a day stray: spread of their natural logarithm about a mean that is moved by a little.</summary>
    internal (double Spread, double Moved) SpreadOn(ColonyDays days, int day)
    {
        if (_priors is not { } priors || day <= _lastCount)
            return (0d, 0d);
        double time = priors.DriftPerMonth * priors.DriftPerMonth * Forgotten(day - _lastCount, priors) / Forgotten(Month, priors);
        double control = priors.DriftAfterControl * priors.DriftAfterControl * Math.Min(1d, Controlled(days, day) / ControlDays);

        // What is not known of a control must not raise the mean course.
        return (Math.Sqrt(time + control), -control / 2d);
    }

    // The variance of a stray that comes and goes (Ornstein-Uhlenbeck), as a share of what it comes to in the end.
    private static double Forgotten(double days, ForecastPriors priors) => 1d - PortableFunctions.Exp(-2d * days / priors.DriftMemory);

    // Days up to a day since the first control that was at work behind the last count began, or since that count.
    private int Controlled(ColonyDays days, int day)
    {
        int most = 0;
        foreach (ControlEffect control in days.Controls)
        {
            if (control.EndDay > _lastCount && control.FirstDay < day)
                most = Math.Max(most, day - Math.Max(control.FirstDay, _lastCount));
        }

        return most;
    }

    // A colony without counts is believed as wide as its apiary leaves it; from the day of the run on it strays too.
    private static int LastCount(ColonyHistory history, int until)
    {
        int last = -1;
        foreach (Evidence count in history.Evidence)
            last = count.Day <= until ? Math.Max(last, count.Day) : last;
        return last < 0 ? until : last;
    }
}
