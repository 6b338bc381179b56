using Foundress.Book.Records;
using Foundress.Book.State;

namespace Foundress.Book.Tests.Controls;

public sealed class ControlStateTests
{
    private static readonly DateOnly Day = new(2026, 7, 1);
    private readonly ControlScene _scene = new();

    private BookState State => _scene.Book.State;

    [Fact]
    public void CoursesOf_UseWithoutAnEnd_IsOpenInEveryColony()
    {
        var use = _scene.Use("amitraz-strips", Day, 56);

        Assert.All(_scene.Colonies, colony =>
        {
            var course = Assert.Single(State.CoursesOf(colony));
            Assert.Equal((use.Control, Day, null, CourseEnding.Open), (course.Control.Id, course.Start, course.End, course.Ending));
            Assert.Equal(Day.AddDays(56), course.PlannedEnd);
            Assert.True(course.RanOn(Day.AddDays(70)));
            Assert.False(course.RanOn(Day.AddDays(-1)));
        });
        Assert.Equal(use.Control, Assert.Single(State.ControlsIn(_scene.Apiary)).Id);
    }

    [Fact]
    public void CoursesOf_EndInOneColony_LeavesTheOthersOpen()
    {
        var use = _scene.Use("thymol", Day, 28);
        _scene.Book.Write(new ControlEnded(use.Control, Day.AddDays(10), ControlEnding.StoppedEarly, [_scene.Colonies[1]], "bees hung out"));

        Assert.Equal([CourseEnding.Open, CourseEnding.StoppedEarly, CourseEnding.Open], _scene.Colonies.Select(c => State.CoursesOf(c)[0].Ending));
        Assert.Equal(Day.AddDays(10), State.CoursesOf(_scene.Colonies[1])[0].End);
        Assert.Contains(State.EntriesOf(_scene.Colonies[1]), e => e.Kind == RecordKinds.ControlEnded);
        Assert.DoesNotContain(State.EntriesOf(_scene.Colonies[0]), e => e.Kind == RecordKinds.ControlEnded);
    }

    [Fact]
    public void CoursesOf_DoneInADay_IsOverThatDay()
    {
        _scene.Use("oxalic-acid-trickle", Day, 0);

        var course = State.CoursesOf(_scene.Colonies[0])[0];
        Assert.Equal((Day, CourseEnding.AsPlanned), (course.End, course.Ending));
    }

    [Fact]
    public void CoursesOf_ColonyThatDied_EndsWithIt()
    {
        _scene.Use("amitraz-strips", Day, 56);
        _scene.Book.Write(new ColonyDied(_scene.Colonies[0], Day.AddDays(20)));

        var course = State.CoursesOf(_scene.Colonies[0])[0];
        Assert.Equal((Day.AddDays(20), CourseEnding.ColonyEnded), (course.End, course.Ending));
        Assert.Equal(CourseEnding.Open, State.CoursesOf(_scene.Colonies[1])[0].Ending);
    }

    [Fact]
    public void CoursesOf_StruckEnd_IsOpenAgainAndStaysInTheHistory()
    {
        var use = _scene.Use("amitraz-strips", Day, 56);
        var end = _scene.Book.Write(new ControlEnded(use.Control, Day.AddDays(50)));
        _scene.Book.Strike(end, "another apiary");

        Assert.Equal(CourseEnding.Open, State.CoursesOf(_scene.Colonies[0])[0].Ending);
        Assert.Contains(end, State.EntriesOf(_scene.Colonies[0]));
        Assert.True(State.Struck.ContainsKey(end.Id));
    }

    [Fact]
    public void Controls_WrittenAgain_TheLaterHoldsAndBothStayInTheHistory()
    {
        var use = _scene.Use("thymol", Day, 28);
        _scene.Book.Write(use with { Batch = "A7", Colonies = [_scene.Colonies[0]] });

        Assert.Equal("A7", State.Controls[use.Control].Facts.Batch);
        Assert.Empty(State.CoursesOf(_scene.Colonies[2]));
        Assert.Equal(2, State.EntriesOf(_scene.Colonies[0]).Count(e => e.Kind == RecordKinds.Control));
    }

    [Fact]
    public void ControlsIn_ColonyMovedAfterwards_StaysWithTheApiaryOfTheStart()
    {
        _scene.Use("thymol", Day, 28, _scene.Colonies[0]);
        var heath = _scene.Book.Apiary("Heath");
        _scene.Book.Write(new ColonyMoved(_scene.Colonies[0], heath, Day.AddDays(5)));

        Assert.Single(State.ControlsIn(_scene.Apiary));
        Assert.Empty(State.ControlsIn(heath));
    }

    /// <summary>What Regulation (EU) 2019/6, Article 108, asks for comes back as it was written.</summary>
    [Fact]
    public void RecordJson_ControlWithEveryField_ComesBackAsItWas()
    {
        var jar = _scene.Book.Jar(_scene.Colonies[0], Day.AddDays(-3), 14);
        var record = new ControlRecord(
            _scene.NewControl(), "formic-acid-short", Day, [_scene.Colonies[0]], Day.AddDays(7), "as the label calls it", "2 strips a colony", "B-12", "The bee shop, Mill Lane 1", "invoice 17", "A. Keeper",
            "District vet", 0, [jar.Id], "over the line", 14.5, 26, "dry", "entrance open");

        var read = Assert.IsType<ControlRecord>(RecordJson.TryRead(RecordKinds.Control, RecordJson.Write(record), out var problem));

        Assert.Null(problem);
        Assert.Equal(RecordJson.Write(record), RecordJson.Write(read));
        Assert.Equal((record.Batch, record.Supplier, record.WithdrawalDays, jar.Id), (read.Batch, read.Supplier, read.WithdrawalDays, Assert.Single(read.ReasonJars!)));
    }
}
