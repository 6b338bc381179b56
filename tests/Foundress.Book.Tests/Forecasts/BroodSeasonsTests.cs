using Foundress.Book.Forecasts;
using Foundress.Book.Journal;
using Foundress.Book.State;

namespace Foundress.Book.Tests.Forecasts;

public sealed class BroodSeasonsTests
{
    private readonly BroodSeasons _seasons = new(TestBook.Knowledge);

    private static Apiary Home(double latitude = 48) => new(new ApiaryId(Guid.Empty), "Home", latitude, 11);

    [Fact]
    public void At_Higher_SpringComesLater()
    {
        var low = _seasons.At(Home());
        var high = _seasons.At(Home() with { Altitude = 1200 });

        Assert.True(low.BroodOn(new(2026, 3, 20)) > high.BroodOn(new(2026, 3, 20)));
    }

    [Fact]
    public void At_KeepersOwnMonths_LaysInThoseOnly()
    {
        var own = _seasons.At(Home() with { BroodFrom = 4, BroodTo = 8 });

        Assert.Equal(0d, own.LayingOn(new(2026, 3, 31)));
        Assert.True(own.LayingOn(new(2026, 5, 1)) > 0d);
        Assert.Equal(0d, own.LayingOn(new(2026, 9, 2)));
    }

    [Fact]
    public void At_OwnMonthsInTheSouth_AreThatYearsMonths()
    {
        var own = _seasons.At(Home(-38) with { BroodFrom = 9, BroodTo = 3 });

        Assert.True(own.LayingOn(new(2026, 12, 15)) > 0d);
        Assert.Equal(0d, own.LayingOn(new(2026, 6, 15)));
    }
}
