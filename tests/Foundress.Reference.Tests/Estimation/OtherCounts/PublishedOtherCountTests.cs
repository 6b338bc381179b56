using Foundress.Science.Estimation;

namespace Foundress.Reference.Tests.Estimation.OtherCounts;

public class PublishedOtherCountTests
{
    [Fact]
    public void PerDay_TwentyFallenInFiveDays_IsFour()
    {
        // Extension leaflet (Weser-Ems): 20 fallen in 5 days are 4 a day. Limits: R, poisson.test(20)$conf.int / 5.
        RateInterval rate = new NaturalFall(20, 5d, 1d).PerDay(0.95);

        Assert.Equal(4d, rate.Value, 1e-12);
        Assert.Equal(2.443304, rate.Lower, 1e-6);
        Assert.Equal(6.177676, rate.Upper, 1e-6);
    }

    [Fact]
    public void Total_TenADayAndFactor300_HoldsThreeThousand()
    {
        // Extension leaflet (Weser-Ems): 10 a day times 300 are 3,000 mites; with other published factors of the same month it may be a tenth.
        MiteRange total = new NaturalFall(70, 7d, 1d).Total(new FallFactors(30d, 300d, "UK handbook; Weser-Ems"), 0.95)!.Value;

        Assert.InRange(3000d, total.Lowest, total.Highest);
        Assert.InRange(300d, total.Lowest, total.Highest);
    }

    [Fact]
    public void Total_OvernightFallOfTheTrial_HoldsItsMites()
    {
        // Delaplane & Hood 1997, J. Apic. Res. 36:125-132: 117 mites overnight in colonies of 3,172; factors 20 to 40 of Martin 1998 (from memory).
        MiteRange total = new NaturalFall(117, 1d, 1d).Total(new FallFactors(20d, 40d, "Martin 1998"), 0.95)!.Value;

        Assert.InRange(3172d, total.Lowest, total.Highest);
    }

    [Fact]
    public void ShareInfested_NineOfThreeHundred_HasTheTextbookLimits()
    {
        // Clopper-Pearson: 1.38 to 5.62 per cent (SciPy).
        RateInterval share = new OpenedBrood(BroodKind.Worker, 300, 9).ShareInfested(0.95);

        Assert.Equal(0.0138, share.Lower, 5e-5);
        Assert.Equal(0.0562, share.Upper, 5e-5);
    }
}
