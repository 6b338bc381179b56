using CsCheck;
using Foundress.Science.Judging;
using Foundress.Science.Sampling;

namespace Foundress.Science.Tests.Sampling;

public class YearCalendarTests
{
    private static readonly SeasonYear North = new(
    [
        SeasonPhase.DormantBroodless, SeasonPhase.DormantWithBrood, SeasonPhase.DormantWithBrood, SeasonPhase.Increase,
        SeasonPhase.Increase, SeasonPhase.Peak, SeasonPhase.Peak, SeasonPhase.Decrease,
        SeasonPhase.Decrease, SeasonPhase.DormantWithBrood, SeasonPhase.DormantBroodless, SeasonPhase.DormantBroodless,
    ]);

    private static readonly CalendarRule[] Rules =
    [
        new(SeasonPhase.Increase, PhasePoint.Start, "spring"),
        new(SeasonPhase.Peak, PhasePoint.Middle, "before the peak ends", 10),
        new(SeasonPhase.Decrease, PhasePoint.Start, "after the peak"),
        new(SeasonPhase.Decrease, PhasePoint.End, "before winter"),
        new(SeasonPhase.DormantBroodless, PhasePoint.Middle, "winter"),
    ];

    [Fact]
    public void Dates_NorthernYear_AreTheseDays()
    {
        IReadOnlyList<SamplingDate> dates = YearCalendar.Dates(North, Rules, new(2025, 1, 1), new(2026, 1, 1));

        Assert.Equal(
            [
                new(new(2025, 4, 1), new(2025, 4, 1), new(2025, 4, 8), SeasonPhase.Increase, "spring"),
                new(new(2025, 7, 1), new(2025, 6, 21), new(2025, 7, 11), SeasonPhase.Peak, "before the peak ends"),
                new(new(2025, 8, 1), new(2025, 8, 1), new(2025, 8, 8), SeasonPhase.Decrease, "after the peak"),
                new(new(2025, 9, 30), new(2025, 9, 23), new(2025, 9, 30), SeasonPhase.Decrease, "before winter"),
                new SamplingDate(new(2025, 12, 17), new(2025, 12, 10), new(2025, 12, 24), SeasonPhase.DormantBroodless, "winter"),
            ],
            dates);
    }

    [Fact]
    public void Dates_SouthernYear_ComeHalfAYearLater()
    {
        DateOnly[] north = [.. YearCalendar.Dates(North, Rules[..1], new(2025, 1, 1), new(2026, 1, 1)).Select(date => date.On.AddMonths(6))];
        DateOnly[] south = [.. YearCalendar.Dates(North.ForHemisphere(Hemisphere.South), Rules[..1], new(2025, 7, 1), new(2026, 7, 1)).Select(date => date.On)];

        Assert.Equal([new DateOnly(2025, 10, 1)], south);
        Assert.Equal(north, south);
    }

    [Fact]
    public void Dates_WindowCutAnywhere_GivesTheSameDates() =>
        Gen.Int[1, 729].Sample(days =>
        {
            DateOnly from = new(2024, 1, 1);
            DateOnly until = new(2026, 1, 1);
            DateOnly cut = from.AddDays(days);
            return YearCalendar.Dates(North, Rules, from, cut).Concat(YearCalendar.Dates(North, Rules, cut, until))
                .SequenceEqual(YearCalendar.Dates(North, Rules, from, until));
        });

    [Fact]
    public void Dates_AnyYear_LieInTheirPhaseAndWindow() =>
        Gen.Select(Gen.Enum<SeasonPhase>().Array[12], Gen.Int[0, 5000], Gen.Int[1, 900]).Sample((phases, start, days) =>
        {
            var year = new SeasonYear(phases);
            DateOnly from = new DateOnly(2020, 1, 1).AddDays(start);
            IReadOnlyList<SamplingDate> dates = YearCalendar.Dates(year, Rules, from, from.AddDays(days));
            return dates.All(date => date.On >= from && date.On < from.AddDays(days) && date.From <= date.On && date.On <= date.To
                    && year.PhaseOn(date.On) == date.Phase && year.PhaseOn(date.From) == date.Phase && year.PhaseOn(date.To) == date.Phase)
                && dates.Zip(dates.Skip(1)).All(pair => pair.First.On <= pair.Second.On);
        });

    [Fact]
    public void Dates_PhaseAllYear_StartsEveryJanuary()
    {
        var year = new SeasonYear([.. Enumerable.Repeat(SeasonPhase.Increase, 12)]);
        IReadOnlyList<SamplingDate> dates = YearCalendar.Dates(year, Rules, new(2025, 1, 1), new(2027, 1, 1));

        Assert.Equal([new DateOnly(2025, 1, 1), new DateOnly(2026, 1, 1)], dates.Select(date => date.On));
    }

    // common practice, no source: within a week after a control ended.
    [Fact]
    public void AfterControl_SevenDays_RunsFromTheNextDay()
    {
        SamplingDate date = YearCalendar.AfterControl(North, new(2025, 8, 28), 7, "after the control");

        Assert.Equal(new(new(2025, 9, 4), new(2025, 8, 29), new(2025, 9, 4), SeasonPhase.Decrease, "after the control"), date);
    }

    [Fact]
    public void Dates_NegativeLeeway_NamesTheRule() =>
        Assert.Contains("spring", Assert.Throws<ArgumentOutOfRangeException>(
            () => YearCalendar.Dates(North, [Rules[0] with { Leeway = -1 }], new(2025, 1, 1), new(2026, 1, 1))).Message, StringComparison.Ordinal);
}
