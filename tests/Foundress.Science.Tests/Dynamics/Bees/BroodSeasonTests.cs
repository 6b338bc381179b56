using Foundress.Science.Dynamics.Bees;

namespace Foundress.Science.Tests.Dynamics.Bees;

public class BroodSeasonTests
{
    private static readonly DateOnly First = new(2025, 1, 1);

    [Fact]
    public void AdultsOn_OneYearLater_IsTheSame()
    {
        var course = SampleSeasons.Course(First, First.AddDays(729));

        for (int day = 0; day < 365; day++)
            Assert.Equal(course.Adults[day], course.Adults[day + 365], course.Adults[day] * 1e-4f);
        Assert.Equal(SampleSeasons.North.AdultsOn(First), course.Adults[0], 1.0);
    }

    [Fact]
    public void AdultsOn_South_IsTheNorthHalfAYearLater()
    {
        for (int day = 0; day < 183; day++)
        {
            Assert.Equal(SampleSeasons.North.AdultsOn(First.AddDays(day + 182)), SampleSeasons.South.AdultsOn(First.AddDays(day)), 9);
            Assert.Equal(SampleSeasons.North.LayingOn(First.AddDays(day + 182)), SampleSeasons.South.LayingOn(First.AddDays(day)), 12);
        }
    }

    [Theory]
    [InlineData(52, 5)]
    [InlineData(47, 0)]
    [InlineData(40, -7)]
    [InlineData(0, -9)]
    [InlineData(90, 9)]
    public void Constructor_OtherLatitude_MovesTheSeasonNoFurtherThanGiven(double latitude, double moved) =>
        Assert.Equal(moved, At(new Site(Hemisphere.North, latitude)).DegreesMoved, 12);

    [Fact]
    public void Constructor_NearerThePole_LaysLaterAndStopsEarlier()
    {
        var far = At(Site.At(52));

        Assert.True(far.LayingOn(new(2025, 2, 15)) < SampleSeasons.North.LayingOn(new(2025, 2, 15)));
        Assert.Equal(0d, far.LayingOn(new(2025, 2, 15)));
        Assert.True(far.LayingOn(new(2025, 9, 1)) < SampleSeasons.North.LayingOn(new(2025, 9, 1)));
    }

    /// <summary>122 metres are one degree: Hopkins's rule, 400 feet for each degree.</summary>
    [Fact]
    public void Constructor_Altitude_CountsAsLatitude() =>
        Assert.Equal(At(new Site(Hemisphere.North, 50)).DegreesMoved, At(new Site(Hemisphere.North, 47, 366)).DegreesMoved, 12);

    [Fact]
    public void Constructor_QueenThatHardlyLays_SaysThatNoColonyLives()
    {
        var refusal = Assert.Throws<ArgumentException>(() => new BroodSeason(SampleSeasons.Climate with { PeakLaying = 50 }, SampleSeasons.Lives, SampleSeasons.Queens, new Site(Hemisphere.North)));

        Assert.Contains("does not live", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Constructor_FigureOutOfRange_IsNamed()
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => new BroodSeason(SampleSeasons.Climate with { WinterLoss = 3 }, SampleSeasons.Lives, SampleSeasons.Queens, new Site(Hemisphere.North)));

        Assert.Equal("WinterLoss", refusal.ParamName);
    }

    [Fact]
    public void WithLaying_KeepersOwnMonths_LaysOnlyWithinThem()
    {
        var season = new BroodSeason(SampleSeasons.Climate.WithLaying(60, 250), SampleSeasons.Lives, SampleSeasons.Queens, new Site(Hemisphere.North));

        Assert.Equal(0d, season.LayingOn(new(2025, 2, 28)));
        Assert.True(season.LayingOn(new(2025, 3, 10)) > 0d);
        Assert.True(season.LayingOn(new(2025, 9, 1)) > 0d);
        Assert.Equal(0d, season.LayingOn(new(2025, 9, 7)));
    }

    private static BroodSeason At(Site site) => new(SampleSeasons.Climate, SampleSeasons.Lives, SampleSeasons.Queens, site);
}
