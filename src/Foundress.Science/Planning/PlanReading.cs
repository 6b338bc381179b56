using Foundress.Science.Numerics;

namespace Foundress.Science.Planning;

/// <summary>What a plan comes to: the chance of standing over the line, for each colony, every few days.</summary>
/// <remarks>Safe for concurrent use: immutable.</remarks>
public sealed class PlanReading
{
    // Chances beyond this are as good as 0 or 1 for putting effects together.
    private const double MostProbit = 4d;

    private readonly float[] _chances;
    private readonly PlanAim _aim;
    private float[]? _probits;

    /// <summary>A reading.</summary>
    /// <param name="step">Days from one to the next, 1 or more.</param>
    /// <param name="colonies">Number of colonies, 1 or more.</param>
    /// <param name="chances">The chances, 0 to 1: all colonies of the first day, then of the next; taken over, not copied.</param>
    /// <param name="aim">What is to be kept to.</param>
    /// <exception cref="ArgumentException">The numbers do not fill whole days, or one is no chance.</exception>
    public PlanReading(int step, int colonies, float[] chances, PlanAim aim)
    {
        if (step < 1)
            throw new ArgumentOutOfRangeException(nameof(step), step, "Days go on by at least one.");
        if (colonies < 1 || chances.Length == 0 || chances.Length % colonies != 0)
            throw new ArgumentException($"{chances.Length} chances do not make whole days of {colonies} colonies.", nameof(chances));
        (Step, Colonies, _chances, _aim) = (step, colonies, chances, aim.Checked());
        double sum = 0d;
        for (int day = 0; day < Days; day++)
        {
            double worst = 0d;
            for (int colony = 0; colony < colonies; colony++)
            {
                float chance = chances[(day * colonies) + colony];
                if (chance is not (>= 0f and <= 1f))
                    throw new ArgumentException($"The chance of colony {colony} on day {day * step} is {chance}: it must lie between 0 and 1.", nameof(chances));
                worst = Math.Max(worst, chance);
                sum += chance;
            }

            if (day * step < aim.JudgedFrom)
                continue;
            if (worst > Peak)
                (Peak, PeakDay) = (worst, day * step);
            if (worst > aim.Tolerance)
                FirstOver ??= day * step;
        }

        DaysOver = sum * step / colonies;
    }

    /// <summary>Days from one reading to the next.</summary>
    public int Step { get; }

    /// <summary>Number of colonies.</summary>
    public int Colonies { get; }

    /// <summary>Number of days read.</summary>
    public int Days => _chances.Length / Colonies;

    /// <summary>The greatest chance of any colony on any day that counts, 0 to 1.</summary>
    public double Peak { get; }

    /// <summary>The day of it, counted from the day the plan is made.</summary>
    public int PeakDay { get; }

    /// <summary>The first day that counts on which some colony's chance is above the tolerance; null when there is none.</summary>
    public int? FirstOver { get; }

    /// <summary>Days a colony stands over the line on average, all days taken.</summary>
    public double DaysOver { get; }

    /// <summary>Whether the chance stays within the tolerance.</summary>
    public bool Holds => FirstOver is null;

    /// <summary>The chance of one colony on the nth day read.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such day or colony.</exception>
    public double Chance(int day, int colony) =>
        day >= 0 && day < Days && colony >= 0 && colony < Colonies
            ? _chances[(day * Colonies) + colony]
            : throw new ArgumentOutOfRangeException(nameof(day), day, $"There are {Days} days of {Colonies} colonies.");

    /// <summary>The greatest chance of one colony on the days that count.</summary>
    public double PeakOf(int colony)
    {
        double worst = 0d;
        for (int day = 0; day < Days; day++)
        {
            if (day * Step >= _aim.JudgedFrom)
                worst = Math.Max(worst, Chance(day, colony));
        }

        return worst;
    }

    /// <summary>The chance of a colony taken at random on the nth day read.</summary>
    public double Mean(int day)
    {
        double sum = 0d;
        for (int colony = 0; colony < Colonies; colony++)
            sum += Chance(day, colony);
        return sum / Colonies;
    }

    /// <summary>The chances as standard normal deviates, for putting the effects of controls together.</summary>
    internal float[] Probits => _probits ??= [.. _chances.Select(chance => (float)Math.Clamp(NormalDistribution.Quantile(chance), -MostProbit, MostProbit))];

    internal PlanAim Aim => _aim;

    internal int FirstJudged => Math.Min((_aim.JudgedFrom + Step - 1) / Step, Days) * Colonies;
}
