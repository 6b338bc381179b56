using System.Numerics;
using Foundress.Science.Numerics;

namespace Foundress.Science.Dynamics;

/// <summary>
/// The steps of one day for a block of particles, in their order. Each is a short loop over the block, so that a processor
/// can work at several groups of particles at once. Formulas and sources: <c>docs/methods/forecast.md</c>.
/// </summary>
internal static class MiteDay
{
    // Flows of more mites than this are taken at their mean: chance in them is small beside what differs between colonies.
    internal const float FewInFlow = 32f;
    internal const float FewOnAdults = 128f;
    internal const float MostMites = 1e7f;
    internal const float MostLoad = 2f;
    internal const float LeastStrength = 0.02f;

    /// <summary>The figures of mite life as the steps use them.</summary>
    internal sealed class Constants
    {
        internal Constants(MiteBiology biology)
        {
            WorkerCrowd = (float)(1d - PortableFunctions.Exp(-biology.WorkerCrowding));
            DroneCrowd = (float)(1d - PortableFunctions.Exp(-biology.DroneCrowding));
            MotherReturn = (float)biology.MotherReturn;
            WorkerBorn = (float)(biology.WorkerOffspring * (1d - biology.EmergenceLoss));
            DroneBorn = (float)(biology.DroneOffspring * (1d - biology.EmergenceLoss));
            HalfLaying = (float)biology.HalfLayingBees;
            LoadHazard = (float)biology.LoadHazard;
            InfestedLoss = (float)biology.InfestedLoss;
            WeekMemory = (float)biology.WeeklyMemory;
            WeekSpread = (float)(biology.WeeklySpread * Math.Sqrt(1d - (biology.WeeklyMemory * biology.WeeklyMemory)));
            BeesSpread = (float)(biology.BeesWeeklySpread * Math.Sqrt(1d - (biology.WeeklyMemory * biology.WeeklyMemory)));
            ControlSpread = (float)(biology.ControlWeeklySpread * Math.Sqrt(1d - (biology.WeeklyMemory * biology.WeeklyMemory)));
        }

        internal float WorkerCrowd { get; }

        internal float DroneCrowd { get; }

        internal float MotherReturn { get; }

        internal float WorkerBorn { get; }

        internal float DroneBorn { get; }

        internal float HalfLaying { get; }

        internal float LoadHazard { get; }

        internal float InfestedLoss { get; }

        internal float WeekMemory { get; }

        internal float WeekSpread { get; }

        internal float ControlSpread { get; }

        internal float BeesSpread { get; }
    }

    /// <summary>What stays the same for the whole run, and the week's factor on reproduction.</summary>
    internal static void Open(MiteEnsemble ensemble, int first, int end)
    {
        for (int i = first; i < end; i += Vector<float>.Count)
        {
            (Vector<float>.One / new Vector<float>(ensemble.BroodScaleArray, i)).CopyTo(ensemble.PerBroodScale, i);
        }

        Reproduction(ensemble, first, end);
        BeesScales(ensemble, first, end);
        ControlFactors(ensemble, first, end);
    }

    private static void BeesScales(MiteEnsemble ensemble, int first, int end)
    {
        for (int i = first; i < end; i += Vector<float>.Count)
            (VectorFunctions.Exp(-new Vector<float>(ensemble.BeesWeek, i)) / new Vector<float>(ensemble.AdultScaleArray, i)).CopyTo(ensemble.PerAdultScale, i);
    }

    private static void ControlFactors(MiteEnsemble ensemble, int first, int end)
    {
        for (int i = first; i < end; i += Vector<float>.Count)
            VectorFunctions.Exp(new Vector<float>(ensemble.ControlWeek, i)).CopyTo(ensemble.ControlFactor, i);
    }

    private static void Reproduction(MiteEnsemble ensemble, int first, int end)
    {
        float[] own = ensemble.LogReproductionArray;
        float[] week = ensemble.Week;
        float[] reproduction = ensemble.Reproduction;
        for (int i = first; i < end; i += Vector<float>.Count)
            VectorFunctions.Exp(new Vector<float>(own, i) + new Vector<float>(week, i)).CopyTo(reproduction, i);
    }

    /// <summary>A week's deviations of reproduction, of the bees and of the effect of controls go over into the next.</summary>
    internal static void NextWeek(MiteEnsemble ensemble, Constants constants, int day, uint seed, int first, int end)
    {
        float[] week = ensemble.Week;
        Vector<float> memory = new(constants.WeekMemory);
        Vector<float> spread = new(constants.WeekSpread);
        uint word = ParticleNoise.Word(seed, day, 6);
        for (int i = first; i < end; i += Vector<float>.Count)
            ((new Vector<float>(week, i) * memory) + (spread * ParticleNoise.Normal(ParticleNoise.Bits(new Vector<uint>(ensemble.Keys, i), word)))).CopyTo(week, i);
        Reproduction(ensemble, first, end);
        week = ensemble.BeesWeek;
        spread = new(constants.BeesSpread);
        word = ParticleNoise.Word(seed, day, 8);
        for (int i = first; i < end; i += Vector<float>.Count)
            ((new Vector<float>(week, i) * memory) + (spread * ParticleNoise.Normal(ParticleNoise.Bits(new Vector<uint>(ensemble.Keys, i), word)))).CopyTo(week, i);
        BeesScales(ensemble, first, end);
        if (ensemble.Controls == 0)
            return;
        week = ensemble.ControlWeek;
        spread = new(constants.ControlSpread);
        word = ParticleNoise.Word(seed, day, 7);
        for (int i = first; i < end; i += Vector<float>.Count)
            ((new Vector<float>(week, i) * memory) + (spread * ParticleNoise.Normal(ParticleNoise.Bits(new Vector<uint>(ensemble.Keys, i), word)))).CopyTo(week, i);
        ControlFactors(ensemble, first, end);
    }

    /// <summary>The day's bees, and laying as a share of that of a colony free of mites.</summary>
    internal static void Prepare(MiteEnsemble ensemble, ColonyDays days, Constants constants, int day, int first, int end, Span<float> loads)
    {
        int row = day * ColonyDays.Width;
        float course = days.Rows[row + ColonyDays.Adults];
        Vector<float> bees = new(course);
        Vector<float> perBee = new(1f / course);
        Vector<float> full = new(days.Rows[row + ColonyDays.FullLaying]);
        Vector<float> perFull = new(1f / days.Rows[row + ColonyDays.FullLaying]);
        Vector<float> half = new(constants.HalfLaying);
        float[] strengths = ensemble.StrengthArray;
        float[] perScales = ensemble.PerAdultScale;
        for (int i = first; i < end; i += Vector<float>.Count)
        {
            Vector<float> perStrength = Vector<float>.One / new Vector<float>(strengths, i);
            Vector<float> perAdult = perBee * new Vector<float>(perScales, i) * perStrength;
            Vector<float> slower = bees + (half * perStrength);
            perAdult.CopyTo(ensemble.PerAdult, i);
            (full / slower).CopyTo(ensemble.Laying, i);
            (slower * perFull).CopyTo(ensemble.PerLaying, i);
            if (loads.Length > 0)
                (new Vector<float>(ensemble.OnAdultsArray, i) * perAdult).CopyTo(loads.Slice(i, Vector<float>.Count));
        }
    }

    /// <summary>Bees emerge with the mites of the cells sealed 12 and 14 days ago.</summary>
    /// <remarks>Mothers per cell follow the geometric law (negative binomial of size 1), so success and infested cells are ratios of polynomials.</remarks>
    internal static void Emerge(MiteEnsemble ensemble, ColonyDays days, Constants constants, int day, uint seed, int first, int end)
    {
        int row = day * ColonyDays.Width;
        int worker = day % MiteBiology.WorkerSealedDays * ensemble.Stride;
        int drone = day % MiteBiology.DroneSealedDays * ensemble.Stride;
        bool drones = days.Rows[row + ColonyDays.Drones] > 0f;
        Vector<float> one = Vector<float>.One;
        Vector<float> perWorkerCell = new(days.Rows[row + ColonyDays.PerWorkerCell]);
        Vector<float> perDroneCell = new(days.Rows[row + ColonyDays.PerDroneCell]);
        Vector<float> workerCrowd = new(constants.WorkerCrowd);
        Vector<float> droneCrowd = new(constants.DroneCrowd);
        Vector<float> motherReturn = new(constants.MotherReturn);
        Vector<float> workerBorn = new(constants.WorkerBorn);
        Vector<float> droneBorn = new(constants.DroneBorn);
        Vector<float> fewInFlow = new(FewInFlow);
        float[] onAdults = ensemble.OnAdultsArray;
        float[] workerCells = ensemble.WorkerCells;
        float[] droneCells = ensemble.DroneCells;
        uint word = ParticleNoise.Word(seed, day, 1);
        for (int i = first; i < end; i += Vector<float>.Count)
        {
            Vector<float> reproduction = new(ensemble.Reproduction, i);
            Vector<float> perCells = new Vector<float>(ensemble.PerBroodScale, i) * new Vector<float>(ensemble.PerLaying, i);
            Vector<float> mothers = new(workerCells, worker + i);
            Vector<float> perCell = mothers * perWorkerCell * perCells;
            Vector<float> crowd = one + (perCell * workerCrowd);
            Vector<float> square = crowd * crowd;
            Vector<float> both = one / ((one + perCell) * square);
            (perCell * square * both).CopyTo(ensemble.Infested, i);
            Vector<float> back = mothers * (motherReturn + (workerBorn * reproduction * ((one + perCell) * both)));
            if (drones)
            {
                mothers = new Vector<float>(droneCells, drone + i);
                crowd = one + (mothers * perDroneCell * perCells * droneCrowd / new Vector<float>(ensemble.DroneScaleArray, i));
                back += mothers * (motherReturn + (droneBorn * reproduction / (crowd * crowd)));
            }

            Vector<int> few = Vector.LessThan(back, fewInFlow) & Vector.GreaterThan(back, Vector<float>.Zero);
            if (!Vector.EqualsAll(few, Vector<int>.Zero))
                back = Vector.ConditionalSelect(few, ParticleNoise.Whole(back, back, ParticleNoise.Bits(new Vector<uint>(ensemble.Keys, i), word)), back);
            (new Vector<float>(onAdults, i) + back).CopyTo(onAdults, i);
        }
    }

    /// <summary>Mites come in from outside; bees that leave take theirs along; few mites are whole mites.</summary>
    internal static void Arrive(MiteEnsemble ensemble, ColonyDays days, int day, uint seed, int first, int end)
    {
        int row = day * ColonyDays.Width;
        Vector<float> late = new(days.Rows[row + ColonyDays.LateInflow]);
        Vector<float> kept = new(days.Rows[row + ColonyDays.AdultsKept]);
        Vector<float> fewOnAdults = new(FewOnAdults);
        Vector<float> most = new(MostMites);
        uint word = ParticleNoise.Word(seed, day, 2);
        uint rounding = ParticleNoise.Word(seed, day, 0);
        for (int i = first; i < end; i += Vector<float>.Count)
        {
            Vector<float> onAdults = new(ensemble.OnAdultsArray, i);
            Vector<float> arrivals = new Vector<float>(ensemble.InflowArray, i) + (new Vector<float>(ensemble.LateInflowArray, i) * late);
            Vector<int> few = Vector.LessThan(onAdults, fewOnAdults) & Vector.GreaterThan(arrivals, Vector<float>.Zero);
            if (!Vector.EqualsAll(few, Vector<int>.Zero))
                arrivals = Vector.ConditionalSelect(few, ParticleNoise.Whole(arrivals, arrivals, ParticleNoise.Bits(new Vector<uint>(ensemble.Keys, i), word)), arrivals);
            onAdults = Vector.Min((onAdults + arrivals) * kept, most);
            few = Vector.LessThan(onAdults, fewOnAdults);
            if (!Vector.EqualsAll(few, Vector<int>.Zero))
                onAdults = Vector.ConditionalSelect(few, Vector.Floor(onAdults + ParticleNoise.Uniform(ParticleNoise.Bits(new Vector<uint>(ensemble.Keys, i), rounding))), onAdults);
            onAdults.CopyTo(ensemble.OnAdultsArray, i);
        }
    }

    /// <summary>Mites on adult bees die, of age, with their bees and of controls; some controls reach into cells.</summary>
    internal static void Die(MiteEnsemble ensemble, ColonyDays days, Constants constants, int day, uint seed, int first, int end)
    {
        Vector<float> death = new(days.Rows[(day * ColonyDays.Width) + ColonyDays.Death]);
        Vector<float> loadHazard = new(constants.LoadHazard * 0.5f);
        Vector<float> mostLoad = new(MostLoad);
        Vector<float> fewOnAdults = new(FewOnAdults);
        int controls = days.Controls.Length;
        uint word = ParticleNoise.Word(seed, day, 3);
        for (int i = first; i < end; i += Vector<float>.Count)
        {
            Vector<float> onAdults = new(ensemble.OnAdultsArray, i);
            Vector<float> load = Vector.Min(onAdults * new Vector<float>(ensemble.PerAdult, i), mostLoad);
            load.CopyTo(ensemble.Load, i);
            Vector<float> hazard = death + (loadHazard * load);
            for (int control = 0; control < controls; control++)
            {
                if (!days.AtWork(control, day))
                    continue;
                Vector<float> scale = new Vector<float>(ensemble.ControlScales, (control * ensemble.Stride) + i) * new Vector<float>(ensemble.ControlFactor, i);
                hazard += scale * new Vector<float>(days.AdultHazard[control]);
                if (days.BroodHazard[control] <= 0f)
                    continue;
                Vector<float> alive = VectorFunctions.Exp(-scale * new Vector<float>(days.BroodHazard[control]));
                Keep(ensemble.WorkerCells, MiteBiology.WorkerSealedDays, ensemble.Stride, i, alive);
                Keep(ensemble.DroneCells, MiteBiology.DroneSealedDays, ensemble.Stride, i, alive);
            }

            Vector<float> survive = VectorFunctions.Exp(-hazard);
            Vector<float> left = onAdults * survive;
            Vector<int> few = Vector.LessThan(onAdults, fewOnAdults);
            if (!Vector.EqualsAll(few, Vector<int>.Zero))
            {
                Vector<float> dead = onAdults - left;
                dead = Vector.Min(ParticleNoise.Whole(dead, dead * survive, ParticleNoise.Bits(new Vector<uint>(ensemble.Keys, i), word)), onAdults);
                left = Vector.ConditionalSelect(few, onAdults - dead, left);
            }

            left.CopyTo(ensemble.OnAdultsArray, i);
        }
    }

    /// <summary>Mites enter the cells about to be sealed; combs cut out take theirs along.</summary>
    internal static void Enter(MiteEnsemble ensemble, ColonyDays days, int day, uint seed, int first, int end)
    {
        int row = day * ColonyDays.Width;
        int worker = day % MiteBiology.WorkerSealedDays * ensemble.Stride;
        int drone = day % MiteBiology.DroneSealedDays * ensemble.Stride;
        Vector<float> workerCells = new(days.Rows[row + ColonyDays.WorkerRate]);
        Vector<float> droneCells = new(days.Rows[row + ColonyDays.DroneRate]);
        Vector<float> workersKept = new(days.Rows[row + ColonyDays.WorkersKept]);
        Vector<float> dronesKept = new(days.Rows[row + ColonyDays.DronesKept]);
        bool drones = days.Rows[row + ColonyDays.DroneRate] > 0f;
        bool cut = days.Rows[row + ColonyDays.WorkersKept] < 1f || days.Rows[row + ColonyDays.DronesKept] < 1f;
        Vector<float> one = Vector<float>.One;
        Vector<float> fewOnAdults = new(FewOnAdults);
        uint workerWord = ParticleNoise.Word(seed, day, 4);
        uint droneWord = ParticleNoise.Word(seed, day, 5);
        for (int i = first; i < end; i += Vector<float>.Count)
        {
            Vector<float> onAdults = new(ensemble.OnAdultsArray, i);
            Vector<float> perGram = new Vector<float>(ensemble.Laying, i) * new Vector<float>(ensemble.BroodScaleArray, i) * new Vector<float>(ensemble.PerAdult, i);
            Vector<float> rate = workerCells * perGram;
            Vector<float> droneShare = Vector<float>.Zero;
            if (drones)
            {
                Vector<float> droneRate = droneCells * new Vector<float>(ensemble.DroneScaleArray, i) * perGram;
                rate += droneRate;
                droneShare = droneRate / (rate + new Vector<float>(1e-20f));
            }

            Vector<float> stay = VectorFunctions.Exp(-rate);
            Vector<float> entering = onAdults * (one - stay);
            Vector<float> intoDrones = entering * droneShare;
            Vector<float> intoWorkers = entering - intoDrones;
            Vector<int> few = Vector.LessThan(onAdults, fewOnAdults);
            if (!Vector.EqualsAll(few, Vector<int>.Zero))
            {
                Vector<uint> keys = new(ensemble.Keys, i);
                Vector<float> workers = Vector.Min(ParticleNoise.Whole(intoWorkers, intoWorkers * stay, ParticleNoise.Bits(keys, workerWord)), onAdults);
                intoWorkers = Vector.ConditionalSelect(few, workers, intoWorkers);
                if (drones)
                {
                    Vector<float> chance = Vector.Min(ParticleNoise.Whole(intoDrones, intoDrones * stay, ParticleNoise.Bits(keys, droneWord)), onAdults - workers);
                    intoDrones = Vector.ConditionalSelect(few, chance, intoDrones);
                }
            }

            (onAdults - intoWorkers - intoDrones).CopyTo(ensemble.OnAdultsArray, i);
            intoWorkers.CopyTo(ensemble.WorkerCells, worker + i);
            intoDrones.CopyTo(ensemble.DroneCells, drone + i);
            if (!cut)
                continue;
            Keep(ensemble.WorkerCells, MiteBiology.WorkerSealedDays, ensemble.Stride, i, workersKept);
            Keep(ensemble.DroneCells, MiteBiology.DroneSealedDays, ensemble.Stride, i, dronesKept);
        }
    }

    /// <summary>Bees lost to mites: those infested in their cells, and the shorter lives of all under load.</summary>
    internal static void Weaken(MiteEnsemble ensemble, ColonyDays days, Constants constants, int day, int first, int end)
    {
        Vector<float> one = Vector<float>.One;
        Vector<float> recruits = new(days.Rows[(day * ColonyDays.Width) + ColonyDays.Recruits]);
        Vector<float> hazard = new(constants.LoadHazard);
        Vector<float> loss = new(constants.InfestedLoss);
        Vector<float> least = new(LeastStrength);
        for (int i = first; i < end; i += Vector<float>.Count)
        {
            Vector<float> strength = new(ensemble.StrengthArray, i);
            Vector<float> old = strength * (one - recruits) * (one - Vector.Min(hazard * new Vector<float>(ensemble.Load, i), new Vector<float>(0.5f)));
            Vector<float> young = recruits * new Vector<float>(ensemble.Laying, i) * (one - (new Vector<float>(ensemble.Infested, i) * loss));
            Vector.Min(Vector.Max(old + young, least), one).CopyTo(ensemble.StrengthArray, i);
        }
    }

    private static void Keep(float[] cells, int length, int stride, int i, Vector<float> kept)
    {
        for (int slot = i; slot < length * stride; slot += stride)
            (new Vector<float>(cells, slot) * kept).CopyTo(cells, slot);
    }
}
