using CsCheck;
using Foundress.Science.Judging;

namespace Foundress.Science.Tests.Judging;

public class SeasonYearTests
{
    private static readonly Gen<SeasonYear> AnyYear = Gen.Enum<SeasonPhase>().Array[12].Select(phases => new SeasonYear(phases));

    private static readonly Gen<DateOnly> AnyDay = Gen.Int[0, 36500].Select(days => new DateOnly(1980, 1, 1).AddDays(days));

    [Fact]
    public void ForHemisphere_South_IsTheNorthSixMonthsLater() =>
        Gen.Select(AnyYear, AnyDay).Sample((year, day) =>
            year.ForHemisphere(Hemisphere.South).PhaseOn(new DateOnly(day.Year, day.Month, 1).AddMonths(6)) == year.PhaseOn(day));

    [Fact]
    public void ForHemisphere_SouthTwice_IsTheSameYear() =>
        AnyYear.Sample(year => year.ForHemisphere(Hemisphere.South).ForHemisphere(Hemisphere.South).Equals(year)
            && year.ForHemisphere(Hemisphere.North).Equals(year));

    [Fact]
    public void Spans_AnyWindow_CoverItWithoutGapsAndWithTheRightPhase() =>
        Gen.Select(AnyYear, AnyDay, Gen.Int[1, 800]).Sample((year, from, days) =>
        {
            DateOnly until = from.AddDays(days);
            IReadOnlyList<PhaseSpan> spans = year.Spans(from, until);
            bool ends = spans[0].From == from && spans[^1].Until == until;
            bool joined = spans.Zip(spans.Skip(1)).All(pair => pair.First.Until == pair.Second.From && pair.First.Phase != pair.Second.Phase);
            bool phases = spans.All(span => span.Days > 0 && year.PhaseOn(span.From) == span.Phase && year.PhaseOn(span.LastDay) == span.Phase);
            return ends && joined && phases;
        });

    [Theory]
    [InlineData(0)]
    [InlineData(11)]
    [InlineData(13)]
    public void Constructor_NotTwelvePhases_IsRefused(int count) =>
        Assert.Throws<ArgumentException>(() => new SeasonYear(new SeasonPhase[count]));

    [Fact]
    public void Constructor_UnknownPhase_NamesTheMonth()
    {
        var phases = new SeasonPhase[12];
        phases[4] = (SeasonPhase)99;
        Assert.Contains("Month 5", Assert.Throws<ArgumentException>(() => new SeasonYear(phases)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Spans_EmptyWindow_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new SeasonYear(new SeasonPhase[12]).Spans(new(2024, 5, 1), new(2024, 5, 1)));

    [Fact]
    public void Spans_EndOfTheCalendar_IsReached()
    {
        IReadOnlyList<PhaseSpan> spans = new SeasonYear(new SeasonPhase[12]).Spans(new(9999, 11, 3), DateOnly.MaxValue);
        Assert.Equal(DateOnly.MaxValue, Assert.Single(spans).Until);
    }
}
