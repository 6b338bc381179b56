using CsCheck;
using Foundress.Science.Dynamics;
using Foundress.Science.Dynamics.Bees;

namespace Foundress.Science.Tests.Dynamics;

public class MiteRunTests
{
    private static readonly Gen<(float Adults, float Workers, float Drones, uint Seed)> Colonies =
        Gen.Select(Gen.Float[1000f, 40000f], Gen.Float[0f, 1600f], Gen.Float[0f, 120f], Gen.UInt);

    [Fact]
    public void Advance_NoMitesAndNoInflow_StaysWithout() => Colonies.Sample(
        colony =>
        {
            ColonyDays days = PlainColony.Days(PlainColony.Even(120, colony.Adults, colony.Workers, colony.Drones));
            MiteEnsemble ensemble = PlainColony.Start(days, 32, 0f);
            MiteRun.Advance(ensemble, days, 120, colony.Seed);
            return Enumerable.Range(0, 32).All(i => PlainColony.Total(ensemble, i) == 0d);
        },
        iter: 50);

    [Fact]
    public void Advance_NoBroodAndNoInflow_NeverGrows() => Colonies.Sample(
        colony =>
        {
            ColonyDays days = PlainColony.Days(PlainColony.Even(90, colony.Adults, 0f, 0f));
            MiteEnsemble ensemble = PlainColony.Start(days, 32, 800f);
            double before = PlainColony.MeanTotal(ensemble);
            for (int day = 10; day <= 90; day += 10)
            {
                MiteRun.Advance(ensemble, days, day, colony.Seed);
                double now = PlainColony.MeanTotal(ensemble);
                if (now > before)
                    return false;
                before = now;
            }

            return before > 0d;
        },
        iter: 30);

    [Fact]
    public void Advance_WithAControl_MeanNeverHigher() => Gen.Select(Colonies, Gen.Double[0.01, 0.6], Gen.Double[0d, 0.3], Gen.Int[0, 60]).Sample(
        (colony, adults, brood, start) =>
        {
            BeeCourse bees = PlainColony.Even(120, 20000f, Math.Max(colony.Workers, 1f), colony.Drones);
            ColonyDays without = PlainColony.Days(bees);
            ColonyDays with = PlainColony.Days(bees, null, new ControlEffect(start, 20, adults, brood, 0.3));
            MiteEnsemble free = PlainColony.Start(without, 256, 300f);
            MiteEnsemble treated = PlainColony.Start(with, 256, 300f);
            for (int day = 10; day <= 120; day += 10)
            {
                MiteRun.Advance(free, without, day, colony.Seed);
                MiteRun.Advance(treated, with, day, colony.Seed);
                // Rounding of a few mites is drawn anew: a mean of 256 colonies may differ by that much and no more.
                if (PlainColony.MeanTotal(treated) > PlainColony.MeanTotal(free) * 1.02)
                    return false;
            }

            return true;
        },
        iter: 25);

    [Fact]
    public void Advance_MoreInflow_MeanNeverLower() => Gen.Select(Colonies, Gen.Float[0.5f, 5f], Gen.Float[0.5f, 10f]).Sample(
        (colony, some, more) =>
        {
            ColonyDays days = PlainColony.Days(PlainColony.Even(120, 20000f, colony.Workers, colony.Drones));
            MiteEnsemble fewer = PlainColony.Start(days, 256, 50f, some);
            MiteEnsemble greater = PlainColony.Start(days, 256, 50f, some + more);
            for (int day = 20; day <= 120; day += 20)
            {
                MiteRun.Advance(fewer, days, day, colony.Seed);
                MiteRun.Advance(greater, days, day, colony.Seed);
                if (PlainColony.MeanTotal(greater) < PlainColony.MeanTotal(fewer))
                    return false;
            }

            return true;
        },
        iter: 25);

    [Fact]
    public void Advance_NoBirthAndNoDeath_KeepsEveryMite()
    {
        MiteBiology still = PlainColony.Biology with
        {
            WorkerOffspring = 0d, DroneOffspring = 0d, MotherReturn = 1d, DeathWithBrood = 0d, DeathBroodless = 0d, LoadHazard = 0d,
        };
        ColonyDays days = PlainColony.Days(PlainColony.Even(200, 20000f, 900f, 40f), still);
        MiteEnsemble ensemble = PlainColony.Start(days, 64, 5000f);
        double before = PlainColony.Total(ensemble, 0);

        MiteRun.Advance(ensemble, days, 200, 7);

        for (int i = 0; i < 64; i++)
            Assert.InRange(PlainColony.Total(ensemble, i), before * 0.9999, before * 1.0001);
    }

    [Theory]
    [InlineData(3f)]
    [InlineData(2000f)]
    public void Advance_InTwoParts_IsAsInOne(float mites)
    {
        ColonyDays days = PlainColony.Days(PlainColony.Even(100, 20000f, 900f, 40f), null, new ControlEffect(30, 20, 0.2, 0.1, 0.3));
        MiteEnsemble whole = PlainColony.Start(days, 50, mites, 0.5f);
        MiteEnsemble parts = PlainColony.Start(days, 50, mites, 0.5f);

        MiteRun.Advance(whole, days, 100, 3);
        MiteRun.Advance(parts, days, 37, 3);
        MiteRun.Advance(parts, days, 100, 3);

        Assert.Equal(whole.OnAdults.ToArray(), parts.OnAdults.ToArray());
    }

    /// <summary>
    /// The same reckoning one colony at a time, in plain single-precision steps: the width of the processor's vectors, and
    /// which colonies share one, must not change a bit.
    /// </summary>
    [Theory]
    [InlineData(2f, 0.5f, 1u)]
    [InlineData(150f, 0f, 2u)]
    [InlineData(400f, 3f, 3u)]
    [InlineData(6000f, 0f, 4u)]
    public void Advance_OneColonyAtATime_GivesTheSameBits(float mites, float inflow, uint seed)
    {
        ColonyDays days = ColonyDays.Of(
            PlainColony.Even(150, 18000f, 950f, 45f, new DateOnly(2025, 6, 1)), PlainColony.Biology, Hemisphere.North,
            [new ControlEffect(40, 21, 0.15, 0.05, 0.3, HalfLife: 30d)], [new MitesTaken(20, 0d, 0d, 0.9), new MitesTaken(90, 0.4, 0.5, 0.5)]);
        MiteEnsemble ensemble = PlainColony.Start(days, 37, mites, inflow, 2f);
        for (int i = 0; i < 37; i++)
        {
            ensemble.LogReproduction[i] = (i - 18) * 0.02f;
            ensemble.AdultScale[i] = 1f + (i * 0.01f);
            ensemble.BroodScale[i] = 1f - (i * 0.01f);
            ensemble.DroneScale[i] = 0.5f + (i * 0.03f);
            ensemble.ControlScale(0)[i] = 0.5f + (i * 0.04f);
        }

        ScalarColony[] singles = [.. Enumerable.Range(0, 37).Select(i => new ScalarColony(ensemble, days, i, mites))];
        MiteRun.Advance(ensemble, days, 150, seed);
        for (int i = 0; i < 37; i++)
        {
            singles[i].Run(150, seed);
            Assert.Equal(BitConverter.SingleToInt32Bits(singles[i].OnAdults), BitConverter.SingleToInt32Bits(ensemble.OnAdults[i]));
            Assert.Equal(BitConverter.SingleToInt32Bits(singles[i].Strength), BitConverter.SingleToInt32Bits(ensemble.Strength[i]));
        }
    }

    [Fact]
    public void Advance_FewMites_ChanceHasTheMeanOfMany()
    {
        // Without crowding and loss of bees growth does not depend on the number of mites: 4,000 colonies of few against such of many.
        MiteBiology even = PlainColony.Biology with { WeeklySpread = 0d, BeesWeeklySpread = 0d, LoadHazard = 0d, WorkerCrowding = 0d, DroneCrowding = 0d, InfestedLoss = 0d };
        ColonyDays small = PlainColony.Days(PlainColony.Even(60, 20000f, 900f, 40f), even);
        MiteEnsemble few = PlainColony.Start(small, 4_000, 8f);
        MiteEnsemble many = PlainColony.Start(small, 16, 3000f);
        double ratioFew = PlainColony.MeanTotal(few);
        double ratioMany = PlainColony.MeanTotal(many);
        MiteRun.Advance(few, small, 60, 11);
        MiteRun.Advance(many, small, 60, 11);
        ratioFew = PlainColony.MeanTotal(few) / ratioFew;
        ratioMany = PlainColony.MeanTotal(many) / ratioMany;

        double mean = PlainColony.MeanTotal(few);
        double spread = Math.Sqrt(Enumerable.Range(0, few.Particles).Average(i => Math.Pow(PlainColony.Total(few, i) - mean, 2)));
        double error = spread / mean / Math.Sqrt(few.Particles) * ratioFew;
        // Four standard errors, and two in a hundred for chance that is drawn roughly.
        Assert.Equal(ratioMany, ratioFew, (0.02 * ratioMany) + (4d * error));
    }

    [Fact]
    public void Advance_OneMite_MayDieOutForGood()
    {
        ColonyDays days = PlainColony.Days(PlainColony.Even(90, 20000f, 0f, 0f));
        MiteEnsemble ensemble = PlainColony.Start(days, 2000, 1f);
        MiteRun.Advance(ensemble, days, 90, 5);
        int left = Enumerable.Range(0, 2000).Count(i => ensemble.OnAdults[i] > 0f);
        // exp(-0.0025 · 90) = 0.80 of single mites live 90 days; four standard errors of 2,000.
        Assert.InRange(left / 2000d, 0.798 - 0.036, 0.798 + 0.036);
        Assert.All(Enumerable.Range(0, 2000), i => Assert.True(ensemble.OnAdults[i] is 0f or 1f));
    }

    [Fact]
    public void Advance_OutsideTheCourse_SaysSo()
    {
        ColonyDays days = PlainColony.Days(PlainColony.Even(10, 20000f, 900f, 40f));
        MiteEnsemble ensemble = PlainColony.Start(days, 16, 10f);
        ArgumentException error = Assert.Throws<ArgumentException>(() => MiteRun.Advance(ensemble, days, 11, 1));
        Assert.Contains("course of 10 days", error.Message, StringComparison.Ordinal);
    }
}
