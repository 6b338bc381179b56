namespace Foundress.Science.Dynamics;

/// <summary>Takes an ensemble through days of a course. The inner loop of every forecast.</summary>
/// <remarks>
/// The daily model of <c>docs/methods/forecast.md</c>. A block of particles is taken through all days before the next, so
/// that its cells stay in the processor's nearest memory. Nothing is allocated. Only elementwise arithmetic and no fused
/// step: the result does not depend on the width of the vectors or the platform.
/// </remarks>
public static class MiteRun
{
    // Particles taken through all days before the next: their cells fit the processor's nearest memory.
    private const int Block = 128;

    /// <summary>Days of the model go by.</summary>
    /// <param name="ensemble">The colonies; its day moves to <paramref name="until"/>.</param>
    /// <param name="days">The course.</param>
    /// <param name="until">The day to stop at the start of: the ensemble's day to the length of the course.</param>
    /// <param name="seed">Seed of the chance in the flows.</param>
    /// <exception cref="ArgumentException">The day lies outside the course or before the ensemble's.</exception>
    public static void Advance(MiteEnsemble ensemble, ColonyDays days, int until, uint seed) => Advance(ensemble, days, until, seed, []);

    /// <summary>Days of the model go by, and the load at the start of each is kept.</summary>
    /// <param name="ensemble">The colonies; its day moves to <paramref name="until"/>.</param>
    /// <param name="days">The course.</param>
    /// <param name="until">The day to stop at the start of.</param>
    /// <param name="seed">Seed of the chance in the flows.</param>
    /// <param name="loads">Receives mites per adult bee, for each day gone by one run of <see cref="LoadStride"/> numbers; empty to keep none.</param>
    /// <exception cref="ArgumentException">The day lies outside the course or before the ensemble's, or there is too little room.</exception>
    public static void Advance(MiteEnsemble ensemble, ColonyDays days, int until, uint seed, Span<float> loads)
    {
        if (until < ensemble.Day || until > days.Days)
            throw new ArgumentException($"Day {until} lies before the ensemble's day {ensemble.Day} or behind the course of {days.Days} days.", nameof(until));
        if (ensemble.Controls < days.Controls.Length)
            throw new ArgumentException($"The course has {days.Controls.Length} controls, the ensemble room for {ensemble.Controls}.", nameof(days));
        if (loads.Length > 0 && loads.Length < (until - ensemble.Day) * ensemble.Stride)
            throw new ArgumentException($"{loads.Length} numbers of room are given; {(until - ensemble.Day) * ensemble.Stride} are needed.", nameof(loads));
        MiteDay.Constants constants = new(days.Biology);
        for (int first = 0; first < ensemble.Stride; first += Block)
        {
            int end = Math.Min(first + Block, ensemble.Stride);
            MiteDay.Open(ensemble, first, end);
            for (int day = ensemble.Day; day < until; day++)
            {
                if (day % 7 == 0)
                    MiteDay.NextWeek(ensemble, constants, day, seed, first, end);
                Span<float> today = loads.Length > 0 ? loads.Slice((day - ensemble.Day) * ensemble.Stride, ensemble.Stride) : [];
                if (days.Broodless(day))
                    MiteDay.GainBroodless(ensemble, days, day, seed, first, end, today);
                else
                    MiteDay.Gain(ensemble, days, constants, day, seed, first, end, today);
                MiteDay.Lose(ensemble, days, constants, day, seed, first, end);
            }
        }

        ensemble.Day = until;
    }

    /// <summary>How far apart two days' numbers lie in the loads kept by <see cref="Advance(MiteEnsemble, ColonyDays, int, uint, Span{float})"/>.</summary>
    public static int LoadStride(MiteEnsemble ensemble) => ensemble.Stride;

    /// <summary>Mites per adult bee of each particle at the start of the ensemble's day.</summary>
    /// <param name="ensemble">The colonies.</param>
    /// <param name="days">The course; the last day's bees stand for the day behind its end.</param>
    /// <param name="loads">Receives one number a particle.</param>
    /// <exception cref="ArgumentException">There is too little room.</exception>
    public static void Loads(MiteEnsemble ensemble, ColonyDays days, Span<float> loads)
    {
        if (loads.Length < ensemble.Particles)
            throw new ArgumentException($"{loads.Length} numbers of room are given; {ensemble.Particles} are needed.", nameof(loads));
        float adults = days.Rows[(Math.Min(ensemble.Day, days.Days - 1) * ColonyDays.Width) + ColonyDays.Adults];
        for (int i = 0; i < ensemble.Particles; i++)
            loads[i] = ensemble.OnAdultsArray[i] / (adults * ensemble.AdultScaleArray[i] * ensemble.StrengthArray[i] * (float)Numerics.PortableFunctions.Exp(ensemble.BeesWeek[i]));
    }
}
