using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Dynamics.Bees;

namespace Foundress.Reference.Tests.Dynamics;

/// <summary>
/// The usual years of the climates against published colonies. Bands are a judgement about what a mean of some colonies in
/// some years allows. "Set" marks what the figures in bees.json were set by; the others are independent of them.
/// </summary>
public class BeeSeasonReferenceTests
{
    private static readonly BeeFacts Bees = KnowledgeBase.Load().Bees;

    /// <summary>
    /// Set. Imdorf, Ruoff &amp; Fluri 2008, ALP forum 68 (from memory): 8,000 to 15,000 bees in spring, 25,000 to 35,000 at
    /// the height in early summer, 10,000 to 15,000 into winter.
    /// </summary>
    [Theory]
    [InlineData("2026-03-01", 7_500, 13_000)]
    [InlineData("2026-04-01", 8_000, 15_000)]
    [InlineData("2026-06-20", 24_000, 35_000)]
    [InlineData("2026-10-15", 10_000, 16_000)]
    [InlineData("2026-12-01", 9_000, 14_000)]
    public void Temperate_Swiss_BeesOfTheYear(string day, double least, double most) =>
        Assert.InRange(Season("temperate", Site.At(47, 500)).AdultsOn(Day(day)), least, most);

    /// <summary>Set. The same: 10,000 to 16,000 sealed cells at the height, in May or June; the last brood emerges in October.</summary>
    [Fact]
    public void Temperate_Swiss_SealedBroodAtItsHeightAndEnd()
    {
        var course = Year("temperate", Site.At(47, 500));
        float[] sealedCells = [.. Enumerable.Range(12, 353).Select(day => course.WorkerSealed[(day - 11)..(day + 1)].ToArray().Sum())];
        int height = 12 + Array.IndexOf(sealedCells, sealedCells.Max());

        Assert.InRange(sealedCells.Max(), 10_000, 16_500);
        Assert.InRange(course.FirstDay.AddDays(height), new DateOnly(2026, 5, 1), new DateOnly(2026, 6, 30));
        Assert.True(sealedCells[course.IndexOf(new(2026, 10, 1)) - 12] > 100);
        Assert.Equal(0f, sealedCells[course.IndexOf(new(2026, 11, 1)) - 12]);
    }

    /// <summary>
    /// Set for the temperate climate by the Swiss figures, 8,000 to 15,000 of 10,000 to 15,000; a clean colony must not come
    /// out of the winter with a rest.
    /// </summary>
    [Theory]
    [InlineData("temperate", 0.55, 0.8)]
    [InlineData("cold", 0.55, 0.85)]
    [InlineData("continental", 0.4, 0.7)]
    public void Winter_MidOctoberToTheStartOfMarch_ShareOfBeesKept(string climate, double least, double most)
    {
        var season = Season(climate, Own(climate));

        Assert.InRange(season.AdultsOn(new(2026, 3, 1)) / season.AdultsOn(new(2026, 10, 15)), least, most);
    }

    /// <summary>
    /// Set (losses). Avitabile 1978, J Apic Res 17:69-73, abstract, Connecticut: the bees declined steadily from 20,800 in
    /// November to 12,000 in March, that is to 0.58.
    /// </summary>
    [Fact]
    public void Continental_Connecticut_NovemberToMarch()
    {
        var season = Season("continental", Site.At(41.5, 100));
        double november = season.AdultsOn(new(2026, 11, 15));

        Assert.InRange(november, 12_000, 23_000);
        Assert.InRange(season.AdultsOn(new(2026, 3, 15)) / november, 0.5, 0.75);
    }

    /// <summary>
    /// Independent. McLellan 1978, J Appl Ecol 15:155-161, abstract, Scotland: brood 24,000 in mid-June and almost none in
    /// late September; 13,000 bees in late September. (Its 37,000 bees in early June are more than any brood of ours rears.)
    /// </summary>
    [Fact]
    public void Temperate_Scotland_BroodInJuneAndBeesInSeptember()
    {
        var season = Season("temperate", Site.At(55.9, 50));
        var course = BeeCourses.Of(season, [], [], new(2026, 1, 1), new(2026, 12, 31));

        Assert.InRange(AllBrood(course, new(2026, 6, 15)), 17_000, 29_000);
        Assert.True(AllBrood(course, new(2026, 9, 25)) < 0.1 * AllBrood(course, new(2026, 6, 15)));
        Assert.InRange(season.AdultsOn(new(2026, 9, 25)), 9_000, 19_500);
    }

    /// <summary>
    /// Set. Delaplane &amp; Hood 1999, Apidologie 30:383-395, abstract, Georgia and South Carolina: 12,606 to 13,500 bees in
    /// February, 24,808 to 33,699 in August.
    /// </summary>
    [Theory]
    [InlineData("2026-02-15", 8_500, 17_000)]
    [InlineData("2026-08-15", 20_000, 36_000)]
    public void Mediterranean_Georgia_BeesInFebruaryAndAugust(string day, double least, double most) =>
        Assert.InRange(Season("mediterranean", Site.At(34)).AdultsOn(Day(day)), least, most);

    /// <summary>
    /// Independent. Delaplane &amp; Hood 1997, J Apic Res 36:125-132, abstract: 1,825 square centimetres of sealed brood in
    /// mid-August with 24,808 bees; at 4 cells a square centimetre 7,300.
    /// </summary>
    [Fact]
    public void Mediterranean_Georgia_SealedCellsInAugust()
    {
        var course = Year("mediterranean", Site.At(34));
        int day = course.IndexOf(new(2026, 8, 15));

        Assert.InRange(course.WorkerSealed[(day - 11)..(day + 1)].ToArray().Sum(), 4_500, 11_000);
    }

    /// <summary>
    /// Set. Korpela, Aarhus, Fries &amp; Hansen 1992, J Apic Res 31:157-164, abstract, southeastern Finland: brood for less
    /// than five months.
    /// </summary>
    [Fact]
    public void Cold_SoutheasternFinland_BroodForLessThanFiveMonths()
    {
        var course = Year("cold", Site.At(61.1));
        int withBrood = 0;
        for (int day = 21; day < course.Days; day++)
            withBrood += course.WorkerSealed[(day - 11)..(day + 1)].ToArray().Sum() >= 100f ? 1 : 0;

        Assert.InRange(withBrood, 110, 152);
    }

    /// <summary>
    /// Independent. Hatjina et al. 2014, J Apic Res 53:233-247, abstract: more adult bees where it is cold than in southern
    /// Europe for the brood they have (lives are shorter in the south), and a shorter brood season in the north.
    /// </summary>
    [Fact]
    public void Climates_NorthAgainstSouth_LongerLivesAndShorterBrood()
    {
        var north = Year("cold", Site.At(60));
        var south = Year("mediterranean", Site.At(38));

        Assert.True(Sum(north.Adults) / Sum(north.WorkerSealed) > 1.2 * (Sum(south.Adults) / Sum(south.WorkerSealed)));
        Assert.True(north.WorkerSealed.ToArray().Count(cells => cells > 50) < south.WorkerSealed.ToArray().Count(cells => cells > 50));
        Assert.True(Sum(north.WorkerSealed) < Sum(south.WorkerSealed));
    }

    /// <summary>
    /// Independent. Delaplane &amp; Hood 1997: 0.9 kg packages hived in April (some 7,000 bees) had 24,808 ± 2,245 bees in mid-August.
    /// </summary>
    [Fact]
    public void Mediterranean_PackageInGeorgia_BeesInAugust()
    {
        var season = Season("mediterranean", Site.At(34));
        var course = BeeCourses.Of(season, [], [BeeEvent.Hived(new(2026, 4, 15), 7_000, Bees.Queens)], new(2026, 4, 1), new(2026, 8, 31));

        Assert.InRange(course.Adults[course.IndexOf(new(2026, 8, 15))], 18_000, 30_000);
    }

    /// <summary>
    /// Independent. The same colonies sampled in Alabama (Aurell, Wall, Bruckner &amp; Williams 2024, doi
    /// 10.5281/zenodo.10612430): on 8 February brood in nearly all; such colonies are never long without brood.
    /// </summary>
    [Fact]
    public void Subtropical_Alabama_BroodInEveryMonth()
    {
        var course = Year("subtropical", Site.At(31.9));
        for (int month = 1; month <= 12; month++)
            Assert.True(course.WorkerSealed[course.IndexOf(new(2026, month, 15))] > 50f, $"month {month}");
    }

    [Theory]
    [InlineData("tropical")]
    [InlineData("subtropical")]
    [InlineData("mediterranean")]
    [InlineData("temperate")]
    [InlineData("cold")]
    [InlineData("continental")]
    public void Seasons_South_MirrorTheNorth(string climate)
    {
        double degrees = Bees.Seasons[climate].Climate.Degrees;
        var north = Season(climate, Site.At(degrees));
        var south = Season(climate, Site.At(-degrees));
        for (int day = 0; day < 183; day += 13)
            Assert.Equal(north.AdultsOn(new DateOnly(2026, 1, 1).AddDays(day + 182)), south.AdultsOn(new DateOnly(2026, 1, 1).AddDays(day)), 6);
    }

    private static double AllBrood(BeeCourse course, DateOnly day)
    {
        // Cells that were or will be sealed within the lives of today's brood; those still open by the losses larger.
        int at = course.IndexOf(day);
        double closed = course.WorkerSealed[(at - 11)..(at + 1)].ToArray().Sum() + course.DroneSealed[(at - 13)..(at + 1)].ToArray().Sum();
        double open = course.WorkerSealed[(at + 1)..(at + 10)].ToArray().Sum() + course.DroneSealed[(at + 1)..(at + 11)].ToArray().Sum();
        return closed + (open / Bees.Lives.SealedShare);
    }

    private static double Sum(ReadOnlySpan<float> values)
    {
        double sum = 0;
        foreach (float value in values)
            sum += value;
        return sum;
    }

    private static Site Own(string climate) => Site.At(Bees.Seasons[climate].Climate.Degrees);

    private static BroodSeason Season(string climate, Site site) => Bees.SeasonAt(climate, site);

    private static BeeCourse Year(string climate, Site site) => BeeCourses.Of(Season(climate, site), [], [], new(2026, 1, 1), new(2026, 12, 31));

    private static DateOnly Day(string day) => DateOnly.ParseExact(day, "yyyy-MM-dd");
}
