using CsCheck;
using Foundress.Science.Dynamics.Bees;

namespace Foundress.Science.Tests.Dynamics.Bees;

public class BeeCoursesTests
{
    private static readonly DateOnly First = new(2025, 1, 1);
    private static readonly DateOnly Last = new(2025, 12, 31);

    private static readonly Gen<DateOnly> AnyDay = Gen.Int[-500, 400].Select(days => First.AddDays(days));

    private static readonly Gen<BeeEvent> AnyTaking = Gen.Select(AnyDay, Gen.Int[0, 6], Gen.Double[0, 1], Gen.Double[0, 1], (on, kind, bees, brood) => kind switch
    {
        0 => BeeEvent.Queen(on, BeeEventKind.QueenLost),
        1 => BeeEvent.Queen(on, BeeEventKind.QueenCaged),
        2 => BeeEvent.Swarmed(on, bees),
        3 => BeeEvent.Divided(on, bees, brood),
        4 => BeeEvent.Gave(on, 20_000 * bees, 20_000 * brood),
        5 => BeeEvent.BroodTaken(on, brood),
        _ => BeeEvent.DroneBroodTaken(on, brood),
    });

    private static readonly Gen<BeeEvent> AnyEvent = Gen.OneOf(
        AnyTaking,
        Gen.Select(AnyDay, Gen.Double[0, 40_000], Gen.Double[0, 30_000], (on, bees, brood) => BeeEvent.Joined(on, bees, brood)),
        Gen.Select(AnyDay, Gen.Double[0, 40_000], Gen.Double[0, 30_000], (on, bees, brood) => BeeEvent.Began(on, bees, brood)),
        Gen.Select(AnyDay, Gen.Double[0, 40_000], (on, bees) => BeeEvent.Hived(on, bees, SampleSeasons.Queens)),
        AnyDay.Select(on => BeeEvent.Queen(on, BeeEventKind.QueenReleased)),
        AnyDay.Select(on => BeeEvent.Queen(on, BeeEventKind.NewQueenLaying)),
        AnyDay.Select(on => BeeEvent.Swarmed(on)));

    private static readonly Gen<BeeSighting> AnySighting = Gen.Select(AnyDay, Gen.Double[0, 60_000], Gen.Double[0, 40_000], Gen.Int[0, 2], (on, bees, brood, what) =>
        new BeeSighting(on, what == 1 ? null : bees, 0.25, what == 2 ? null : brood, 0.35));

    /// <summary>The course itself refuses what is negative or not finite.</summary>
    [Fact]
    public void Of_AnyRecord_IsACourseWithHonestSpreads() =>
        Gen.Select(AnySighting.Array[0, 8], AnyEvent.Array[0, 8]).Sample((sightings, events) =>
        {
            var course = BeeCourses.Of(SampleSeasons.North, sightings, events, First, Last);
            for (int day = 0; day < course.Days; day++)
            {
                Assert.InRange(course.AdultLogSpread[day], 0.01f, 0.41f);
                Assert.InRange(course.BroodLogSpread[day], 0.01f, 2f);
            }
        });

    [Fact]
    public void Of_RecordInAnotherOrder_IsTheSame() =>
        Gen.Select(AnySighting.Array[0, 6], AnyEvent.Array[0, 6]).Where((_, events) => events.Select(one => one.On).Distinct().Count() == events.Length).Where(pair => pair.Item1.Select(one => one.On).Distinct().Count() == pair.Item1.Length).Sample((sightings, events) =>
        {
            var one = BeeCourses.Of(SampleSeasons.North, sightings, events, First, Last);
            var other = BeeCourses.Of(SampleSeasons.North, [.. sightings.Reverse()], [.. events.Reverse()], First, Last);
            Assert.True(one.Adults.SequenceEqual(other.Adults) && one.WorkerSealed.SequenceEqual(other.WorkerSealed) && one.AdultLogSpread.SequenceEqual(other.AdultLogSpread));
        });

    [Fact]
    public void Of_SomethingWasTaken_NeverMakesMoreBees() =>
        AnyTaking.Array[1, 6].Sample(events =>
        {
            var with = SampleSeasons.Course(First, Last, events);
            var without = SampleSeasons.Course(First, Last);
            for (int day = 0; day < with.Days; day++)
            {
                Assert.True(with.Adults[day] <= without.Adults[day] * 1.0001f, $"day {day}");
                Assert.True(with.WorkerSealed[day] <= without.WorkerSealed[day] * 1.0001f + 1e-3f, $"day {day}");
                Assert.True(with.DroneSealed[day] <= without.DroneSealed[day] * 1.0001f + 1e-3f, $"day {day}");
            }
        });

    /// <summary>Of two sightings of a few days that contradict each other both are believed, so the course may leap between those.</summary>
    [Fact]
    public void Of_SightingsWeeksApart_ChangesLittleFromDayToDay() =>
        AnySighting.Array[0, 6].Where(WeeksApart).Sample(sightings =>
        {
            var course = SampleSeasons.Seen(First, Last, sightings);
            for (int day = 1; day < course.Days; day++)
                Assert.InRange(course.Adults[day] / course.Adults[day - 1], 0.6f, 1.7f);
        });

    private static bool WeeksApart(BeeSighting[] sightings)
    {
        int[] days = [.. sightings.Select(one => one.On.DayNumber).Order()];
        return Enumerable.Range(1, Math.Max(days.Length - 1, 0)).All(i => days[i] - days[i - 1] >= 14);
    }

    [Fact]
    public void Of_StartedLater_IsTheSameColony()
    {
        BeeSighting[] sightings = [new(new(2025, 5, 1), 9000, 0.25, 8000, 0.35), new(new(2025, 8, 1), 20_000, 0.25, 14_000, 0.35)];
        BeeEvent[] events = [BeeEvent.Queen(new(2025, 6, 1), BeeEventKind.QueenLost), BeeEvent.Divided(new(2025, 6, 1), 0.3, 0.4)];
        var whole = BeeCourses.Of(SampleSeasons.North, sightings, events, new(2025, 5, 1), Last);

        var part = BeeCourses.Of(SampleSeasons.North, sightings, events, new(2025, 7, 1), Last);

        for (int day = 0; day < part.Days; day++)
            Assert.Equal(whole.Adults[day + 61], part.Adults[day]);
    }

    [Fact]
    public void Of_QueenLostInWinter_BroodEndsAndTheBeesDieOut()
    {
        var course = SampleSeasons.Course(new(2024, 12, 1), new(2025, 12, 31), BeeEvent.Queen(new(2024, 12, 10), BeeEventKind.QueenLost));

        Assert.All(course.WorkerSealed.ToArray(), cells => Assert.Equal(0f, cells));
        for (int day = 1; day < course.Days; day++)
            Assert.True(course.Adults[day] < course.Adults[day - 1]);
        Assert.True(course.Adults[^1] < 100f);
    }

    [Fact]
    public void Of_QueenLostInMay_ANewOneLaysAfterTheDaysGiven()
    {
        var lost = new DateOnly(2025, 5, 20);
        var course = SampleSeasons.Course(First, Last, BeeEvent.Queen(lost, BeeEventKind.QueenLost));
        int day = course.IndexOf(lost);

        // Eggs of the day before are sealed nine days after it; the new queen's after 27 and nine.
        Assert.True(course.WorkerSealed[day + 8] > 100f);
        for (int gap = day + 9; gap < day + 27 + 9; gap++)
            Assert.Equal(0f, course.WorkerSealed[gap]);
        Assert.True(course.WorkerSealed[day + 27 + 9] > 0f);
        Assert.True(course.WorkerSealed[day + 27 + 9 + 7] > 500f);
        Assert.True(course.BroodLogSpread[day + 40] > course.BroodLogSpread[day]);
    }

    [Fact]
    public void Of_QueenLostBeforeDronesFly_NoneFollows()
    {
        var course = SampleSeasons.Course(First, Last, BeeEvent.Queen(new(2025, 3, 1), BeeEventKind.QueenLost));

        Assert.Equal(0f, course.WorkerSealed[^120..].ToArray().Max());
    }

    [Fact]
    public void Of_QueenLostThenFoundLaying_TheBookRules()
    {
        var course = SampleSeasons.Course(First, Last, BeeEvent.Queen(new(2025, 3, 1), BeeEventKind.QueenLost), BeeEvent.Queen(new(2025, 4, 20), BeeEventKind.NewQueenLaying));

        Assert.Equal(0f, course.WorkerSealed[course.IndexOf(new(2025, 4, 28))]);
        Assert.True(course.WorkerSealed[course.IndexOf(new(2025, 4, 29))] > 0f);
    }

    [Theory]
    [InlineData(true, 20 + 1 + 9)]
    [InlineData(false, 24 + 1 + 9)]
    public void Of_QueenCaged_NothingIsSealedUntilNineDaysAfterHerRelease(bool released, int firstSealed)
    {
        var caged = new DateOnly(2025, 7, 1);
        BeeEvent[] events = [BeeEvent.Queen(caged, BeeEventKind.QueenCaged), BeeEvent.Queen(caged.AddDays(20), BeeEventKind.QueenReleased)];
        var course = SampleSeasons.Course(First, Last, released ? events : events[..1]);
        int day = course.IndexOf(caged);

        Assert.All(course.WorkerSealed[(day + 9)..(day + firstSealed)].ToArray(), cells => Assert.Equal(0f, cells));
        Assert.True(course.WorkerSealed[day + 8] > 0f);
        Assert.True(course.WorkerSealed[day + firstSealed] > 0f);
    }

    [Fact]
    public void Of_Swarm_TakesTheShareAndLeavesTheBrood()
    {
        var swarmed = new DateOnly(2025, 5, 25);
        var usual = SampleSeasons.Course(First, Last);
        var course = SampleSeasons.Course(First, Last, BeeEvent.Swarmed(swarmed, 0.5));
        int day = course.IndexOf(swarmed);

        Assert.InRange(course.Adults[day] / usual.Adults[day], 0.5f, 0.55f);
        Assert.Equal(usual.WorkerSealed[day + 5], course.WorkerSealed[day + 5]);
        Assert.Equal(0f, course.WorkerSealed[day + 20]);
    }

    [Fact]
    public void Of_SwarmOfUnknownSize_TakesTheUsualShare()
    {
        var swarmed = new DateOnly(2025, 5, 25);

        Assert.Equal(
            SampleSeasons.Course(First, Last, BeeEvent.Swarmed(swarmed, 0.6)).Adults.ToArray(),
            SampleSeasons.Course(First, Last, BeeEvent.Swarmed(swarmed)).Adults.ToArray());
    }

    [Fact]
    public void Of_Package_HasNoBroodForItsFirstDaysAndShrinksUntilItEmerges()
    {
        var hived = new DateOnly(2025, 4, 20);
        var course = SampleSeasons.Course(First, Last, BeeEvent.Hived(hived, 10_000, SampleSeasons.Queens));
        int day = course.IndexOf(hived);

        Assert.Equal(0f, course.Adults[day - 1]);
        Assert.InRange(course.Adults[day], 9_000f, 10_000f);
        Assert.All(course.WorkerSealed[..(day + 14)].ToArray(), cells => Assert.Equal(0f, cells));
        Assert.True(course.WorkerSealed[day + 14] > 0f);
        for (int early = day + 1; early < day + 26; early++)
            Assert.True(course.Adults[early] < course.Adults[early - 1]);
        Assert.True(course.Adults[day + 100] > 15_000f);
    }

    [Fact]
    public void Of_Nucleus_SealsCellsFromTheFirstDay()
    {
        var began = new DateOnly(2025, 5, 10);
        var course = SampleSeasons.Course(began, Last, BeeEvent.Began(began, 11_000, 11_000));

        Assert.All(course.WorkerSealed[..60].ToArray(), cells => Assert.True(cells > 200f));
    }

    [Fact]
    public void Of_DroneBroodTaken_LeavesBeesAndWorkersAlone()
    {
        var taken = new DateOnly(2025, 5, 20);
        var usual = SampleSeasons.Course(First, Last);
        var course = SampleSeasons.Course(First, Last, BeeEvent.DroneBroodTaken(taken, 0.75));
        int day = course.IndexOf(taken);

        Assert.Equal(usual.Adults.ToArray(), course.Adults.ToArray());
        Assert.Equal(usual.WorkerSealed.ToArray(), course.WorkerSealed.ToArray());
        for (int after = day; after < day + 10; after++)
            Assert.Equal(0.25f * usual.DroneSealed[after], course.DroneSealed[after], 0.01f);
        Assert.Equal(usual.DroneSealed[day + 10], course.DroneSealed[day + 10]);
    }

    [Fact]
    public void Of_SeenAtHalfTheUsualSize_LiesBetweenAndReturnsWithTime()
    {
        var on = new DateOnly(2025, 4, 20);
        var usual = SampleSeasons.Course(First, Last);
        int day = usual.IndexOf(on);
        var course = SampleSeasons.Seen(First, Last, new BeeSighting(on, usual.Adults[day] / 2, 0.25, null, 0.35));

        Assert.InRange(course.Adults[day] / usual.Adults[day], 0.5f, 0.7f);
        Assert.InRange(course.Adults[day + 150] / usual.Adults[day + 150], 0.9f, 1f);
        Assert.True(course.WorkerSealed[day + 20] < usual.WorkerSealed[day + 20]);
        Assert.Equal(course.AdultLogSpread.ToArray().Min(), course.AdultLogSpread[day]);
        for (int after = day + 1; after < course.Days; after++)
            Assert.True(course.AdultLogSpread[after] >= course.AdultLogSpread[after - 1]);
    }

    /// <summary>One sighting, one deviation: its mean is V / (V + R) of what was seen, and what is left of the variance V R / (V + R).</summary>
    [Fact]
    public void Of_OneSighting_WeighsItAgainstTheSpreadBetweenColonies()
    {
        var on = new DateOnly(2025, 1, 10);
        var usual = SampleSeasons.Course(on, on);
        var course = SampleSeasons.Seen(on, on, new BeeSighting(on, usual.Adults[0] * 1.5, 0.3, null, 0.3));

        Assert.Equal(Math.Log(1.5) * 0.16 / (0.16 + 0.09), Math.Log(course.Adults[0] / usual.Adults[0]), 3);
        Assert.Equal(Math.Sqrt(0.16 * 0.09 / 0.25), course.AdultLogSpread[0], 5);
    }

    [Fact]
    public void Of_MoreFramesSeen_NeverMeansFewerBees() =>
        Gen.Select(Gen.Int[0, 364].Select(days => First.AddDays(days)), Gen.Double[0, 60_000], Gen.Double[0, 60_000]).Sample((on, one, other) =>
        {
            var few = SampleSeasons.Seen(First, Last, new BeeSighting(on, Math.Min(one, other), 0.25, null, 0.35));
            var many = SampleSeasons.Seen(First, Last, new BeeSighting(on, Math.Max(one, other), 0.25, null, 0.35));
            for (int day = 0; day < few.Days; day++)
                Assert.True(few.Adults[day] <= many.Adults[day] * 1.001f);
        });

    [Fact]
    public void Of_BroodSeenOutOfSeason_IsReckonedForAWhile()
    {
        var on = new DateOnly(2025, 12, 20);
        var course = SampleSeasons.Seen(new(2025, 10, 1), new(2026, 3, 31), new BeeSighting(on, null, 0.25, 3000, 0.35));
        int day = course.IndexOf(on);

        Assert.InRange(course.WorkerSealed[(day - 12)..day].ToArray().Sum(), 800f, 2500f);
        Assert.True(SampleSeasons.Course(on, on).WorkerSealed[0] == 0f);
    }

    [Fact]
    public void Of_NoBroodSeenInSummer_LeavesHardlyAny()
    {
        var on = new DateOnly(2025, 6, 15);
        var usual = SampleSeasons.Course(First, Last);
        var course = SampleSeasons.Seen(First, Last, new BeeSighting(on, null, 0.25, 0, 0.35));
        int day = course.IndexOf(on);

        Assert.True(course.WorkerSealed[day] < 0.2f * usual.WorkerSealed[day]);
    }

    [Fact]
    public void Taken_SplitAndSwarmAndDroneComb_AreSharesOfWhatThereWas()
    {
        var yearBefore = BeeEvent.Swarmed(new(2024, 6, 1), 0.5);
        var unsplit = SampleSeasons.Course(First, Last, yearBefore);
        var split = new DateOnly(2025, 5, 10);
        double before = unsplit.Adults[unsplit.IndexOf(split) - 1];
        var course = SampleSeasons.Course(
            First, Last, BeeEvent.Gave(split, before / 4, 0), BeeEvent.Swarmed(new(2025, 6, 1), 0.5), BeeEvent.DroneBroodTaken(new(2025, 6, 5), 0.8), yearBefore);

        Assert.Equal([129, 151, 155], course.Taken.Select(taken => taken.Day));
        Assert.Equal(0.25, course.Taken[0].Adults, 6);
        Assert.Equal(new BeesTaken(151, 0.5, 0, 0), course.Taken[1]);
        Assert.Equal(0.8, course.Taken[2].DroneBrood, 9);
        Assert.Equal(0, course.Taken[2].Adults);
    }

    [Fact]
    public void Of_RecordAfterItsLastDay_IsPassedOver()
    {
        var to = new DateOnly(2025, 6, 30);
        var course = BeeCourses.Of(SampleSeasons.North, [new(to.AddDays(1), 500, 0.25, 0, 0.35)], [BeeEvent.Swarmed(to.AddDays(1), 1)], First, to);

        Assert.Equal(SampleSeasons.Course(First, to).Adults.ToArray(), course.Adults.ToArray());
    }

    [Fact]
    public void Of_LeapYearAndEndsOfTheCalendar_AreDaysLikeAnyOther()
    {
        Assert.Equal(366, SampleSeasons.Course(new(2024, 1, 1), new(2024, 12, 31)).Days);
        Assert.Equal(30, SampleSeasons.Course(DateOnly.MinValue, DateOnly.MinValue.AddDays(29)).Days);
        Assert.Equal(30, SampleSeasons.Course(DateOnly.MaxValue.AddDays(-29), DateOnly.MaxValue).Days);
    }

    [Fact]
    public void Of_EmptyOrEndlessCourse_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SampleSeasons.Course(First, First.AddDays(-1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => SampleSeasons.Course(First, First.AddDays(BeeCourses.MostDays)));
    }
}
