using CsCheck;
using Foundress.Science.Estimation;
using Foundress.Science.Numerics;
using Foundress.Science.Sampling;

namespace Foundress.Science.Tests.Sampling.Sequential;

public class SequentialPlanTests
{
    private static readonly SequentialAim OneOrThree = new(MiteLevel.Per100(1), MiteLevel.Per100(3), 0.1, 0.1, 300, 6);

    private static readonly CountLaw[] Laws = [CountLaw.Poisson, CountLaw.Binomial, CountLaw.Clumped(1.2)];

    [Fact]
    public void Lines_AnyLaw_RiseAndTheLastOneDecides() =>
        Gen.Select(Gen.Double[0.2, 3d], Gen.Double[1.3, 4d], Gen.Double[0.02, 0.3], Gen.Double[0.02, 0.3], Gen.Int[20, 400], Gen.Int[2, 20], Gen.Int[0, 2]).Sample(
            (low, times, vain, late, bees, jars, law) =>
            {
                SequentialPlan plan = new(new(MiteLevel.Per100(low), MiteLevel.Per100(low * times), vain, late, bees, jars), Laws[law]);
                for (int i = 0; i < jars; i++)
                {
                    SequentialLine line = plan.Lines[i];
                    Assert.Equal(i + 1, line.Jars);
                    Assert.True(line.ActFrom > (line.WaitUpTo ?? -1));
                    Assert.Equal(SequentialDecision.Act, line.Decide(line.ActFrom));
                    if (i > 0 && i < jars - 1)
                        Assert.True(line.ActFrom >= plan.Lines[i - 1].ActFrom);
                }

                Assert.Equal(plan.Lines[^1].WaitUpTo + 1, plan.Lines[^1].ActFrom);
            },
            iter: 200, threads: 2);

    [Fact]
    public void Judge_JarsOfThePlannedSize_FollowsTheChart() =>
        Gen.Select(Gen.Int[0, 14].Array[1, 8], Gen.Int[0, 2]).Sample(
            (mites, law) =>
            {
                SequentialPlan plan = new(OneOrThree, Laws[law]);
                SequentialDecision expected = SequentialDecision.GoOn;
                int sum = 0;
                int used = 0;
                while (used < mites.Length && expected == SequentialDecision.GoOn)
                {
                    sum += mites[used];
                    expected = plan.Lines[used].Decide(sum);
                    used++;
                }

                SequentialReading reading = plan.Judge([.. mites.Select(count => new JarCount(count, BeeCount.Counted(300)))]);
                Assert.Equal(expected, reading.Decision);
                Assert.Equal(used, reading.Jars);
            },
            iter: 400, threads: 2);

    [Fact]
    public void Judge_NoJar_GoesOn() => Assert.Equal(SequentialDecision.GoOn, new SequentialPlan(OneOrThree, CountLaw.Poisson).Judge([]).Decision);

    [Fact]
    public void OutcomeAt_HigherLevels_ActMoreOften() =>
        Gen.Select(Gen.Double[0d, 8d], Gen.Double[0.05, 3d], Gen.Int[0, 2]).Sample(
            (level, more, law) =>
            {
                SequentialPlan plan = new(OneOrThree, Laws[law]);
                SequentialOutcome lower = plan.OutcomeAt(MiteLevel.Per100(level));
                SequentialOutcome higher = plan.OutcomeAt(MiteLevel.Per100(level + more));
                Assert.Equal(1d, lower.Wait.Value + lower.Act.Value, 1e-12);
                Assert.True(higher.Act.Value >= lower.Act.Value - 1e-12);
                Assert.InRange(lower.AverageJars, 1d, 6d);
            },
            iter: 100, threads: 2);

    [Fact]
    public void OutcomeAt_NoMites_WaitsAsSoonAsTheLineAllows()
    {
        SequentialPlan plan = new(OneOrThree with { }, CountLaw.Clumped(1.2));
        SequentialOutcome outcome = plan.OutcomeAt(MiteLevel.Per100(0));

        Assert.Equal(1d, outcome.Wait.Value);
        Assert.Equal(plan.Lines.First(line => line.WaitUpTo is not null).Jars, outcome.AverageJars);
    }

    /// <summary>The recursion against rounds played out jar by jar.</summary>
    [Theory]
    [InlineData(0, 1.8)]
    [InlineData(0, 3d)]
    [InlineData(1, 1d)]
    [InlineData(2, 1.8)]
    [InlineData(2, 3d)]
    public void OutcomeAt_RoundsPlayedOut_AgreesWithThem(int law, double per100)
    {
        const int Runs = 20_000;
        SequentialPlan plan = new(new(MiteLevel.Per100(1), MiteLevel.Per100(3), 0.1, 0.1, 100, 12), Laws[law]);
        SequentialOutcome exact = plan.OutcomeAt(MiteLevel.Per100(per100));
        SeededGenerator generator = SeededGenerator.ForPart(5, $"{law} {per100}");
        int acted = 0;
        long taken = 0;
        for (int run = 0; run < Runs; run++)
        {
            int mites = 0;
            foreach (SequentialLine line in plan.Lines)
            {
                mites += Jar();
                SequentialDecision decision = line.Decide(mites);
                if (decision == SequentialDecision.GoOn)
                    continue;
                acted += decision == SequentialDecision.Act ? 1 : 0;
                taken += line.Jars;
                break;
            }
        }

        // Four standard errors.
        Assert.Equal(exact.Act.Value, (double)acted / Runs, 4d * Math.Sqrt(exact.Act.Value * exact.Wait.Value / Runs));
        Assert.Equal(exact.AverageJars, (double)taken / Runs, 4d * 4d / Math.Sqrt(Runs));

        int Jar()
        {
            if (law == 0)
                return generator.NextPoisson(per100);
            if (law == 2)
                return generator.NextPoisson(per100 * generator.NextGamma(1.2) / 1.2);
            int found = 0;
            for (int bee = 0; bee < 100; bee++)
                found += generator.NextDouble() < per100 / 100d ? 1 : 0;
            return found;
        }
    }

    [Fact]
    public void SequentialPlan_BadInput_Refuses()
    {
        MiteLevel one = MiteLevel.Per100(1);
        MiteLevel three = MiteLevel.Per100(3);
        Assert.Throws<ArgumentOutOfRangeException>(() => new SequentialAim(MiteLevel.Per100(0), three, 0.1, 0.1, 300, 6));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SequentialAim(three, three, 0.1, 0.1, 300, 6));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SequentialAim(one, three, 0.5, 0.1, 300, 6));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SequentialAim(one, three, 0.1, double.NaN, 300, 6));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SequentialAim(one, three, 0.1, 0.1, 0, 6));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SequentialAim(one, three, 0.1, 0.1, 300, 501));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SequentialPlan(new(one, MiteLevel.Per100(100), 0.1, 0.1, 300, 6), CountLaw.Binomial));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SequentialPlan(new(one, three, 0.1, 0.1, 1_000_000, 6), CountLaw.Poisson));
        Assert.Throws<ArgumentOutOfRangeException>(() => CountLaw.Clumped(0d));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SequentialPlan(OneOrThree, CountLaw.Poisson).WaitLine(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SequentialPlan(OneOrThree, CountLaw.Poisson).Lines[0].Decide(-1));
    }
}
