using Foundress.Knowledge;
using Foundress.Science.Dynamics;
using Foundress.Science.Dynamics.Bees;

namespace Foundress.Reference.Tests.Dynamics;

/// <summary>
/// Published figures of mite life against the model with the shipped figures. Numbers are the rows of the table in
/// docs/methods/forecast.md, which says to which of them figures were tuned.
/// </summary>
public class PublishedMitesTests
{
    private const string Temperate = "temperate";
    private const double Middle = 48;

    private static DateOnly On(int month, int day, int year = 2025) => new(year, month, day);

    // Row 6 is a model's own mean colony; rows without a word are too.
    private static PublishedYear Spring(double drones = 1d) => new(Temperate, Middle, On(4, 1), 200, 20, droneScale: drones);

    /// <summary>1. Growth with full brood 0.020 to 0.025 a day (Martin 1998; Calatayud &amp; Verdú 1993). Tuned to.</summary>
    [Fact]
    public void Growth_FullBrood_IsAsPublished() => Assert.InRange(Spring().To(On(5, 10)).GrowthTo(On(7, 10)), 0.020, 0.0265);

    /// <summary>2. Without drone brood growth is clearly lower (direction: Calis, Fries &amp; Ryrie 1999).</summary>
    [Fact]
    public void Growth_NoDroneBrood_IsLowerByAFifthToAHalf()
    {
        double with = Spring().To(On(5, 10)).GrowthTo(On(7, 10));
        double without = Spring(1e-4).To(On(5, 10)).GrowthTo(On(7, 10));
        Assert.InRange(without / with, 0.5, 0.8);
    }

    /// <summary>3. Less than five months of brood, isolated: means of 8.2 to 24.6 fold in a year over colonies that differ (Korpela et al. 1992).</summary>
    [Fact]
    public void Year_ShortSeasonNoInflow_MultipliesAsInFinland()
    {
        PublishedYear year = new("cold", 61, On(3, 1), 800, 8, coloniesDiffer: true);
        double first = year.To(On(9, 10)).Total;
        Assert.InRange(year.To(On(9, 10, 2026)).Total / first, 6d, 30d);
    }

    /// <summary>4. 39.8 % of mites lost over such a winter (Korpela et al. 1992). The death rate was taken from it.</summary>
    [Fact]
    public void Winter_WithoutBrood_LosesAsInFinland()
    {
        PublishedYear winter = new("cold", 61, On(10, 5), 200, 300);
        Assert.InRange(1d - (winter.To(On(4, 15, 2026)).Total / 300d), 0.25, 0.5);
    }

    /// <summary>5. Brood all year: about 800 fold (Martin 1998, from memory).</summary>
    [Fact]
    public void Year_BroodAllYear_MultipliesByHundreds()
    {
        PublishedYear year = new("subtropical", 28, On(1, 1), 366, 4);
        double start = year.Total;
        Assert.InRange(year.To(On(12, 31)).Total / start, 200d, 4000d);
    }

    /// <summary>6. About 128 days with brood: 12 fold a year (Martin 1998, from memory).</summary>
    [Fact]
    public void Year_FourMonthsOfBrood_MultipliesByTwelveOrSo()
    {
        PublishedYear year = new("cold", 61, On(3, 1), 800, 8);
        double first = year.To(On(3, 1, 2026)).Total;
        Assert.InRange(year.To(On(3, 1, 2027)).Total / first, 5d, 25d);
    }

    /// <summary>7. May to August a colony holds 27 to 54 times the mites that fall in a day (Delaplane &amp; Hood 1997, 1999), about 30 (Martin 1998, from memory); here every death counts, whether a board sees it or not.</summary>
    [Fact]
    public void Summer_MitesForEachDead_AreAsBoardsShow() => Assert.InRange(Spring().MitesForEachDead(On(5, 15), On(8, 15)), 20d, 60d);

    /// <summary>8. September and October about 100, November to February about 400 (Martin 1998, from memory).</summary>
    [Fact]
    public void AutumnAndWinter_MitesForEachDead_AreMany()
    {
        PublishedYear year = new(Temperate, Middle, On(8, 1), 250, 300);
        Assert.InRange(year.MitesForEachDead(On(9, 1), On(10, 31)), 50d, 250d);
        Assert.InRange(year.MitesForEachDead(On(11, 5), On(2, 15, 2026)), 200d, 600d);
    }

    /// <summary>
    /// 9. Of all mites those seen dead on boards, untreated: 14 to 23 % in 21 days of July (Mattila &amp; Otis 1999), 16.4 % in 42 and 23.9 % in 56 days from
    /// late August (Semkiw et al. 2013). Boards miss mites that die away from the hive or are carried out: about half is taken to be seen (no source), so the
    /// band is wide, and row 7 and this one cannot both be met without that.
    /// </summary>
    [Theory]
    [InlineData(7, 1, 21)]
    [InlineData(8, 25, 42)]
    [InlineData(8, 25, 56)]
    public void Boards_SeeHalfTheDead_AsInUntreatedColonies(int month, int day, int days)
    {
        const double SeenOnBoards = 0.5;
        PublishedYear year = new(Temperate, 52, On(6, 1), 150, 300);
        DateOnly from = On(month, day);
        double dead = Enumerable.Range(0, days).Sum(after => year.To(from.AddDays(after)).DeadToday);
        Assert.InRange(SeenOnBoards * dead / (year.Total + dead), 0.1, 0.35);
    }

    /// <summary>10. A colony at the August line: of all mites 30 to 60 % on bees with 24,800 bees and 7,000 sealed cells (Delaplane &amp; Hood 1997).</summary>
    [Fact]
    public void August_ShareOnAdults_IsAsInTheThresholdColonies() => Assert.InRange(Spring().To(On(8, 12)).ShareOnAdults, 0.3, 0.6);

    /// <summary>11. From few in late July with 266 to 1,171 (72 to 248) carried in: 2,082 (340) mites in November (Frey &amp; Rosenkranz 2014).</summary>
    [Theory]
    [InlineData(9f, 600d, 3000d)]
    [InlineData(1.5f, 100d, 700d)]
    public void Autumn_CarriedIn_AddsUpAsMeasured(float lateInflow, double low, double high)
    {
        PublishedYear autumn = new(Temperate, Middle, On(7, 25), 120, 5, lateInflow: lateInflow);
        Assert.InRange(autumn.To(On(11, 10)).Total, low, high);
    }

    /// <summary>
    /// 12. North Florida, from 0.25 to 3 mites per 100 bees: four to five months from winter or spring with few carried in (1 a day), under three from summer or
    /// autumn (Jack et al. 2023): with 7 a day carried in, within the 2.5 to 11 that Frey &amp; Rosenkranz (2014) measured where colonies stood close.
    /// </summary>
    [Theory]
    [InlineData(1, 15, 1f, 90, 170)]
    [InlineData(3, 15, 1f, 90, 170)]
    [InlineData(6, 15, 7f, 30, 95)]
    [InlineData(9, 1, 7f, 30, 95)]
    public void Florida_FromAQuarterToThree_TakesTheMonthsMeasured(int month, int day, float inflow, int low, int high)
    {
        PublishedYear year = new("subtropical", 29.6, On(month, day), 300, 0d, inflow: inflow, startLevel: 0.25);
        int days = Enumerable.Range(1, 299).First(after => year.To(On(month, day).AddDays(after)).LevelPer100 >= 3d);
        Assert.InRange(days, low, high);
    }

    /// <summary>13. Trap comb in a broodless colony: share caught 1 - exp(-6.49 N / W) with N drone cells and W grams of bees (Calis et al. 1999).</summary>
    [Theory]
    [InlineData(250)]
    [InlineData(700)]
    public void Trap_DroneCellsInBroodlessColony_CatchesTheClosedForm(int cells)
    {
        float[] Even(float value) => [value, value];
        BeeCourse bees = new(On(6, 1), Even(12_000f), Even(0f), Even(cells), Even(0.1f), Even(0.1f));
        MiteBiology full = PublishedYear.Life with { InvasionScale = 1d, DeathBroodless = 0d, DeathWithBrood = 0d, LoadHazard = 0d };
        ColonyDays days = ColonyDays.Of(bees, full, Foundress.Science.Hemisphere.North, [], []);
        MiteEnsemble one = new(1, 0);
        // Many mites, so that chance is out of play; the cells of the days before the start are emptied.
        one.Start(days, 0, [100_000f], [0f]);
        double before = one.InDroneCells(0) * 13d / 14d;
        MiteRun.Advance(one, days, 1, 1);
        double caught = 1d - (one.OnAdults[0] / (100_000d + (one.InDroneCells(0) + one.OnAdults[0] - 100_000d - before)));
        double closed = 1d - Math.Exp(-6.49 * cells / (12_000d * 0.125));
        Assert.Equal(closed, caught, 0.02);
    }

    /// <summary>14. Queen caged 25 days in July, then oxalic acid at 95 % of the mites on bees: 88 to 90 % removed (Büchler et al. 2020).</summary>
    [Fact]
    public void Caging_ThenOxalicAcid_RemovesMostMites()
    {
        BeeEvent[] cage = [BeeEvent.Queen(On(7, 1), BeeEventKind.QueenCaged), BeeEvent.Queen(On(7, 26), BeeEventKind.QueenReleased)];
        int day = On(7, 26).DayNumber - On(5, 1).DayNumber;
        PublishedYear year = new(Temperate, Middle, On(5, 1), 150, 100, controls: [new ControlEffect(day, 1, 0.95, 0d, 0d)], events: cage);
        double before = year.To(On(7, 26)).Total;
        Assert.InRange(1d - (year.To(On(7, 27)).Total / before), 0.8, 0.97);
    }

    /// <summary>15. Oxalic acid once with summer brood: about 60 % with less brood, at most the share on bees (Maggi et al. 2016).</summary>
    [Fact]
    public void OxalicAcid_WithBrood_ReachesTheShareOnBees()
    {
        int day = On(7, 15).DayNumber - On(5, 1).DayNumber;
        PublishedYear year = new(Temperate, Middle, On(5, 1), 120, 100, controls: [new ControlEffect(day, 1, 0.95, 0d, 0d)]);
        double before = year.To(On(7, 15)).Total;
        Assert.InRange(1d - (year.To(On(7, 16)).Total / before), 0.25, 0.65);
    }

    /// <summary>16. Amitraz strips from 25 August: 90.6 % in 6 weeks, 94.6 % in 8 (Semkiw et al. 2013): with the rate and the waning of the data.</summary>
    [Theory]
    [InlineData(42, 0.85, 0.97)]
    [InlineData(56, 0.88, 0.99)]
    public void Strips_LateAugust_RemoveAsMeasured(int days, double low, double high)
    {
        ControlModel strips = KnowledgeBase.Load().Controls.Agents["amitraz-strips"].Model;
        int start = On(8, 25).DayNumber - On(6, 1).DayNumber;
        PublishedYear treated = new(Temperate, 52, On(6, 1), 200, 300, controls: [new ControlEffect(start, 56, strips.AdultKillPerDay.Value, 0d, 0d, HalfLife: strips.HalfLife!.Value)]);
        double before = treated.To(On(8, 25)).Total;
        Assert.InRange(1d - (treated.To(On(8, 25).AddDays(days)).Total / before), low, high);
    }

    /// <summary>17. Drone comb cut three to four times: mites at the end down by 50 to 70 % (Charrière et al. 2003).</summary>
    [Fact]
    public void DroneComb_CutFourTimes_HalvesTheMitesOrMore()
    {
        MitesTaken[] cuts = [.. new[] { 35, 60, 85, 105 }.Select(day => new MitesTaken(day, 0d, 0d, 0.9))];
        double with = new PublishedYear(Temperate, Middle, On(4, 10), 200, 20, taken: cuts).To(On(9, 1)).Total;
        double without = new PublishedYear(Temperate, Middle, On(4, 10), 200, 20).To(On(9, 1)).Total;
        Assert.InRange(with / without, 0.17, 0.7);
    }

    /// <summary>18. Queen caged 25 days in May and no more: fewer mites in October, but not by much (Calis et al. 1999: length of the brood season).</summary>
    [Fact]
    public void Caging_Alone_LowersALittle()
    {
        BeeEvent[] cage = [BeeEvent.Queen(On(5, 10), BeeEventKind.QueenCaged), BeeEvent.Queen(On(6, 4), BeeEventKind.QueenReleased)];
        double with = new PublishedYear(Temperate, Middle, On(4, 1), 220, 20, events: cage).To(On(10, 15)).Total;
        double without = new PublishedYear(Temperate, Middle, On(4, 1), 220, 20).To(On(10, 15)).Total;
        Assert.InRange(with / without, 0.4, 0.9);
    }

    /// <summary>19. Autumn load and bees kept to spring: monotone; a clean colony keeps 0.4 or more, one with 30 per 100 a tenth or less (Frey &amp; Rosenkranz 2014; Rosenkranz et al. 2006).</summary>
    [Fact]
    public void Winter_HigherLoad_KeepsFewerBees()
    {
        double[] kept = [.. new[] { 0d, 5d, 10d, 30d }.Select(level =>
        {
            PublishedYear winter = new(Temperate, Middle, On(10, 15), 150, level / 100d * 15_000d);
            return winter.To(On(3, 1, 2026)).Adults / winter.Bees.Adults[0];
        })];
        Assert.True(kept[0] > kept[1] && kept[1] > kept[2] && kept[2] > kept[3], string.Join(", ", kept));
        Assert.True(kept[0] >= 0.4, string.Join(", ", kept));
        Assert.True(kept[3] <= 0.15, string.Join(", ", kept));
    }

    /// <summary>21. Untreated from ten mites: bees all but gone in the second to fifth year (several accounts).</summary>
    [Fact]
    public void Untreated_FromTenMites_FailsWithinYears()
    {
        PublishedYear years = new(Temperate, Middle, On(1, 1), 1830, 10);
        int gone = Enumerable.Range(1, 5).FirstOrDefault(year => years.To(On(3, 1, 2025 + year)).Adults < 2000d);
        Assert.InRange(gone, 2, 5);
    }

    /// <summary>22. Half of the mites enter cells in 2 to 8 days with ample brood: 0.08 to 0.35 a day (Boot et al. 1993).</summary>
    [Theory]
    [InlineData(5, 10)]
    [InlineData(6, 15)]
    [InlineData(7, 15)]
    public void Invasion_AmpleBrood_IsAsMeasured(int month, int day)
    {
        PublishedYear year = Spring();
        int at = year.Bees.IndexOf(On(month, day));
        MiteBiology life = PublishedYear.Life;
        double rate = life.InvasionScale * ((life.WorkerInvasion * year.Bees.WorkerSealed[at]) + (life.DroneInvasion * year.Bees.DroneSealed[at])) / (year.Bees.Adults[at] * life.BeeGrams);
        Assert.InRange(rate, 0.08, 0.4);
    }

    /// <summary>Share on adults with brood: quartiles 0.22 to 0.35 of dissected colonies (open trial); 20 to 40 % in reviews. Tuned to.</summary>
    [Fact]
    public void June_ShareOnAdults_IsAQuarterToAThird() => Assert.InRange(Spring().To(On(6, 15)).ShareOnAdults, 0.2, 0.4);

    /// <summary>Without brood every mite is on bees.</summary>
    [Fact]
    public void Broodless_ShareOnAdults_IsAll() => Assert.Equal(1d, new PublishedYear("cold", 61, On(11, 1), 60, 300).To(On(12, 1)).ShareOnAdults, 3);
}
