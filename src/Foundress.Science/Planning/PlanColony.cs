using Foundress.Science.Dynamics;
using Foundress.Science.Forecasting;
using Foundress.Science.Numerics;

namespace Foundress.Science.Planning;

/// <summary>One colony as its counts left it on the day a plan is made: the start of every course a plan may take.</summary>
/// <remarks>Safe for concurrent use: not changed after it was made.</remarks>
public sealed class PlanColony
{
    private readonly ModelDrift _drift;

    /// <summary>Takes over what a filter has learnt of a colony.</summary>
    /// <param name="filter">The filter, after its run.</param>
    /// <param name="history">The history it ran.</param>
    /// <param name="priors">The figures it ran with.</param>
    /// <param name="particles">How many of its particles to go on with, evenly picked; 16 or more, at most all.</param>
    /// <param name="further">Most controls of a plan.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are not so many particles.</exception>
    public PlanColony(ColonyFilter filter, ColonyHistory history, ForecastPriors priors, int particles, int further)
    {
        ArgumentNullException.ThrowIfNull(filter);
        ArgumentNullException.ThrowIfNull(history);
        ArgumentNullException.ThrowIfNull(priors);
        if (particles < 16 || particles > filter.Particles)
            throw new ArgumentOutOfRangeException(nameof(particles), particles, $"Go on with 16 to {filter.Particles} particles.");
        (Known, ControlSpread, NoiseSeed) = (history.Days.Controls.Length, priors.ControlSpread, filter.NoiseSeed);
        Room = Math.Min(Known + further, ColonyDays.MostControls);
        int[] from = new int[particles];
        for (int i = 0; i < particles; i++)
            from[i] = (int)((long)i * filter.Particles / particles);
        Ensemble = new(particles, Room);
        Ensemble.TakeFrom(filter.Ensemble, from, Known);
        _drift = new(particles);
        _drift.Begin(history, filter.Ensemble.Day, priors, NoiseSeed);
    }

    private PlanColony(PlanColony other, int particles)
    {
        (Known, ControlSpread, NoiseSeed, Room, _drift) = (other.Known, other.ControlSpread, other.NoiseSeed, other.Room, other._drift);
        int[] from = new int[particles];
        for (int i = 0; i < particles; i++)
            from[i] = (int)((long)i * other.Particles / particles);
        Ensemble = new(particles, Room);
        Ensemble.TakeFrom(other.Ensemble, from, Known);
    }

    /// <summary>Number of particles.</summary>
    public int Particles => Ensemble.Particles;

    /// <summary>The day the plan is made, counted from the first day of the colony's course.</summary>
    public int Today => Ensemble.Day;

    /// <summary>Most controls a plan of this colony may have.</summary>
    public int MostFurther => Room - Known;

    internal MiteEnsemble Ensemble { get; }

    internal int Known { get; }

    internal int Room { get; }

    internal double ControlSpread { get; }

    internal uint NoiseSeed { get; }

    /// <summary>The same colony with fewer particles, for a first look.</summary>
    /// <param name="particles">16 or more, at most all.</param>
    public PlanColony Fewer(int particles) => particles < 16 || particles > Particles
        ? throw new ArgumentOutOfRangeException(nameof(particles), particles, $"Go on with 16 to {Particles} particles.")
        : new(this, particles);

    internal (double Spread, double Moved) SpreadOn(ColonyDays days, int day) => _drift.SpreadOn(days, day);

    /// <summary>Lets loads of a day stray as those of a forecast do; only with all particles.</summary>
    internal void Stray(Span<float> loads, ColonyDays days, int day) => _drift.Apply(loads, days, day);

    /// <summary>The luck of a control in this colony: the same on whatever day it is used, and its own for each control.</summary>
    internal float[] Luck(ulong seed)
    {
        SeededGenerator generator = SeededGenerator.ForPart(seed, "further control");
        float[] luck = new float[Particles];
        for (int i = 0; i < luck.Length; i++)
            luck[i] = (float)generator.NextNormal();
        return luck;
    }
}
