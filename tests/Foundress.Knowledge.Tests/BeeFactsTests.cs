using System.Globalization;
using CsCheck;
using Foundress.Science;
using Foundress.Science.Dynamics.Bees;
using Foundress.Science.Judging;

namespace Foundress.Knowledge.Tests;

public sealed class BeeFactsTests
{
    private static readonly KnowledgeBase Knowledge = KnowledgeBase.In(CultureInfo.InvariantCulture);

    public static TheoryData<string> Climates => [.. Knowledge.Climates.Ids];

    [Fact]
    public void Seasons_EveryClimate_HasOne() => Assert.Equal(Knowledge.Climates.Ids.Order(), Knowledge.Bees.Seasons.Ids.Order());

    [Fact]
    public void SeasonAt_AnyClimateAndSite_LetsAColonyLive() =>
        Gen.Select(Gen.Int[0, Knowledge.Climates.Count - 1].Select(i => Knowledge.Climates[i].Id), Gen.Double[-90, 90], Gen.Double[0, 3000]).Sample(
            (climate, latitude, altitude) => Knowledge.Bees.SeasonAt(climate, Site.At(latitude, altitude)).AdultsOn(new(2026, 7, 1)) > 500,
            iter: 200);

    /// <summary>The phases by month and the reckoned brood are two tellings of one year: they must not gainsay each other.</summary>
    [Theory]
    [MemberData(nameof(Climates))]
    public void SeasonAt_ItsOwnPlace_HasBroodInTheMonthsThatTheClimateSays(string id)
    {
        var climate = Knowledge.Climates[id];
        var own = Knowledge.Bees.Seasons[id].Climate;
        var course = BeeCourses.Of(Knowledge.Bees.SeasonAt(id, new Site(Hemisphere.North, own.Degrees)), [], [], new(2026, 1, 1), new(2026, 12, 31));
        float most = course.WorkerSealed.ToArray().Max();
        for (int month = 1; month <= 12; month++)
        {
            float[] cells = course.WorkerSealed[course.IndexOf(new(2026, month, 1))..(course.IndexOf(new(2026, month, 27)) + 1)].ToArray();
            switch (climate.NorthernMonths[month - 1])
            {
                case SeasonPhase.DormantBroodless:
                    Assert.True(cells.Average() < 0.03 * most, $"{id} month {month}: {cells.Average()} cells a day in a broodless month");
                    break;
                case SeasonPhase.Peak:
                    Assert.True(cells.Average() > 0.5 * most, $"{id} month {month}: {cells.Average()} cells a day at the peak");
                    break;
                default:
                    Assert.True(cells.Max() > 0, $"{id} month {month}: no cell is sealed");
                    break;
            }
        }
    }

    [Fact]
    public void Read_SeasonOfNoClimate_IsRefused()
    {
        var refusal = DataFiles.RefusalOf("bees.json", tree => tree["seasons"]![0]!["id"] = "polar");

        Assert.Contains(refusal.Problems, p => p.Place == "/seasons/0/id" && p.Message.Contains("there is no climate named \"polar\"", StringComparison.Ordinal));
        Assert.Contains(refusal.Problems, p => p.Place == "/seasons" && p.Message.Contains("no season for the climate \"tropical\"", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("/seasons/3/laying", "full", 10, "A season opens, is full, fades and closes in this order")]
    [InlineData("/seasons/0/dearth", "length", 0, "A dearth lasts 1 to 300 days")]
    [InlineData("/lives/workerOpenDays", "value", 8.5, "a whole number of days")]
    [InlineData("/queens/swarmShare", "value", 0.99, "")]
    [InlineData("/frames/beesPerFrame", "value", 2, "expected low ≤ value ≤ high")]
    public void Read_FiguresThatCannotBe_AreRefusedByPlace(string place, string field, double value, string message)
    {
        var refusal = DataFiles.RefusalOf("bees.json", tree => DataFiles.At(tree, place)[field] = value);

        Assert.Contains(refusal.Problems, p => p.Place.StartsWith(place, StringComparison.Ordinal) && p.Message.Contains(message, StringComparison.Ordinal));
    }
}
