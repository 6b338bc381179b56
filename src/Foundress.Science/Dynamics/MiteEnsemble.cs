using Foundress.Science.Numerics;

namespace Foundress.Science.Dynamics;

/// <summary>
/// Many possible colonies side by side: the mites on adult bees and in each day's sealed cells, and what makes each colony
/// its own. One array for each quantity, so that a day is worked for many at a time.
/// </summary>
/// <remarks>Mutable; not safe for concurrent use. Reuse one for many colonies: it keeps its memory.</remarks>
public sealed class MiteEnsemble
{
    /// <summary>Particles are kept in whole groups of this many, wide enough for any processor's vectors.</summary>
    internal const int Group = 16;

    private readonly int _controls;

    /// <summary>Room for an ensemble.</summary>
    /// <param name="particles">Number of particles, 1 to 1,000,000.</param>
    /// <param name="controls">Number of controls whose effect differs between particles, 0 to <see cref="ColonyDays.MostControls"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public MiteEnsemble(int particles, int controls)
    {
        if (particles is < 1 or > 1_000_000)
            throw new ArgumentOutOfRangeException(nameof(particles), particles, "An ensemble has 1 to 1,000,000 particles.");
        if (controls is < 0 or > ColonyDays.MostControls)
            throw new ArgumentOutOfRangeException(nameof(controls), controls, $"A course takes at most {ColonyDays.MostControls} controls.");
        Particles = particles;
        _controls = controls;
        Stride = StrideOf(particles);
        OnAdultsArray = new float[Stride];
        WorkerCells = new float[Stride * MiteBiology.WorkerSealedDays];
        DroneCells = new float[Stride * MiteBiology.DroneSealedDays];
        Week = new float[Stride];
        ControlWeek = new float[Stride];
        BeesWeek = new float[Stride];
        ControlFactor = new float[Stride];
        StrengthArray = new float[Stride];
        LogReproductionArray = new float[Stride];
        InflowArray = new float[Stride];
        LateInflowArray = new float[Stride];
        AdultScaleArray = new float[Stride];
        BroodScaleArray = new float[Stride];
        DroneScaleArray = new float[Stride];
        ControlScales = new float[Stride * Math.Max(controls, 1)];
        Keys = new uint[Stride];
        for (int i = 0; i < Stride; i++)
            Keys[i] = ParticleNoise.Key(i);
        Reproduction = new float[Stride];
        PerAdultScale = new float[Stride];
        PerBroodScale = new float[Stride];
        PerDroneScale = new float[Stride];
        PerAdult = new float[Stride];
        Laying = new float[Stride];
        Infested = new float[Stride];
        foreach (float[] ones in (float[][])[StrengthArray, AdultScaleArray, BroodScaleArray, DroneScaleArray, ControlScales])
            Array.Fill(ones, 1f);
    }

    /// <summary>Number of particles.</summary>
    public int Particles { get; }

    /// <summary>The day whose start the state stands at, counted from the first day of the course.</summary>
    public int Day { get; internal set; }

    /// <summary>Mites on adult bees.</summary>
    public Span<float> OnAdults => OnAdultsArray.AsSpan(0, Particles);

    /// <summary>Adult bees left, as a share of those a colony free of mites would have, 0 to 1.</summary>
    public Span<float> Strength => StrengthArray.AsSpan(0, Particles);

    /// <summary>Natural logarithm of the colony's own factor on reproduction.</summary>
    public Span<float> LogReproduction => LogReproductionArray.AsSpan(0, Particles);

    /// <summary>Mites carried in from outside per day, all year.</summary>
    public Span<float> Inflow => InflowArray.AsSpan(0, Particles);

    /// <summary>Mites carried in per day in the late season, at its height, besides those of <see cref="Inflow"/>.</summary>
    public Span<float> LateInflow => LateInflowArray.AsSpan(0, Particles);

    /// <summary>Factor on the adult bees of the course.</summary>
    public Span<float> AdultScale => AdultScaleArray.AsSpan(0, Particles);

    /// <summary>Factor on the cells of the course, worker and drone.</summary>
    public Span<float> BroodScale => BroodScaleArray.AsSpan(0, Particles);

    /// <summary>Further factor on the drone cells of the course.</summary>
    public Span<float> DroneScale => DroneScaleArray.AsSpan(0, Particles);

    internal int Stride { get; }

    internal int Controls => _controls;

    internal float[] OnAdultsArray { get; }

    internal float[] WorkerCells { get; }

    internal float[] DroneCells { get; }

    internal float[] Week { get; }

    internal float[] ControlWeek { get; }

    internal float[] ControlFactor { get; }

    internal float[] BeesWeek { get; }

    internal float[] StrengthArray { get; }

    internal float[] LogReproductionArray { get; }

    internal float[] InflowArray { get; }

    internal float[] LateInflowArray { get; }

    internal float[] AdultScaleArray { get; }

    internal float[] BroodScaleArray { get; }

    internal float[] DroneScaleArray { get; }

    internal float[] ControlScales { get; }

    internal uint[] Keys { get; }

    // What one step of a day hands to the next.
    internal float[] Reproduction { get; }

    internal float[] PerAdultScale { get; }

    internal float[] PerBroodScale { get; }

    internal float[] PerDroneScale { get; }

    internal float[] PerAdult { get; }

    internal float[] Laying { get; }

    internal float[] Infested { get; }

    /// <summary>Factors on the kill rate of one control.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such control.</exception>
    public Span<float> ControlScale(int control)
    {
        if (control < 0 || control >= _controls)
            throw new ArgumentOutOfRangeException(nameof(control), control, $"The ensemble has {_controls} controls.");
        return ControlScales.AsSpan(control * Stride, Particles);
    }

    /// <summary>Mothers in sealed worker cells of one particle.</summary>
    public double InWorkerCells(int particle) => Sum(WorkerCells, MiteBiology.WorkerSealedDays, particle);

    /// <summary>Mothers in sealed drone cells of one particle.</summary>
    public double InDroneCells(int particle) => Sum(DroneCells, MiteBiology.DroneSealedDays, particle);

    /// <summary>
    /// Puts the colonies at the start of a day with the mites on their adult bees as given, and fills the sealed cells as if
    /// those mites had been there since the cells were sealed, growing a little. Strength becomes 1.
    /// </summary>
    /// <param name="days">The course.</param>
    /// <param name="day">The day, from 0 to the length of the course.</param>
    /// <param name="onAdults">Mites on adult bees for each particle, finite, 0 or more.</param>
    /// <param name="week">Standard normal number for each particle: how far its reproduction stands from its own mean this week.</param>
    /// <exception cref="ArgumentException">A value is out of its range, or the number of controls differs.</exception>
    public void Start(ColonyDays days, int day, ReadOnlySpan<float> onAdults, ReadOnlySpan<float> week)
    {
        if (day < 0 || day > days.Days)
            throw new ArgumentException($"Day {day} lies outside the course of {days.Days} days.", nameof(day));
        if (days.Controls.Length > _controls)
            throw new ArgumentException($"The course has {days.Controls.Length} controls, the ensemble room for {_controls}.", nameof(days));
        if (onAdults.Length != Particles || week.Length != Particles)
            throw new ArgumentException($"Give one number for each of the {Particles} particles.", nameof(onAdults));
        for (int i = 0; i < Particles; i++)
        {
            if (!(onAdults[i] >= 0f) || float.IsPositiveInfinity(onAdults[i]))
                throw new ArgumentException($"Mites on adults of particle {i} are {onAdults[i]}: a finite number, 0 or more, is needed.", nameof(onAdults));
        }

        Day = day;
        onAdults.CopyTo(OnAdultsArray);
        OnAdultsArray.AsSpan(Particles).Clear();
        Array.Fill(StrengthArray, 1f);
        float spread = (float)days.Biology.WeeklySpread;
        for (int i = 0; i < Stride; i++)
            Week[i] = i < Particles ? week[i] * spread : 0f;
        Array.Clear(ControlWeek);
        Array.Clear(BeesWeek);
        Cohorts(days, WorkerCells, MiteBiology.WorkerSealedDays, ColonyDays.WorkerRate);
        Cohorts(days, DroneCells, MiteBiology.DroneSealedDays, ColonyDays.DroneRate);
    }

    /// <summary>Replaces the particles by copies of some of them; keys stay, so that copies part again by chance.</summary>
    /// <param name="from">For each particle the one it becomes a copy of.</param>
    /// <param name="spare">Room for one number a particle.</param>
    internal void Become(ReadOnlySpan<int> from, Span<float> spare)
    {
        foreach (float[] array in (ReadOnlySpan<float[]>)[OnAdultsArray, Week, ControlWeek, BeesWeek, StrengthArray, LogReproductionArray, InflowArray, LateInflowArray, AdultScaleArray, BroodScaleArray, DroneScaleArray])
            Gather(array.AsSpan(0, Particles), from, spare);
        for (int control = 0; control < _controls; control++)
            Gather(ControlScales.AsSpan(control * Stride, Particles), from, spare);
        for (int slot = 0; slot < MiteBiology.WorkerSealedDays; slot++)
            Gather(WorkerCells.AsSpan(slot * Stride, Particles), from, spare);
        for (int slot = 0; slot < MiteBiology.DroneSealedDays; slot++)
            Gather(DroneCells.AsSpan(slot * Stride, Particles), from, spare);
    }

    /// <summary>Takes over the state and the colonies of another ensemble of the same size, and the effect of its first controls.</summary>
    /// <exception cref="ArgumentException">The sizes differ, or there are not so many controls.</exception>
    public void CopyFrom(MiteEnsemble other, int controls)
    {
        if (other.Particles != Particles)
            throw new ArgumentException($"The other ensemble has {other.Particles} particles, this one {Particles}.", nameof(other));
        if (controls < 0 || controls > _controls || controls > other._controls)
            throw new ArgumentException($"The ensembles have {other._controls} and {_controls} controls, not {controls}.", nameof(controls));
        Day = other.Day;
        other.OnAdultsArray.CopyTo(OnAdultsArray, 0);
        other.Week.CopyTo(Week, 0);
        other.ControlWeek.CopyTo(ControlWeek, 0);
        other.BeesWeek.CopyTo(BeesWeek, 0);
        other.StrengthArray.CopyTo(StrengthArray, 0);
        other.LogReproductionArray.CopyTo(LogReproductionArray, 0);
        other.InflowArray.CopyTo(InflowArray, 0);
        other.LateInflowArray.CopyTo(LateInflowArray, 0);
        other.AdultScaleArray.CopyTo(AdultScaleArray, 0);
        other.BroodScaleArray.CopyTo(BroodScaleArray, 0);
        other.DroneScaleArray.CopyTo(DroneScaleArray, 0);
        other.WorkerCells.CopyTo(WorkerCells, 0);
        other.DroneCells.CopyTo(DroneCells, 0);
        other.ControlScales.AsSpan(0, controls * Stride).CopyTo(ControlScales);
        other.Keys.CopyTo(Keys, 0);
    }

    /// <summary>Takes over the state and the colonies of some particles of another ensemble, and the effect of its first controls; keys stay its own.</summary>
    /// <param name="other">The other ensemble; it may have more particles or fewer.</param>
    /// <param name="from">For each particle of this one its model in the other.</param>
    /// <param name="controls">How many controls' effects are taken over.</param>
    internal void TakeFrom(MiteEnsemble other, ReadOnlySpan<int> from, int controls)
    {
        Day = other.Day;
        Some(other.OnAdultsArray, OnAdultsArray, from);
        Some(other.Week, Week, from);
        Some(other.ControlWeek, ControlWeek, from);
        Some(other.BeesWeek, BeesWeek, from);
        Some(other.StrengthArray, StrengthArray, from);
        Some(other.LogReproductionArray, LogReproductionArray, from);
        Some(other.InflowArray, InflowArray, from);
        Some(other.LateInflowArray, LateInflowArray, from);
        Some(other.AdultScaleArray, AdultScaleArray, from);
        Some(other.BroodScaleArray, BroodScaleArray, from);
        Some(other.DroneScaleArray, DroneScaleArray, from);
        for (int slot = 0; slot < MiteBiology.WorkerSealedDays; slot++)
            Some(other.WorkerCells.AsSpan(slot * other.Stride), WorkerCells.AsSpan(slot * Stride), from);
        for (int slot = 0; slot < MiteBiology.DroneSealedDays; slot++)
            Some(other.DroneCells.AsSpan(slot * other.Stride), DroneCells.AsSpan(slot * Stride), from);
        for (int control = 0; control < controls; control++)
            Some(other.ControlScales.AsSpan(control * other.Stride), ControlScales.AsSpan(control * Stride), from);
    }

    private static void Some(ReadOnlySpan<float> values, Span<float> to, ReadOnlySpan<int> from)
    {
        for (int i = 0; i < from.Length; i++)
            to[i] = values[from[i]];
    }

    internal static int StrideOf(int particles) => (particles + Group - 1) / Group * Group;

    internal static void Gather(Span<float> values, ReadOnlySpan<int> from, Span<float> spare)
    {
        for (int i = 0; i < from.Length; i++)
            spare[i] = values[from[i]];
        spare[..from.Length].CopyTo(values);
    }

    private void Cohorts(ColonyDays days, float[] cells, int length, int rate)
    {
        const double Growth = 0.015;
        for (int age = 1; age <= length; age++)
        {
            int at = Math.Clamp(Day - age, 0, days.Days - 1);
            ReadOnlySpan<float> row = days.Rows.AsSpan(at * ColonyDays.Width, ColonyDays.Width);
            double all = (row[ColonyDays.WorkerRate] + row[ColonyDays.DroneRate]) / (double)row[ColonyDays.Adults];
            double share = all > 0d ? row[rate] / (double)row[ColonyDays.Adults] / all * (1d - PortableFunctions.Exp(-all)) : 0d;
            float factor = (float)(share * PortableFunctions.Exp(-Growth * age));
            int slot = (((Day - age) % length) + length) % length;
            Span<float> cohort = cells.AsSpan(slot * Stride, Stride);
            for (int i = 0; i < Stride; i++)
                cohort[i] = OnAdultsArray[i] * factor;
        }
    }

    private double Sum(float[] cells, int length, int particle)
    {
        if (particle < 0 || particle >= Particles)
            throw new ArgumentOutOfRangeException(nameof(particle), particle, $"The ensemble has {Particles} particles.");
        double sum = 0d;
        for (int slot = 0; slot < length; slot++)
            sum += cells[(slot * Stride) + particle];
        return sum;
    }
}
