using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Dynamics;
using Foundress.Science.Dynamics.Bees;

namespace Foundress.Reference.Tests.Dynamics;

/// <summary>A colony with the shipped figures at a site, and questions asked of its mean course.</summary>
internal sealed class PublishedYear
{
    private const int Particles = 512;
    private static readonly KnowledgeBase Knowledge = KnowledgeBase.Load();

    private readonly MiteEnsemble _ensemble;
    private readonly float _inflow;

    public PublishedYear(
        string climate, double latitude, DateOnly from, int days, double onAdults, float inflow = 0f, float lateInflow = 0f, double droneScale = 1d,
        MiteBiology? life = null, IReadOnlyList<ControlEffect>? controls = null, IReadOnlyList<BeeEvent>? events = null, IReadOnlyList<MitesTaken>? taken = null, bool coloniesDiffer = false, double? startLevel = null)
    {
        BroodSeason season = Knowledge.Bees.SeasonAt(climate, Site.At(latitude));
        Bees = BeeCourses.Of(season, [], events ?? [], from, from.AddDays(days));
        Days = ColonyDays.Of(Bees, life ?? Knowledge.Mites.Life, latitude < 0 ? Hemisphere.South : Hemisphere.North, controls ?? [], taken ?? []);
        _ensemble = new MiteEnsemble(Particles, Days.Controls.Length);
        _inflow = inflow;
        float[] mites = new float[Particles];
        Array.Fill(mites, (float)(startLevel / 100d * Bees.Adults[0] ?? onAdults));
        _ensemble.DroneScale.Fill((float)droneScale);
        _ensemble.Inflow.Fill(_inflow);
        _ensemble.LateInflow.Fill(lateInflow);
        double spread = coloniesDiffer ? Math.Sqrt(Math.Pow(Knowledge.Mites.Priors.ReproductionApiarySpread, 2) + Math.Pow(Knowledge.Mites.Priors.ReproductionColonySpread, 2)) : 0d;
        for (int i = 0; i < Particles; i++)
            _ensemble.LogReproduction[i] = (float)(spread * Foundress.Science.Numerics.NormalDistribution.Quantile((i + 0.5) / Particles));
        _ensemble.Start(Days, 0, mites, new float[Particles]);
    }

    public static MiteBiology Life => Knowledge.Mites.Life;

    public BeeCourse Bees { get; }

    public ColonyDays Days { get; }

    public double OnAdults => Mean(i => _ensemble.OnAdults[i]);

    public double Total => Mean(i => _ensemble.OnAdults[i] + _ensemble.InWorkerCells(i) + _ensemble.InDroneCells(i));

    public double ShareOnAdults => OnAdults / Total;

    public double Strength => Mean(i => _ensemble.Strength[i]);

    public double Adults => Bees.Adults[Math.Min(_ensemble.Day, Bees.Days - 1)] * Strength;

    public double LevelPer100 => 100d * OnAdults / Adults;

    /// <summary>Mites that die on the day ahead, wherever they fall: on bees, and mothers and daughters lost as bees emerge.</summary>
    public double DeadToday
    {
        get
        {
            int day = _ensemble.Day;
            MiteBiology life = Days.Biology;
            double ofAge = 1d - Math.Exp(-Days.Rows[(day * ColonyDays.Width) + ColonyDays.Death]);
            int worker = day % MiteBiology.WorkerSealedDays * _ensemble.Stride;
            int drone = day % MiteBiology.DroneSealedDays * _ensemble.Stride;
            double lostOfDaughters = life.EmergenceLoss * life.WorkerOffspring;
            double lostOfDroneDaughters = life.EmergenceLoss * life.DroneOffspring;
            return Mean(i => (_ensemble.OnAdults[i] * ofAge)
                + (_ensemble.WorkerCells[worker + i] * (1d - life.MotherReturn + lostOfDaughters))
                + (_ensemble.DroneCells[drone + i] * (1d - life.MotherReturn + lostOfDroneDaughters)));
        }
    }

    /// <summary>All mites for each that dies in a day, the mean over days in a row.</summary>
    public double MitesForEachDead(DateOnly from, DateOnly to) =>
        Enumerable.Range(0, to.DayNumber - from.DayNumber).Select(day => To(from.AddDays(day))).Average(year => year.Total / year.DeadToday);

    public PublishedYear To(DateOnly day)
    {
        MiteRun.Advance(_ensemble, Days, day.DayNumber - Bees.FirstDay.DayNumber, 1);
        return this;
    }

    public double GrowthTo(DateOnly day)
    {
        double before = Total;
        int from = _ensemble.Day;
        To(day);
        return Math.Log(Total / before) / (_ensemble.Day - from);
    }

    private double Mean(Func<int, double> of) => Enumerable.Range(0, Particles).Average(of);
}
