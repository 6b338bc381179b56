using CsCheck;
using Foundress.Book.Forecasts;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Science.Dynamics.Bees;
using Record = Foundress.Book.Records.Record;

namespace Foundress.Book.Tests.Forecasts;

public sealed class ColonyBeesTests
{
    private static readonly DateOnly From = new(2026, 1, 1);
    private static readonly DateOnly To = new(2026, 12, 31);
    private readonly TestBook _book = new();
    private readonly ApiaryId _apiary;
    private readonly ColonyId _colony;

    public ColonyBeesTests()
    {
        _apiary = _book.Apiary("Orchard", 47);
        _colony = _book.Colony(_apiary, "1");
    }

    [Fact]
    public void Of_ColonyWithoutRecord_IsTheUsualOneOfTheSite()
    {
        var bees = Bees();

        Assert.Empty(bees.Sightings);
        Assert.Empty(bees.Events);
        Assert.Equal("temperate", TestBook.Knowledge.Bees.Seasons.Single(season => season.Climate == bees.Season.Climate).Id);
        Assert.Equal(bees.Season.AdultsOn(From), bees.Course.Adults[0], 1.0);
    }

    [Fact]
    public void Of_KeepersOwnCaging_StopsTheBroodAsTheKnownOneDoes()
    {
        _book.Write(new AgentRecord("frame-trap", "Frame trap", "queen-caging"));
        var start = new DateOnly(2026, 6, 10);
        _book.Write(new ControlRecord(new ControlId(_book.Ids.Next()), "frame-trap", start, [_colony], start.AddDays(25)));

        Assert.Contains(Bees().Events, one => one.Kind == BeeEventKind.QueenCaged && one.On == start);
    }

    [Fact]
    public void Of_ApiaryInTheSouth_IsHalfAYearApart()
    {
        var south = _book.Colony(_book.Apiary("Down under", -47), "1");
        var there = ColonyBees.Of(_book.State, TestBook.Knowledge, south, From, To).Course;

        Assert.True(there.WorkerSealed[there.IndexOf(new(2026, 7, 1))] == 0);
        Assert.True(there.WorkerSealed[there.IndexOf(new(2026, 12, 15))] > 500);
    }

    [Fact]
    public void Of_InspectionWithFrames_IsBeesAndCellsByTheFrame()
    {
        var frames = TestBook.Knowledge.Bees.Frames;
        _book.Write(new InspectionRecord(_colony, new(2026, 5, 1), FramesOfBees: 6, FramesOfBrood: 4.5));
        _book.Write(new InspectionRecord(_colony, new(2026, 6, 1), QueenSeen: true));

        var seen = Assert.Single(Bees().Sightings);
        Assert.Equal(6 * frames.BeesPerFrame.Value, seen.Adults);
        Assert.Equal(4.5 * frames.BroodCellsPerFrame.Value, seen.Brood);
        Assert.Equal(frames.BroodLogSpread.Value, seen.BroodLogSpread);
    }

    [Fact]
    public void Of_FramesCountedOnTheDayOfASplit_WereCountedBeforeIt()
    {
        var day = new DateOnly(2026, 5, 10);
        _book.Write(new InspectionRecord(_colony, day, FramesOfBees: 12));
        _book.Write(new ColonySplit(_colony, new ColonyId(_book.Ids.Next()), "1b", day, 6, 3));

        Assert.Equal(day.AddDays(-1), Assert.Single(Bees().Sightings).On);
    }

    [Fact]
    public void Of_Split_TakesFromOneAndBeginsTheOther()
    {
        var day = new DateOnly(2026, 5, 10);
        var child = new ColonyId(_book.Ids.Next());
        _book.Write(new ColonySplit(_colony, child, "1b", day, 3, 2));
        var mother = Bees();
        var daughter = Bees(child);
        int on = mother.Course.IndexOf(day);
        double moved = 3 * TestBook.Knowledge.Bees.Frames.BeesPerFrame.Value;

        Assert.Equal(moved / mother.Course.Adults[on - 1], Assert.Single(mother.Course.Taken).Adults, 2);
        Assert.Equal(0f, daughter.Course.Adults[on - 1]);
        Assert.InRange(daughter.Course.Adults[on], 0.9 * moved, 1.2 * moved);

        // It raises its own queen: nothing is sealed from nine days on until her first eggs are nine days old.
        Assert.True(daughter.Course.WorkerSealed[on + 3] > 0);
        Assert.Equal(0f, daughter.Course.WorkerSealed[on + 20]);
        Assert.True(daughter.Course.WorkerSealed[on + 40] > 0);
        Assert.True(mother.Course.WorkerSealed[on + 20] > 0);
    }

    [Fact]
    public void Of_SplitWithoutFrames_TakesTheUsualShare()
    {
        _book.Write(new ColonySplit(_colony, new ColonyId(_book.Ids.Next()), "1b", new(2026, 5, 10)));

        Assert.Equal(TestBook.Knowledge.Bees.Frames.SplitShareOfBees.Value, Assert.Single(Bees().Course.Taken).Adults, 9);
    }

    [Fact]
    public void Of_Package_HasNoSealedBroodForTwoWeeks()
    {
        var hived = new DateOnly(2026, 4, 20);
        _book.Write(new ColonyBegan(_colony, hived, ColonyBeginning.Package, KilogramsOfBees: 1.5));
        var course = Bees().Course;
        int day = course.IndexOf(hived);

        Assert.Equal(0f, course.Adults[day - 1]);
        Assert.InRange(course.Adults[day], 10_500f, 11_550f);
        Assert.Equal(0f, course.WorkerSealed[..(day + 14)].ToArray().Max());
        Assert.True(course.WorkerSealed[day + 20] > 0f);
    }

    [Theory]
    [InlineData(QueenEvent.Lost)]
    [InlineData(QueenEvent.Caged)]
    [InlineData(QueenEvent.Swarmed)]
    [InlineData(QueenEvent.Introduced)]
    public void Of_QueenThatStopsLaying_LeavesAGapInTheBrood(QueenEvent happened)
    {
        _book.Write(new QueenRecord(_colony, new(2026, 6, 1), happened));
        var course = Bees().Course;

        Assert.Equal(0f, course.WorkerSealed[course.IndexOf(new(2026, 6, 12))]);
        Assert.True(course.WorkerSealed[course.IndexOf(new(2026, 7, 25))] > 100f);
    }

    [Fact]
    public void Of_CagingAsAControl_IsACagingLikeAnyOther()
    {
        var start = new DateOnly(2026, 6, 20);
        _book.Write(new ControlRecord(new ControlId(_book.Ids.Next()), "queen-caging", start, [_colony], start.AddDays(25)));

        Assert.Equal([BeeEventKind.QueenCaged, BeeEventKind.QueenReleased], Bees().Events.Select(one => one.Kind));
        Assert.Equal(0f, Bees().Course.WorkerSealed[Bees().Course.IndexOf(start.AddDays(20))]);
    }

    [Fact]
    public void Of_DroneBroodRemoved_ShowsInWhatWasTaken()
    {
        _book.Write(new BroodRemoved(_colony, new(2026, 5, 20), RemovedBrood.Drone, 0.8));

        Assert.Equal(0.8, Assert.Single(Bees().Course.Taken).DroneBrood, 9);
    }

    [Fact]
    public void Of_ColonyThatTookAnother_HasItsBees()
    {
        var other = _book.Colony(_apiary, "2");
        var day = new DateOnly(2026, 9, 1);
        _book.Write(new InspectionRecord(other, day.AddDays(-2), FramesOfBees: 3, FramesOfBrood: 1));
        _book.Write(new ColoniesUnited(other, _colony, day));
        var joined = Assert.Single(Bees().Events);

        Assert.Equal(BeeEventKind.Joined, joined.Kind);
        Assert.InRange(joined.Bees!.Value, 5_000, 14_000);
        Assert.Empty(Bees(other).Events);
    }

    [Fact]
    public void Of_RecordAfterTheLastDay_IsPassedOver()
    {
        _book.Write(new QueenRecord(_colony, new(2026, 6, 1), QueenEvent.Lost));
        _book.Write(new InspectionRecord(_colony, new(2026, 6, 2), FramesOfBees: 3));
        var bees = ColonyBees.Of(_book.State, TestBook.Knowledge, _colony, From, new(2026, 5, 31));

        Assert.Empty(bees.Events);
        Assert.Empty(bees.Sightings);
    }

    [Fact]
    public void Of_AsOfADay_LaterRecordsDoNotCountButWhatFollowsFromEarlierDoes()
    {
        var start = new DateOnly(2026, 6, 1);
        _book.Write(new ControlRecord(new ControlId(_book.Ids.Next()), "queen-caging", start, [_colony], start.AddDays(25)));
        _book.Write(new QueenRecord(_colony, start.AddDays(40), QueenEvent.Lost));
        _book.Write(new InspectionRecord(_colony, start.AddDays(41), FramesOfBees: 3));
        var bees = ColonyBees.Of(_book.State, TestBook.Knowledge, _colony, From, To, start.AddDays(5));

        Assert.Equal([start, start.AddDays(25)], bees.Events.Select(one => one.On));
        Assert.Empty(bees.Sightings);
    }

    [Fact]
    public void Of_SplitWrittenAsControlAndAsSplit_CountsOnce()
    {
        var day = new DateOnly(2026, 5, 10);
        _book.Write(new ControlRecord(new ControlId(_book.Ids.Next()), "splitting", day, [_colony], day));
        Assert.Equal(BeeEventKind.Divided, Assert.Single(Bees().Events).Kind);

        _book.Write(new ColonySplit(_colony, new ColonyId(_book.Ids.Next()), "1b", day.AddDays(1), 3, 2));
        Assert.Equal(day.AddDays(1), Assert.Single(Bees().Events).On);
    }

    [Fact]
    public void Of_UnknownColony_IsRefused() =>
        Assert.Throws<ArgumentException>(() => ColonyBees.Of(_book.State, TestBook.Knowledge, new ColonyId(_book.Ids.Next()), From, To));

    [Fact]
    public void At_SameSiteTwice_IsTheSameYear()
    {
        var seasons = new BroodSeasons(TestBook.Knowledge);
        var apiary = _book.State.Apiaries[_apiary];

        Assert.Same(seasons.At(apiary), seasons.At(apiary with { Name = "Renamed" }));
        Assert.NotSame(seasons.At(apiary), seasons.At(apiary with { Latitude = -47 }));
    }

    /// <summary>Entries of other devices come unchecked: whatever numbers and days they hold, there is a course.</summary>
    [Fact]
    public void Of_AnyEntries_IsACourse()
    {
        var other = _book.Colony(_apiary, "2");
        var number = Gen.OneOf(Gen.Double[-5, 100], Gen.Double[-1e300, 1e300], Gen.Const(0d));
        var day = Gen.OneOf(Gen.Int[0, 3652058].Select(DateOnly.FromDayNumber), Gen.Int[-400, 400].Select(days => From.AddDays(days)));
        var any = Gen.Select(Gen.Int[0, 6], day, number, number, Gen.Int[0, 7], (kind, on, one, two, what) => (Record)(kind switch
        {
            0 => new QueenRecord(_colony, on, (QueenEvent)what, one),
            1 => new ColonyBegan(_colony, on, (ColonyBeginning)what, one, two, one),
            2 => new BroodRemoved(_colony, on, (RemovedBrood)what, one),
            3 => new ColonySplit(_colony, other, "x", on, one, two),
            4 => new ColonySplit(other, _colony, "x", on, one, what > 3 ? two : null),
            5 => new ColoniesUnited(what > 3 ? _colony : other, what % 2 == 0 ? _colony : other, on),
            _ => new InspectionRecord(_colony, on, one, two),
        }));
        any.Array[1, 5].Sample(
            records =>
            {
                var book = new TestBook("device-b", 9);
                foreach (var entry in _book.Ledger.Entries)
                    book.Ledger.Add([entry]);
                foreach (var record in records)
                    book.Write(record);
                Assert.Equal(365, ColonyBees.Of(book.State, TestBook.Knowledge, _colony, From, To).Course.Days);
            },
            iter: 200, threads: 1);
    }

    private ColonyBees Bees(ColonyId? colony = null) => ColonyBees.Of(_book.State, TestBook.Knowledge, colony ?? _colony, From, To);
}
