using System.Numerics;
using System.Runtime.CompilerServices;
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
            (Vector<float>.One / new Vector<float>(ensemble.DroneScaleArray, i)).CopyTo(ensemble.PerDroneScale, i);
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

    /// <summary>
    /// The first half of a day: the day's bees, and laying as a share of that of a colony free of mites; bees emerge with the
    /// mites of the cells sealed 12 and 14 days ago; mites come in from outside; bees that leave take theirs along.
    /// </summary>
    /// <remarks>Mothers per cell follow the geometric law (negative binomial of size 1), so success and infested cells are ratios of polynomials.</remarks>
    internal static void Gain(MiteEnsemble ensemble, ColonyDays days, Constants constants, int day, uint seed, int first, int end, Span<float> loads)
    {
        int row = day * ColonyDays.Width;
        int worker = day % MiteBiology.WorkerSealedDays * ensemble.Stride;
        int drone = day % MiteBiology.DroneSealedDays * ensemble.Stride;
        bool drones = days.Rows[row + ColonyDays.Drones] > 0f;
        Vector<float> one = Vector<float>.One;
        float course = days.Rows[row + ColonyDays.Adults];
        Vector<float> bees = new(course);
        Vector<float> perBee = new(1f / course);
        Vector<float> full = new(days.Rows[row + ColonyDays.FullLaying]);
        Vector<float> perFull = new(1f / days.Rows[row + ColonyDays.FullLaying]);
        Vector<float> half = new(constants.HalfLaying);
        Vector<float> perWorkerCell = new(days.Rows[row + ColonyDays.PerWorkerCell]);
        Vector<float> perDroneCell = new(days.Rows[row + ColonyDays.PerDroneCell]);
        Vector<float> late = new(days.Rows[row + ColonyDays.LateInflow]);
        Vector<float> kept = new(days.Rows[row + ColonyDays.AdultsKept]);
        Vector<float> workerCrowd = new(constants.WorkerCrowd);
        Vector<float> droneCrowding = new(constants.DroneCrowd);
        Vector<float> motherReturn = new(constants.MotherReturn);
        Vector<float> workerBorn = new(constants.WorkerBorn);
        Vector<float> droneBorn = new(constants.DroneBorn);
        float[] workerCells = ensemble.WorkerCells;
        float[] droneCells = ensemble.DroneCells;
        uint word = ParticleNoise.Word(seed, day, 1);
        uint rounding = ParticleNoise.Word(seed, day, 0);
        for (int i = first; i < end; i += Vector<float>.Count)
        {
            // Divisions are dear: one for two quotients.
            Vector<float> strength = new(ensemble.StrengthArray, i);
            Vector<float> layers = (bees * strength) + half;
            Vector<float> quotient = one / (strength * layers);
            Vector<float> perStrength = layers * quotient;
            Vector<float> perAdult = perBee * new Vector<float>(ensemble.PerAdultScale, i) * perStrength;
            Vector<float> onAdults = new(ensemble.OnAdultsArray, i);
            perAdult.CopyTo(ensemble.PerAdult, i);
            (full * strength * strength * quotient).CopyTo(ensemble.Laying, i);
            if (loads.Length > 0)
                (onAdults * perAdult).CopyTo(loads.Slice(i, Vector<float>.Count));

            Vector<float> reproduction = new(ensemble.Reproduction, i);
            Vector<float> perCells = new Vector<float>(ensemble.PerBroodScale, i) * (layers * perStrength * perFull);
            Vector<float> mothers = new(workerCells, worker + i);
            Vector<float> perCell = mothers * perWorkerCell * perCells;
            Vector<float> all = one + perCell;
            Vector<float> crowd = one + (perCell * workerCrowd);
            crowd *= crowd;
            Vector<float> flow;
            if (drones)
            {
                Vector<float> droneMothers = new(droneCells, drone + i);
                Vector<float> droneCrowd = one + (droneMothers * perDroneCell * perCells * droneCrowding * new Vector<float>(ensemble.PerDroneScale, i));
                droneCrowd *= droneCrowd;
                Vector<float> apart = one / (all * crowd * droneCrowd);
                (perCell * (crowd * droneCrowd * apart)).CopyTo(ensemble.Infested, i);
                flow = (mothers * (motherReturn + (workerBorn * reproduction * (all * droneCrowd * apart))))
                    + (droneMothers * (motherReturn + (droneBorn * reproduction * (all * crowd * apart))));
            }
            else
            {
                Vector<float> apart = one / (all * crowd);
                (perCell * (crowd * apart)).CopyTo(ensemble.Infested, i);
                flow = mothers * (motherReturn + (workerBorn * reproduction * (all * apart)));
            }

            flow += new Vector<float>(ensemble.InflowArray, i) + (new Vector<float>(ensemble.LateInflowArray, i) * late);
            Arrive(ensemble, onAdults, flow, kept, word, rounding, i);
        }
    }

    /// <summary>The first half of a day without brood: nothing emerges, mites come in, bees that leave take theirs along.</summary>
    internal static void GainBroodless(MiteEnsemble ensemble, ColonyDays days, int day, uint seed, int first, int end, Span<float> loads)
    {
        int row = day * ColonyDays.Width;
        Vector<float> perBee = new(1f / days.Rows[row + ColonyDays.Adults]);
        Vector<float> late = new(days.Rows[row + ColonyDays.LateInflow]);
        Vector<float> kept = new(days.Rows[row + ColonyDays.AdultsKept]);
        uint word = ParticleNoise.Word(seed, day, 1);
        uint rounding = ParticleNoise.Word(seed, day, 0);
        for (int i = first; i < end; i += Vector<float>.Count)
        {
            Vector<float> perAdult = perBee * new Vector<float>(ensemble.PerAdultScale, i) * (Vector<float>.One / new Vector<float>(ensemble.StrengthArray, i));
            Vector<float> onAdults = new(ensemble.OnAdultsArray, i);
            perAdult.CopyTo(ensemble.PerAdult, i);
            if (loads.Length > 0)
                (onAdults * perAdult).CopyTo(loads.Slice(i, Vector<float>.Count));
            Vector<float> flow = new Vector<float>(ensemble.InflowArray, i) + (new Vector<float>(ensemble.LateInflowArray, i) * late);
            Arrive(ensemble, onAdults, flow, kept, word, rounding, i);
        }
    }

    // One draw for all that come to the adult bees, and whole mites where there are few: what each flow adds to the variance is its mean.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Arrive(MiteEnsemble ensemble, Vector<float> onAdults, Vector<float> flow, Vector<float> kept, uint word, uint rounding, int i)
    {
        Vector<int> few = Vector.LessThan(flow, new Vector<float>(FewInFlow)) & Vector.GreaterThan(flow, Vector<float>.Zero);
        if (!Vector.EqualsAll(few, Vector<int>.Zero))
            flow = Vector.ConditionalSelect(few, ParticleNoise.Whole(flow, flow, ParticleNoise.Bits(new Vector<uint>(ensemble.Keys, i), word)), flow);
        onAdults = Vector.Min((onAdults + flow) * kept, new Vector<float>(MostMites));
        Vector<int> broken = Vector.LessThan(onAdults, new Vector<float>(FewOnAdults)) & ~Vector.Equals(onAdults, Vector.Floor(onAdults));
        if (!Vector.EqualsAll(broken, Vector<int>.Zero))
            onAdults = Vector.ConditionalSelect(broken, Vector.Floor(onAdults + ParticleNoise.Uniform(ParticleNoise.Bits(new Vector<uint>(ensemble.Keys, i), rounding))), onAdults);
        onAdults.CopyTo(ensemble.OnAdultsArray, i);
    }

    /// <summary>
    /// The second half of a day: mites on adult bees die, of age, with their bees and of controls; some controls reach into cells;
    /// those left enter the cells about to be sealed; combs cut out take theirs along; bees are lost to mites: those infested in
    /// their cells, and the shorter lives of all under load.
    /// </summary>
    /// <remarks>
    /// One draw for all that leave the adult bees; it is shared out by the means of dying and entering, since chance in the share-out is
    /// drawn again when they emerge.
    /// </remarks>
    internal static void Lose(MiteEnsemble ensemble, ColonyDays days, Constants constants, int day, uint seed, int first, int end)
    {
        int row = day * ColonyDays.Width;
        int worker = day % MiteBiology.WorkerSealedDays * ensemble.Stride;
        int drone = day % MiteBiology.DroneSealedDays * ensemble.Stride;
        bool brood = !days.Broodless(day);
        bool controlled = days.Controlled(day);
        bool cut = days.Rows[row + ColonyDays.WorkersKept] < 1f || days.Rows[row + ColonyDays.DronesKept] < 1f;
        Vector<float> one = Vector<float>.One;
        Vector<float> death = new(days.Rows[row + ColonyDays.Death]);
        Vector<float> loadHazard = new(constants.LoadHazard);
        Vector<float> workerRates = new(days.Rows[row + ColonyDays.WorkerRate]);
        Vector<float> droneRates = new(days.Rows[row + ColonyDays.DroneRate]);
        Vector<float> recruits = new(days.Rows[row + ColonyDays.Recruits]);
        Vector<float> notRecruits = one - recruits;
        Vector<float> loss = new(constants.InfestedLoss);
        uint word = ParticleNoise.Word(seed, day, 3);
        for (int i = first; i < end; i += Vector<float>.Count)
        {
            Vector<float> onAdults = new(ensemble.OnAdultsArray, i);
            Vector<float> perAdult = new(ensemble.PerAdult, i);
            Vector<float> load = Vector.Min(onAdults * perAdult, new Vector<float>(MostLoad));
            Vector<float> loaded = loadHazard * load;
            Vector<float> hazard = death + (loaded * new Vector<float>(0.5f));
            if (controlled)
                hazard += Controls(ensemble, days, day, i);
            Vector<float> survive = VectorFunctions.ExpOfNegative(-hazard);
            Vector<float> old = new Vector<float>(ensemble.StrengthArray, i) * notRecruits * (one - Vector.Min(loaded, new Vector<float>(0.5f)));
            if (!brood)
            {
                Leave(ensemble, onAdults, onAdults * (one - survive), survive, word, i, out Vector<float> stay);
                stay.CopyTo(ensemble.OnAdultsArray, i);
                Vector<float>.Zero.CopyTo(ensemble.WorkerCells, worker + i);
                Vector<float>.Zero.CopyTo(ensemble.DroneCells, drone + i);
                Vector.Min(Vector.Max(old, new Vector<float>(LeastStrength)), one).CopyTo(ensemble.StrengthArray, i);
            }
            else
            {
                Vector<float> laying = new(ensemble.Laying, i);
                Vector<float> perGram = laying * new Vector<float>(ensemble.BroodScaleArray, i) * perAdult;
                Vector<float> workerRate = workerRates * perGram;
                Vector<float> droneRate = droneRates * new Vector<float>(ensemble.DroneScaleArray, i) * perGram;
                Vector<float> rate = workerRate + droneRate;
                Vector<float> outside = VectorFunctions.ExpOfNegative(-rate);
                Vector<float> entering = onAdults * survive * (one - outside);
                Vector<float> leaving = (onAdults * (one - survive)) + entering;
                Vector<float> left = Leave(ensemble, onAdults, leaving, survive * outside, word, i, out Vector<float> stay);
                stay.CopyTo(ensemble.OnAdultsArray, i);
                entering *= left / Vector.Max(leaving * rate, new Vector<float>(1e-30f));
                (entering * workerRate).CopyTo(ensemble.WorkerCells, worker + i);
                (entering * droneRate).CopyTo(ensemble.DroneCells, drone + i);
                Vector<float> young = recruits * laying * (one - (new Vector<float>(ensemble.Infested, i) * loss));
                Vector.Min(Vector.Max(old + young, new Vector<float>(LeastStrength)), one).CopyTo(ensemble.StrengthArray, i);
            }

            if (!cut)
                continue;
            Keep(ensemble.WorkerCells, MiteBiology.WorkerSealedDays, ensemble.Stride, i, new Vector<float>(days.Rows[row + ColonyDays.WorkersKept]));
            Keep(ensemble.DroneCells, MiteBiology.DroneSealedDays, ensemble.Stride, i, new Vector<float>(days.Rows[row + ColonyDays.DronesKept]));
        }
    }

    // How many leave the adult bees, and how many stay.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<float> Leave(MiteEnsemble ensemble, Vector<float> onAdults, Vector<float> leaving, Vector<float> staying, uint word, int i, out Vector<float> stay)
    {
        Vector<int> few = Vector.LessThan(onAdults, new Vector<float>(FewOnAdults)) & Vector.GreaterThan(onAdults, Vector<float>.Zero);
        if (!Vector.EqualsAll(few, Vector<int>.Zero))
        {
            Vector<float> drawn = Vector.Min(ParticleNoise.Whole(leaving, leaving * staying, ParticleNoise.Bits(new Vector<uint>(ensemble.Keys, i), word)), onAdults);
            leaving = Vector.ConditionalSelect(few, drawn, leaving);
        }

        stay = onAdults - leaving;
        return leaving;
    }

    // What the controls at work add to the death of the mites on bees; what they kill in cells is dead at once.
    private static Vector<float> Controls(MiteEnsemble ensemble, ColonyDays days, int day, int i)
    {
        Vector<float> hazard = Vector<float>.Zero;
        for (int control = 0; control < days.Controls.Length; control++)
        {
            if (!days.AtWork(control, day))
                continue;
            Vector<float> scale = new Vector<float>(ensemble.ControlScales, (control * ensemble.Stride) + i) * new Vector<float>(ensemble.ControlFactor, i);
            hazard += scale * new Vector<float>(days.AdultHazards[(control * days.Days) + day]);
            float inCells = days.BroodHazards[(control * days.Days) + day];
            if (inCells <= 0f)
                continue;
            Vector<float> alive = VectorFunctions.ExpOfNegative(-scale * new Vector<float>(inCells));
            Keep(ensemble.WorkerCells, MiteBiology.WorkerSealedDays, ensemble.Stride, i, alive);
            Keep(ensemble.DroneCells, MiteBiology.DroneSealedDays, ensemble.Stride, i, alive);
        }

        return hazard;
    }

    private static void Keep(float[] cells, int length, int stride, int i, Vector<float> kept)
    {
        for (int slot = i; slot < length * stride; slot += stride)
            (new Vector<float>(cells, slot) * kept).CopyTo(cells, slot);
    }
}
