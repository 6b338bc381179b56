using Foundress.Science.Dynamics;
using Foundress.Science.Numerics;

namespace Foundress.Science.Forecasting;

/// <summary>
/// Follows one colony through its counts with many particles: those that foretell a count well stay and multiply.
/// </summary>
/// <remarks>
/// A sequential Monte Carlo filter (Gordon, Salmond &amp; Smith 1993) with systematic resampling, small moves of the
/// colony's own quantities that keep their mean and variance (Liu &amp; West 2001), and, where a count leaves few particles,
/// further passes whose particles are drawn near the counts and weighted back to the first belief (population Monte Carlo,
/// Cappé et al. 2004; the counts are first let in partly). Deterministic for a seed. Mutable, not safe for concurrent use;
/// reuse one for many colonies: it keeps its memory. <c>docs/methods/forecast.md</c>.
/// </remarks>
public sealed class ColonyFilter
{
    private const double FewShare = 0.03;
    private const double PartWeight = 0.3;
    private const double Widening = 1.5;
    private const double FarAround = 16d;
    private const double MoveShare = 0.1;
    private const double PriorShare = 0.15;

    private readonly double[] _weights;
    private readonly int[] _from;
    private readonly float[] _spare;
    private readonly float[] _zeros;
    private readonly float[] _start;
    private readonly float[] _loads;
    private readonly ModelDrift _drift;
    private float[] _quantities = [];
    private MiteEnsemble _ensemble;
    private ColonyHistory? _history;
    private float[] _course = [];
    private double _controlSpread;
    private double _logEvidence;
    private double _leastEffective;
    private int _strays;

    /// <summary>A filter.</summary>
    /// <param name="particles">Number of particles, 16 to 1,000,000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="particles"/> is out of its range.</exception>
    public ColonyFilter(int particles)
    {
        if (particles is < 16 or > 1_000_000)
            throw new ArgumentOutOfRangeException(nameof(particles), particles, "A filter works with 16 to 1,000,000 particles.");
        Particles = particles;
        _ensemble = new MiteEnsemble(particles, 0);
        (_weights, _from, _drift) = (new double[particles], new int[particles], new ModelDrift(particles));
        (_spare, _zeros, _start, _loads) = (new float[MiteEnsemble.StrideOf(particles)], new float[particles], new float[particles], new float[particles]);
    }

    /// <summary>Number of particles.</summary>
    public int Particles { get; }

    /// <summary>The particles as the last run left them, all of the same weight; valid until the next run.</summary>
    public MiteEnsemble Ensemble => _ensemble;

    /// <summary>The seed of the chance in flows of the last run, for going on with it.</summary>
    public uint NoiseSeed { get; private set; }

    /// <summary>Runs a history from its start to the start of a day, taking in every count up to and with that day.</summary>
    /// <param name="history">The history.</param>
    /// <param name="belief">What is believed of the colony before its own counts.</param>
    /// <param name="priors">The figures of counting and differing.</param>
    /// <param name="until">The day to stop at, from the start of the history to the length of the course. Later counts are not used.</param>
    /// <param name="seed">Seed of everything drawn.</param>
    /// <param name="keepCourse">Whether to keep the loads of every day for <see cref="Course"/>; costs memory and time.</param>
    /// <exception cref="ArgumentException">The belief is not one of this history, or the day lies outside.</exception>
    public FilterReport Run(ColonyHistory history, ColonyBelief belief, ForecastPriors priors, int until, ulong seed, bool keepCourse = false)
    {
        if (belief.Count != Quantity.FirstControl + history.Days.Controls.Length)
            throw new ArgumentException("The belief is not one of this history: the numbers of controls differ.", nameof(belief));
        if (until < history.StartDay || until > history.Days.Days)
            throw new ArgumentException($"Day {until} lies outside days {history.StartDay} to {history.Days.Days}.", nameof(until));
        priors.Checked();
        _history = history;
        _course = keepCourse ? new float[(until - history.StartDay) * MiteEnsemble.StrideOf(Particles)] : [];
        _controlSpread = priors.ControlSpread;
        Room(history.Days.Controls.Length);
        SeededGenerator generator = SeededGenerator.ForPart(seed, "colony filter");
        Pass(history, belief, belief, priors, until, scout: false, generator);
        int passes = 1;
        if (_leastEffective < FewShare || _strays > 0)
        {
            // Far around the belief, with a part of their weight, the counts show where they lie; then particles are drawn there.
            double before = _leastEffective < FewShare ? double.NegativeInfinity : _logEvidence;
            Pass(history, belief, Wide(belief), priors, until, scout: true, generator);
            Pass(history, belief, Around(belief), priors, until, scout: false, generator);
            passes = 3;
            if (_logEvidence < before)
            {
                // The counts are better taken as astray: back to the first run.
                generator = SeededGenerator.ForPart(seed, "colony filter");
                Pass(history, belief, belief, priors, until, scout: false, generator);
                passes = 4;
            }
        }

        Finish(generator);
        _drift.Begin(history, until, priors, NoiseSeed);
        return new(_logEvidence, _leastEffective, passes, _strays, _leastEffective < FewShare);
    }

    /// <summary>The colony's past as all its counts tell it, from the start of the history to the day of the last run.</summary>
    /// <param name="recovery">Share of the mites that the method of the level's scale brings off, above 0 to 1.</param>
    /// <exception cref="InvalidOperationException">The last run did not keep its course.</exception>
    public ColonyOutlook Course(double recovery)
    {
        if (_history is null || (_course.Length == 0 && _ensemble.Day > _history.StartDay))
            throw new InvalidOperationException("Run the filter with its course kept first.");
        float[] course = [.. _course];
        _drift.Apply(course, _history.Days, _history.StartDay, _ensemble.Day - _history.StartDay);
        return new(_history.Days.Bees.FirstDay.AddDays(_history.StartDay), _ensemble.Day - _history.StartDay, Particles, MiteEnsemble.StrideOf(Particles), course, recovery);
    }

    /// <summary>
    /// What may come: the particles of the last run go on through a course to come. Two courses that differ in a control meet the
    /// same luck, so that their difference is the control's.
    /// </summary>
    /// <param name="future">The course to come: that of the history, or one with other bees or with further controls behind the history's.</param>
    /// <param name="until">The day to stop at the start of, to the length of the course.</param>
    /// <param name="recovery">Share of the mites that the method of the level's scale brings off, above 0 to 1.</param>
    /// <param name="seed">Seed of the effect of further controls.</param>
    /// <exception cref="ArgumentException">The course lacks controls of the history, or the day lies outside.</exception>
    /// <exception cref="InvalidOperationException">Nothing was run before.</exception>
    public ColonyOutlook Project(ColonyDays future, int until, double recovery, ulong seed)
    {
        int known = (_history ?? throw new InvalidOperationException("Run the filter first.")).Days.Controls.Length;
        if (future.Controls.Length < known)
            throw new ArgumentException($"The course to come has {future.Controls.Length} controls, the history {known}: it must have those and may have more.", nameof(future));
        if (until < _ensemble.Day || until > future.Days)
            throw new ArgumentException($"Day {until} lies outside days {_ensemble.Day} to {future.Days}.", nameof(until));
        MiteEnsemble ensemble = new(Particles, future.Controls.Length);
        ensemble.CopyFrom(_ensemble, known);
        for (int control = known; control < future.Controls.Length; control++)
        {
            SeededGenerator generator = SeededGenerator.ForPart(seed, "further control");
            for (int i = 0; i < Particles; i++)
                _spare[i] = (float)generator.NextNormal();
            ControlScales.Fill(future.Controls[control], _controlSpread, _spare.AsSpan(0, Particles), ensemble.ControlScale(control));
        }

        int first = ensemble.Day;
        float[] loads = new float[(until - first) * ensemble.Stride];
        MiteRun.Advance(ensemble, future, until, NoiseSeed, loads);
        _drift.Apply(loads, future, first, until - first);
        return new(future.Bees.FirstDay.AddDays(first), until - first, Particles, ensemble.Stride, loads, recovery);
    }

    /// <summary>Mites per adult bee of each particle at the start of the ensemble's day, strayed by what the model leaves out.</summary>
    /// <param name="loads">Receives one number a particle.</param>
    /// <exception cref="ArgumentException">There is too little room.</exception>
    /// <exception cref="InvalidOperationException">Nothing was run before.</exception>
    public void Loads(Span<float> loads)
    {
        MiteRun.Loads(_ensemble, (_history ?? throw new InvalidOperationException("Run the filter first.")).Days, loads);
        _drift.Apply(loads, _history.Days, _ensemble.Day);
    }

    /// <summary>Mean and variance of the colony's own quantities after the last run.</summary>
    internal ColonyBelief Posterior() => Moments();

    private void Room(int controls)
    {
        if (_ensemble.Controls < controls)
            _ensemble = new MiteEnsemble(Particles, controls);
        int wanted = (Quantity.FirstControl + controls) * Particles;
        if (_quantities.Length < wanted)
            _quantities = new float[wanted];
    }

    private Span<float> Of(int quantity) => _quantities.AsSpan(quantity * Particles, Particles);

    private void Pass(
        ColonyHistory history, ColonyBelief belief, ColonyBelief near, ForecastPriors priors, int until, bool scout, SeededGenerator generator)
    {
        Draw(belief, near, scout, generator);
        Begin(history, generator);
        NoiseSeed = (uint)generator.NextUInt64();
        _logEvidence = 0d;
        _leastEffective = 1d;
        _strays = 0;
        ReadOnlySpan<Evidence> evidence = history.Evidence;
        for (int i = 0; i < evidence.Length && evidence[i].Day <= until; i++)
        {
            if (evidence[i].Day > _ensemble.Day)
                Advance(history, evidence[i].Day);
            TakeIn(evidence[i], priors, scout);
            if (i + 1 < evidence.Length && evidence[i + 1].Day == evidence[i].Day)
                continue;
            double effective = ParticleWeights.Effective(_weights);
            _leastEffective = Math.Min(_leastEffective, effective / Particles);
            if (effective < 0.5 * Particles)
                Resample(generator, move: true);
        }

        if (until > _ensemble.Day)
            Advance(history, until);
    }

    private void Advance(ColonyHistory history, int until)
    {
        int stride = MiteEnsemble.StrideOf(Particles);
        Span<float> loads = _course.Length > 0
            ? _course.AsSpan((_ensemble.Day - history.StartDay) * stride, (until - _ensemble.Day) * stride)
            : [];
        MiteRun.Advance(_ensemble, history.Days, until, NoiseSeed, loads);
    }

    private void Draw(ColonyBelief belief, ColonyBelief near, bool scout, SeededGenerator generator)
    {
        bool same = ReferenceEquals(belief, near);
        int wide = same || scout ? 0 : (int)(PriorShare * Particles);
        for (int quantity = 0; quantity < belief.Count; quantity++)
        {
            Span<float> values = Of(quantity);
            for (int i = 0; i < Particles; i++)
            {
                ColonyBelief from = i < wide ? belief : near;
                values[i] = (float)(from.Mean[quantity] + (Math.Sqrt(from.Variance[quantity]) * generator.NextNormal()));
            }
        }

        if (same || scout)
        {
            Array.Fill(_weights, 1d / Particles);
            return;
        }

        // Each particle is weighted by the first belief over the mixture it was drawn from.
        double priorShare = (double)wide / Particles;
        for (int i = 0; i < Particles; i++)
        {
            double difference = 0d;
            for (int quantity = 0; quantity < belief.Count; quantity++)
                difference += LogDensity(near, quantity, Of(quantity)[i]) - LogDensity(belief, quantity, Of(quantity)[i]);
            _weights[i] = 1d / (priorShare + ((1d - priorShare) * PortableFunctions.Exp(Math.Clamp(difference, -600d, 600d))));
        }

        ParticleWeights.Normalise(_weights);
    }

    private static double LogDensity(ColonyBelief belief, int quantity, double x)
    {
        double away = x - belief.Mean[quantity];
        return -0.5 * ((away * away / belief.Variance[quantity]) + PortableFunctions.Log(belief.Variance[quantity]));
    }

    private void Begin(ColonyHistory history, SeededGenerator generator)
    {
        for (int i = 0; i < Particles; i++)
            _zeros[i] = (float)generator.NextNormal();
        Translate();
        int first = Math.Max(history.StartDay - 1, 0);
        double adults = Math.Max(history.Days.Bees.Adults[first], 1f);
        Span<float> start = Of(Quantity.Start);
        Span<float> scale = _ensemble.AdultScale;
        for (int i = 0; i < Particles; i++)
            _start[i] = (float)Math.Min(PortableFunctions.Exp(Math.Min(start[i], 2f)) * adults * scale[i], 1e6);
        _ensemble.Start(history.Days, history.StartDay, _start, _zeros);
    }

    // From the log scale of beliefs to the factors of the ensemble.
    private void Translate()
    {
        Of(Quantity.Reproduction).CopyTo(_ensemble.LogReproduction);
        Exponential(Of(Quantity.Inflow), _ensemble.Inflow);
        Exponential(Of(Quantity.LateInflow), _ensemble.LateInflow);
        Exponential(Of(Quantity.Drones), _ensemble.DroneScale);
        Exponential(Of(Quantity.Adults), _ensemble.AdultScale);
        Exponential(Of(Quantity.Brood), _ensemble.BroodScale);
        ReadOnlySpan<ControlEffect> controls = _history!.Days.Controls;
        for (int control = 0; control < controls.Length; control++)
            ControlScales.Fill(controls[control], _controlSpread, Of(Quantity.FirstControl + control), _ensemble.ControlScale(control));
    }

    private static void Exponential(ReadOnlySpan<float> from, Span<float> to)
    {
        for (int i = 0; i < from.Length; i++)
            to[i] = Math.Clamp(from[i], -12f, 12f);
        VectorFunctions.Exp(to);
    }

    private void TakeIn(Evidence evidence, ForecastPriors priors, bool scout)
    {
        ExpectedCounts.Fill(evidence, _ensemble, _history!.Days, _loads);
        double stray = scout ? 0d : CountLikelihood.Stray(evidence, priors);
        double total = CountLikelihood.Weigh(evidence, stray, 1d - priors.StrayShare, _loads, scout ? PartWeight : 1d, _weights);
        _logEvidence += PortableFunctions.Log(Math.Max(total, 1e-300));
        _strays += stray > 0.5 * total ? 1 : 0;
        ParticleWeights.Normalise(_weights);
    }

    private void Resample(SeededGenerator generator, bool move)
    {
        ParticleWeights.Choose(_weights, generator.NextDouble(), _from);
        _ensemble.Become(_from, _spare);
        int count = Quantity.FirstControl + _history!.Days.Controls.Length;
        for (int quantity = 0; quantity < count; quantity++)
            MiteEnsemble.Gather(Of(quantity), _from, _spare);
        int stride = MiteEnsemble.StrideOf(Particles);
        for (int day = 0; day < _ensemble.Day - _history.StartDay && _course.Length > 0; day++)
            MiteEnsemble.Gather(_course.AsSpan(day * stride, Particles), _from, _spare);
        Array.Fill(_weights, 1d / Particles);
        if (move)
            Move(count, generator);
    }

    private void Move(int count, SeededGenerator generator)
    {
        float keep = (float)Math.Sqrt(1d - (MoveShare * MoveShare));
        for (int quantity = Quantity.Reproduction; quantity < count; quantity++)
        {
            if (quantity is Quantity.Adults or Quantity.Brood)
                continue;
            Span<float> values = Of(quantity);
            var (mean, variance) = Moments(values);
            float about = (float)mean;
            float spread = (float)(MoveShare * Math.Sqrt(variance));
            ParticleNoise.Normals(_ensemble.Keys, (uint)generator.NextUInt64(), _spare);
            for (int i = 0; i < values.Length; i++)
                values[i] = about + (keep * (values[i] - about)) + (spread * _spare[i]);
        }

        Translate();
    }

    private void Finish(SeededGenerator generator)
    {
        if (ParticleWeights.Effective(_weights) < 0.999 * Particles)
            Resample(generator, move: false);
    }

    private (double Mean, double Variance) Moments(ReadOnlySpan<float> values)
    {
        double mean = 0d;
        for (int i = 0; i < values.Length; i++)
            mean += _weights[i] * values[i];
        double variance = 0d;
        for (int i = 0; i < values.Length; i++)
            variance += _weights[i] * (values[i] - mean) * (values[i] - mean);
        return (mean, variance);
    }

    private ColonyBelief Moments()
    {
        int count = Quantity.FirstControl + _history!.Days.Controls.Length;
        double[] means = new double[count];
        double[] variances = new double[count];
        for (int quantity = 0; quantity < count; quantity++)
            (means[quantity], variances[quantity]) = Moments(Of(quantity));
        return new(means, variances);
    }

    private static ColonyBelief Wide(ColonyBelief belief)
    {
        double[] variance = [.. belief.Variance];
        variance[Quantity.Start] *= FarAround;
        return new([.. belief.Mean], variance);
    }

    private ColonyBelief Around(ColonyBelief belief)
    {
        ColonyBelief found = Moments();
        for (int quantity = 0; quantity < found.Count; quantity++)
            found.Variance[quantity] = Math.Clamp(found.Variance[quantity] * Widening, 0.02 * belief.Variance[quantity], belief.Variance[quantity]);
        return found;
    }
}
