using Foundress.Science;
using Foundress.Science.Sampling;

namespace Foundress.Reference.Tests.Sampling;

/// <summary>Against Wald's formulas (A. Wald 1947, Sequential Analysis), computed here from his text, and figures derived from them.</summary>
public class WaldTests
{
    // Derived: 1 against 3 per cent, both errors 0.10. Lines at 100, 200, 300 and 600 bees.
    [Theory]
    [InlineData(100, -0.14, 3.79)]
    [InlineData(200, 1.68, 5.61)]
    [InlineData(300, 3.51, 7.43)]
    [InlineData(600, 8.98, 12.91)]
    public void Lines_OneAgainstThreePerCent_AreTheDerivedOnes(int bees, double wait, double act)
    {
        SequentialPlan plan = Plan(CountLaw.Binomial, 100, 8);

        Assert.Equal(wait, plan.WaitLine(bees / 100), 0.006);
        Assert.Equal(act, plan.ActLine(bees / 100), 0.006);
    }

    [Fact]
    public void Lines_OneJarOfThreeHundred_WaitToThreeActFromEight()
    {
        SequentialLine line = Plan(CountLaw.Binomial, 300, 5).Lines[0];

        Assert.Equal(new SequentialLine(1, 3, 8), line);
        Assert.Equal(SequentialDecision.GoOn, line.Decide(4));
        Assert.Equal(SequentialDecision.GoOn, line.Decide(7));
    }

    [Fact]
    public void Lines_BeeByBee_FirstWaitAt108() =>
        Assert.Equal(108, Plan(CountLaw.Binomial, 1, 200).Lines.First(line => line.WaitUpTo is not null).Jars);

    [Fact]
    public void Lines_TwoAgainstFivePerCent_HaveTheDerivedSlopeAndIntercepts()
    {
        SequentialPlan plan = new(new(MiteLevel.Per100(2), MiteLevel.Per100(5), 0.1, 0.1, 1, 10), CountLaw.Binomial);

        Assert.Equal(0.032817, plan.ActLine(2) - plan.ActLine(1), 1e-6);
        Assert.Equal(2.31926, plan.ActLine(1) - 0.032817, 2e-6);
        Assert.Equal(-2.31926, plan.WaitLine(1) - 0.032817, 2e-6);
    }

    /// <summary>Without an end, true errors keep α' ≤ α / (1 - β), β' ≤ β / (1 - α) and α' + β' ≤ α + β (Wald 1947, 3.28 to 3.30): exact bounds, not approximations.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void OutcomeAt_LongRounds_KeepsWaldsBounds(int law)
    {
        SequentialPlan plan = Plan(Law(law), 40, 400);
        double vain = plan.OutcomeAt(MiteLevel.Per100(1)).Act.Value;
        double late = plan.OutcomeAt(MiteLevel.Per100(3)).Wait.Value;

        Assert.InRange(vain, 0.03, 0.1 / 0.9);
        Assert.InRange(late, 0.03, 0.1 / 0.9);
        Assert.InRange(vain + late, 0.08, 0.2);
    }

    /// <summary>With near levels and small jars, overshoot is small and Wald's approximate curve and average number are near the exact ones.</summary>
    [Fact]
    public void OutcomeAt_SmallSteps_LiesByWaldsApproximations()
    {
        const int Bees = 20;
        SequentialPlan plan = new(new(MiteLevel.Per100(2), MiteLevel.Per100(3), 0.1, 0.1, Bees, 500), CountLaw.Poisson);
        double act = Math.Log(9d);
        double perMite = Math.Log(1.5);
        foreach (double h in (double[])[-1.5, -0.5, 0.5, 1d, 1.5])
        {
            // The level at which E[ratio^h] = 1 under Poisson counts: level ((high/low)^h - 1) = h (high - low).
            double level = 0.01 * h / (Math.Pow(1.5, h) - 1d);
            double wait = (Math.Exp(act * h) - 1d) / (Math.Exp(act * h) - Math.Exp(-act * h));
            double drift = Bees * ((level * perMite) - 0.01);
            double jars = (((1d - wait) * act) - (wait * act)) / drift;
            SequentialOutcome exact = plan.OutcomeAt(MiteLevel.FromPerBee(level));

            Assert.Equal(wait, exact.Wait.Value, 0.04);
            Assert.InRange(exact.AverageJars / jars, 0.95, 1.25);
        }
    }

    // R. H. Green 1970, Res. Popul. Ecol. 12:249-251: for counts spread by chance alone, 1 / precision² mites whatever the jars.
    [Theory]
    [InlineData(0.25, 16)]
    [InlineData(0.10, 100)]
    public void StopLine_ChanceAlone_IsOneOverPrecisionSquared(double precision, double mites)
    {
        Assert.Equal(mites, StopLine.Poisson(precision), 1e-9);
        Assert.Equal(mites, StopLine.Taylor(precision, 1d, 1d, 1), 1e-9);
        Assert.Equal(mites, StopLine.Taylor(precision, 1d, 1d, 37), 1e-9);
    }

    private static CountLaw Law(int law) => law switch { 0 => CountLaw.Poisson, 1 => CountLaw.Binomial, _ => CountLaw.Clumped(1.5) };

    private static SequentialPlan Plan(CountLaw law, int bees, int jars) =>
        new(new(MiteLevel.Per100(1), MiteLevel.Per100(3), 0.1, 0.1, bees, jars), law);
}
