using Foundress.Science.Dynamics.Bees;

namespace Foundress.Science.Dynamics;

/// <summary>Everything the mites of one colony meet from outside, day by day: bees, cells, death, inflow, controls, combs taken.</summary>
/// <remarks>Safe for concurrent use: immutable. The state at the start of a day sees that day's bees; a control or comb cut of a day works after a jar of that day.</remarks>
public sealed class ColonyDays
{
    /// <summary>Most controls in one course.</summary>
    public const int MostControls = 32;

    internal const int Width = 13;
    internal const int Adults = 0;
    internal const int WorkerRate = 1;
    internal const int DroneRate = 2;
    internal const int PerWorkerCell = 3;
    internal const int PerDroneCell = 4;
    internal const int Death = 5;
    internal const int LateInflow = 6;
    internal const int AdultsKept = 7;
    internal const int WorkersKept = 8;
    internal const int DronesKept = 9;
    internal const int Recruits = 10;
    internal const int FullLaying = 11;
    internal const int Drones = 12;

    private readonly ControlEffect[] _controls;
    private readonly bool[] _broodless;
    private readonly bool[] _controlled;

    private ColonyDays(BeeCourse bees, MiteBiology biology, ControlEffect[] controls, ColonyDays? like = null)
    {
        (Bees, Biology, _controls) = (bees, biology, controls);
        Rows = like?.Rows ?? new float[bees.Days * Width];
        _broodless = like?._broodless ?? new bool[bees.Days];
        _controlled = new bool[bees.Days];
        for (int day = 0; day < bees.Days; day++)
        {
            for (int control = 0; control < controls.Length; control++)
                _controlled[day] |= AtWork(control, day);
        }

        AdultHazards = Hazards(controls, control => control.AdultKillPerDay);
        BroodHazards = Hazards(controls, control => control.BroodKillPerDay);
    }

    /// <summary>The bees.</summary>
    public BeeCourse Bees { get; }

    /// <summary>The figures of mite life.</summary>
    public MiteBiology Biology { get; }

    /// <summary>The number of days.</summary>
    public int Days => Bees.Days;

    /// <summary>The controls, in the order given; an ensemble has one scale of effect for each.</summary>
    public ReadOnlySpan<ControlEffect> Controls => _controls;

    internal float[] Rows { get; }

    // One run of days for each control.
    internal float[] AdultHazards { get; }

    internal float[] BroodHazards { get; }

    /// <summary>Puts a course together.</summary>
    /// <param name="bees">The bees.</param>
    /// <param name="biology">The figures of mite life.</param>
    /// <param name="hemisphere">Which half of the world: when the late inflow of mites comes.</param>
    /// <param name="controls">At most <see cref="MostControls"/> controls; several may be at work at once.</param>
    /// <param name="taken">Mites that leave with bees or combs; days outside the course are passed over.</param>
    /// <exception cref="ArgumentException">A value is out of its range, or there are too many controls.</exception>
    public static ColonyDays Of(
        BeeCourse bees, MiteBiology biology, Hemisphere hemisphere, IReadOnlyList<ControlEffect> controls, IReadOnlyList<MitesTaken> taken)
    {
        ArgumentNullException.ThrowIfNull(bees);
        if (controls.Count > MostControls)
            throw new ArgumentException($"{controls.Count} controls are given; a course takes at most {MostControls}.", nameof(controls));
        ColonyDays days = new(bees, biology.Checked(), [.. controls.Select(control => control.Checked())]);
        double[] losses = days.Losses();
        for (int day = 0; day < bees.Days; day++)
            days.Fill(day, hemisphere, losses);
        foreach (MitesTaken loss in taken)
            days.Take(loss.Checked());
        return days;
    }

    /// <summary>The same course with further controls behind its own; cheap, for trying many.</summary>
    /// <exception cref="ArgumentException">There are more than <see cref="MostControls"/> controls.</exception>
    public ColonyDays With(IReadOnlyList<ControlEffect> further)
    {
        if (further.Count == 0)
            return this;
        if (_controls.Length + further.Count > MostControls)
            throw new ArgumentException($"{_controls.Length + further.Count} controls are given; a course takes at most {MostControls}.", nameof(further));
        return new(Bees, Biology, [.. _controls, .. further.Select(control => control.Checked())], this);
    }

    /// <summary>The share of the full late inflow of mites on a day, 0 to 1, rising and falling over three weeks.</summary>
    internal static double LateShare(MiteBiology biology, Hemisphere hemisphere, DateOnly day)
    {
        const double Ramp = 21d;
        double northern = hemisphere == Hemisphere.North ? day.DayOfYear : ((day.DayOfYear + 181) % 365) + 1;
        double rise = (northern - biology.LateInflowStart) / Ramp;
        double fall = (biology.LateInflowEnd - northern) / Ramp;
        return Math.Clamp(Math.Min(rise, fall), 0d, 1d);
    }

    /// <summary>Whether no cell is sealed on a day and none sealed 12 and 14 days ago gives bees.</summary>
    internal bool Broodless(int day) => _broodless[day];

    /// <summary>Whether any control kills mites on a day.</summary>
    internal bool Controlled(int day) => _controlled[day];

    internal bool AtWork(int control, int day) => day >= _controls[control].FirstDay && day < _controls[control].EndDay;

    private float[] Hazards(ControlEffect[] controls, Func<ControlEffect, double> killPerDay)
    {
        float[] hazards = new float[controls.Length * Days];
        for (int control = 0; control < controls.Length; control++)
        {
            double first = -Numerics.PortableFunctions.Log(1d - killPerDay(controls[control]));
            for (int day = Math.Max(controls[control].FirstDay, 0); day < Math.Min(controls[control].EndDay, Days); day++)
                hazards[(control * Days) + day] = (float)(first * controls[control].ShareOn(day));
        }

        return hazards;
    }

    private void Fill(int day, Hemisphere hemisphere, double[] losses)
    {
        ReadOnlySpan<float> workers = Bees.WorkerSealed;
        ReadOnlySpan<float> drones = Bees.DroneSealed;
        // The course gives the bees at the close of a day; a day of the mites starts with those of the evening before.
        double adults = Math.Max(Bees.Adults[Math.Max(day - 1, 0)], 1f);
        double emergingWorkers = workers[Math.Max(day - MiteBiology.WorkerSealedDays, 0)];
        double emergingDrones = drones[Math.Max(day - MiteBiology.DroneSealedDays, 0)];
        // A few cells a day are a colony that is stopping: death goes over from one season's rate to the other's.
        double brood = Math.Min(1d, workers[day] / 200d);
        Span<float> row = Rows.AsSpan(day * Width, Width);
        row[Adults] = (float)adults;
        row[WorkerRate] = (float)(Biology.InvasionScale * Biology.WorkerInvasion * workers[day] / Biology.BeeGrams);
        row[DroneRate] = (float)(Biology.InvasionScale * Biology.DroneInvasion * drones[day] / Biology.BeeGrams);
        row[PerWorkerCell] = (float)(1d / Math.Max(emergingWorkers, 1d));
        row[PerDroneCell] = (float)(1d / Math.Max(emergingDrones, 1d));
        row[Death] = (float)((brood * Biology.DeathWithBrood) + ((1d - brood) * Math.Max(Biology.DeathBroodless, brood < 1d ? WinterLoss(day, losses) : 0d)));
        row[LateInflow] = (float)LateShare(Biology, hemisphere, Bees.FirstDay.AddDays(day));
        row[AdultsKept] = 1f;
        row[WorkersKept] = 1f;
        row[DronesKept] = 1f;
        row[Recruits] = (float)Math.Min(0.3, emergingWorkers / adults);
        row[FullLaying] = (float)(adults + Biology.HalfLayingBees);
        row[Drones] = emergingDrones > 0d ? 1f : 0f;
        _broodless[day] = row[WorkerRate] == 0f && row[DroneRate] == 0f && emergingWorkers == 0d && emergingDrones == 0d;
    }

    // Without brood as many mites in a hundred are lost as bees (the two bounds are product choices): dead bees carried no fewer mites than live ones, and the load on
    // those left did not rise (Fries & Perez-Escala 2001, Apidologie 32:223-229, from November to February). Mites ride on the
    // young bees that winter, not on the last of summer: so the least loss of the months around counts. A colony without brood in
    // summer has no such bees. A swarm or split is no loss.
    private static double WinterLoss(int day, double[] losses)
    {
        const int Around = 90;
        const double MostOfWinterBees = 0.01;
        double least = double.PositiveInfinity;
        foreach (double loss in losses.AsSpan(Math.Max(day - Around, 0)..Math.Min(day + Around + 1, losses.Length)))
            least = Math.Min(least, loss);
        return least <= MostOfWinterBees ? least : 0d;
    }

    // The share of the bees lost on each day; nothing is said of the first and of days without bees.
    private double[] Losses()
    {
        double[] losses = new double[Days];
        losses[0] = double.PositiveInfinity;
        for (int day = 1; day < Days; day++)
        {
            double before = Bees.Adults[day - 1];
            double emerged = Bees.WorkerSealed[Math.Max(day - MiteBiology.WorkerSealedDays, 0)];
            losses[day] = before >= 1d ? Math.Max(0d, before + emerged - Bees.Adults[day]) / before : double.PositiveInfinity;
        }

        return losses;
    }

    private void Take(MitesTaken loss)
    {
        if (loss.Day < 0 || loss.Day >= Days)
            return;
        Span<float> row = Rows.AsSpan(loss.Day * Width, Width);
        row[AdultsKept] *= (float)(1d - loss.OnAdults);
        row[WorkersKept] *= (float)(1d - loss.InWorkerCells);
        row[DronesKept] *= (float)(1d - loss.InDroneCells);
    }
}
