using Foundress.Science.Dynamics;

namespace Foundress.Science.Tests.Dynamics;

/// <summary>The daily model for one colony in plain single-precision steps, written anew from docs/methods/forecast.md.</summary>
internal sealed class ScalarColony
{
    private readonly ColonyDays _days;
    private readonly MiteBiology _b;
    private readonly float[] _workers = new float[12];
    private readonly float[] _drones = new float[14];
    private readonly uint _key;
    private readonly float _logReproduction;
    private readonly float _inflow;
    private readonly float _late;
    private readonly float _adultScale;
    private readonly float _broodScale;
    private readonly float _droneScale;
    private readonly float _control;
    private float _week;
    private float _controlWeek;
    private float _beesWeek;

    public ScalarColony(MiteEnsemble start, ColonyDays days, int i, float mites)
    {
        (_days, _b) = (days, days.Biology);
        _key = Mix(((uint)i * 0x9E3779B9u) + 0x7F4A7C15u);
        (_logReproduction, _inflow, _late) = (start.LogReproduction[i], start.Inflow[i], start.LateInflow[i]);
        (_adultScale, _broodScale, _droneScale, _control) = (start.AdultScale[i], start.BroodScale[i], start.DroneScale[i], start.ControlScale(0)[i]);
        OnAdults = mites;
        Strength = 1f;
        // The cohorts at the start hold the mites that would have entered on even days, growing a little.
        double adults = days.Bees.Adults[0];
        double worker = (float)(_b.InvasionScale * _b.WorkerInvasion * days.Bees.WorkerSealed[0] / _b.BeeGrams);
        double drone = (float)(_b.InvasionScale * _b.DroneInvasion * days.Bees.DroneSealed[0] / _b.BeeGrams);
        double all = (float)worker + (float)drone;
        all /= (float)adults;
        for (int age = 1; age <= 14; age++)
        {
            double enter = 1d - Foundress.Science.Numerics.PortableFunctions.Exp(-all);
            double grow = Foundress.Science.Numerics.PortableFunctions.Exp(-0.015 * age);
            if (age <= 12)
                _workers[(120 - age) % 12] = mites * (float)(((float)worker / (double)(float)adults / all) * enter * grow);
            _drones[(140 - age) % 14] = mites * (float)(((float)drone / (double)(float)adults / all) * enter * grow);
        }
    }

    public float OnAdults { get; private set; }

    public float Strength { get; private set; }

    public void Run(int until, uint seed)
    {
        for (int day = 0; day < until; day++)
            Day(day, seed);
    }

    private void Day(int day, uint seed)
    {
        float memory = (float)_b.WeeklyMemory;
        if (day % 7 == 0)
        {
            double fresh = Math.Sqrt(1d - (_b.WeeklyMemory * _b.WeeklyMemory));
            _week = (_week * memory) + ((float)(_b.WeeklySpread * fresh) * Normal(Bits(seed, day, 6)));
            _controlWeek = (_controlWeek * memory) + ((float)(_b.ControlWeeklySpread * fresh) * Normal(Bits(seed, day, 7)));
            _beesWeek = (_beesWeek * memory) + ((float)(_b.BeesWeeklySpread * fresh) * Normal(Bits(seed, day, 8)));
        }

        float reproduction = Exp(_logReproduction + _week);
        float bees = _days.Bees.Adults[Math.Max(day - 1, 0)];
        float full = (float)(bees + _b.HalfLayingBees);
        float half = (float)_b.HalfLayingBees;
        float layers = (bees * Strength) + half;
        float quotient = 1f / (Strength * layers);
        float perStrength = layers * quotient;
        float perAdult = 1f / bees * (Exp(-_beesWeek) / _adultScale) * perStrength;
        float laying = full * Strength * Strength * quotient;

        // Emergence.
        float perCells = 1f / _broodScale * (layers * perStrength * (1f / full));
        float born = (float)(_b.WorkerOffspring * (1d - _b.EmergenceLoss));
        float droneBorn = (float)(_b.DroneOffspring * (1d - _b.EmergenceLoss));
        float back = (float)_b.MotherReturn;
        float mothers = _workers[day % 12];
        float droneMothers = _drones[day % 14];
        float perCell = mothers * (float)(1d / _days.Bees.WorkerSealed[Math.Max(day - 12, 0)]) * perCells;
        float all = 1f + perCell;
        float crowd = 1f + (perCell * (float)(1d - Foundress.Science.Numerics.PortableFunctions.Exp(-_b.WorkerCrowding)));
        crowd *= crowd;
        float droneCrowd = 1f + (droneMothers * (float)(1d / _days.Bees.DroneSealed[Math.Max(day - 14, 0)]) * perCells
            * (float)(1d - Foundress.Science.Numerics.PortableFunctions.Exp(-_b.DroneCrowding)) * (1f / _droneScale));
        droneCrowd *= droneCrowd;
        float apart = 1f / (all * crowd * droneCrowd);
        float infested = perCell * (crowd * droneCrowd * apart);
        float returning = (mothers * (back + (born * reproduction * (all * droneCrowd * apart))))
            + (droneMothers * (back + (droneBorn * reproduction * (all * crowd * apart))));

        // Arrival: one draw for all that come.
        float flow = returning + (_inflow + (_late * LateShare(day)));
        if (flow is > 0f and < 32f)
            flow = Whole(flow, flow, Bits(seed, day, 1));
        OnAdults = Math.Min((OnAdults + flow) * (day == 90 ? (float)(1d - 0.4) : 1f), 1e7f);
        if (OnAdults < 128f && OnAdults != MathF.Floor(OnAdults))
            OnAdults = MathF.Floor(OnAdults + Uniform(Bits(seed, day, 0)));

        // Death.
        float load = Math.Min(OnAdults * perAdult, 2f);
        float loaded = (float)_b.LoadHazard * load;
        float hazard = (float)_b.DeathWithBrood + (loaded * 0.5f);
        if (day is >= 40 and < 61)
        {
            float scale = _control * Exp(_controlWeek);
            // The rate falls by half in 30 days.
            float share = (float)(-Foundress.Science.Numerics.PortableFunctions.Log(1d - 0.15) * Foundress.Science.Numerics.PortableFunctions.Exp(-(day - 40) * 0.693147180559945309 / 30d));
            float inCells = (float)(-Foundress.Science.Numerics.PortableFunctions.Log(1d - 0.05) * Foundress.Science.Numerics.PortableFunctions.Exp(-(day - 40) * 0.693147180559945309 / 30d));
            hazard += scale * share;
            float alive = Exp(-scale * inCells);
            Keep(_workers, alive);
            Keep(_drones, alive);
        }

        float survive = Exp(-hazard);

        // Entering cells: one draw for all that leave the adult bees, shared out by the means.
        float perGram = laying * _broodScale * perAdult;
        float workerRate = (float)(_b.InvasionScale * _b.WorkerInvasion * _days.Bees.WorkerSealed[day] / _b.BeeGrams) * perGram;
        float droneRate = (float)(_b.InvasionScale * _b.DroneInvasion * _days.Bees.DroneSealed[day] / _b.BeeGrams) * _droneScale * perGram;
        float rate = workerRate + droneRate;
        float outside = Exp(-rate);
        float entering = OnAdults * survive * (1f - outside);
        float mean = (OnAdults * (1f - survive)) + entering;
        float leaving = OnAdults is > 0f and < 128f ? Math.Min(Whole(mean, mean * (survive * outside), Bits(seed, day, 3)), OnAdults) : mean;
        OnAdults -= leaving;
        entering *= leaving / Math.Max(mean * rate, 1e-30f);
        _workers[day % 12] = entering * workerRate;
        _drones[day % 14] = entering * droneRate;
        if (day is 20 or 90)
        {
            Keep(_workers, day == 20 ? 1f : (float)(1d - 0.5));
            Keep(_drones, day == 20 ? (float)(1d - 0.9) : (float)(1d - 0.5));
        }

        float recruits = (float)Math.Min(0.3, _days.Bees.WorkerSealed[Math.Max(day - 12, 0)] / (double)bees);
        float old = Strength * (1f - recruits) * (1f - Math.Min(loaded, 0.5f));
        float young = recruits * laying * (1f - (infested * (float)_b.InfestedLoss));
        Strength = Math.Min(Math.Max(old + young, 0.02f), 1f);
    }

    private float LateShare(int day)
    {
        double northern = _days.Bees.FirstDay.AddDays(day).DayOfYear;
        return (float)Math.Clamp(Math.Min((northern - _b.LateInflowStart) / 21d, (_b.LateInflowEnd - northern) / 21d), 0d, 1d);
    }

    private static void Keep(float[] cells, float kept)
    {
        for (int i = 0; i < cells.Length; i++)
            cells[i] *= kept;
    }

    private uint Bits(uint seed, int day, int draw) => unchecked(Mix(_key + Mix(seed ^ Mix(((uint)day * 16u) + (uint)draw + 0x9E3779B9u))));

    private static uint Mix(uint x)
    {
        unchecked
        {
            x ^= x >> 16;
            x *= 0x7FEB352Du;
            x ^= x >> 15;
            x *= 0x846CA68Bu;
            return x ^ (x >> 16);
        }
    }

    private static float Normal(uint bits) => ((bits & 255) + ((bits >> 8) & 255) + ((bits >> 16) & 255) + (bits >> 24) - 510f) * (1f / 147.80054f);

    private static float Uniform(uint bits) => unchecked(((bits ^ (bits >> 15)) * 0x2C1B3C6Du) >> 16) * (1f / 65536f);

    private static float Whole(float mean, float variance, uint bits)
    {
        float square = mean * mean;
        float rounding = mean < 0.2113f ? mean - square : 1f / 6f;
        float relative = Math.Max(variance - rounding, 0f) / (square + 1e-12f);
        float t = 1f - (relative * (1f / 9f)) + (Normal(bits) * MathF.Sqrt(relative) * (1f / 3f));
        t = Math.Max(t, 0f);
        return MathF.Floor((mean * (t * t * t)) + Uniform(bits));
    }

    private static float Exp(float x)
    {
        x = Math.Min(Math.Max(x, -87f), 88f);
        float n = MathF.Floor((x * 1.44269504f) + 0.5f);
        float r = x - (n * 0.693359375f) - (n * -2.12194440e-4f);
        float y = (r * (1f / 720f)) + (1f / 120f);
        y = (y * r) + (1f / 24f);
        y = (y * r) + (1f / 6f);
        y = (y * r) + 0.5f;
        y = (y * r) + 1f;
        y = (y * r) + 1f;
        return y * BitConverter.Int32BitsToSingle(((int)n + 127) << 23);
    }
}
