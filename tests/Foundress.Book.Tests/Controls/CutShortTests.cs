using System.Globalization;
using Foundress.Book.Dues;
using Foundress.Book.Forecasts;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Book.Seasons;

namespace Foundress.Book.Tests.Controls;

/// <summary>A control that was taken out at once answers nothing: neither the list of what is due nor a forecast may take it for one.</summary>
public sealed class CutShortTests
{
    private static readonly DateOnly Today = TestBook.Today;
    private readonly ControlScene _scene = new();

    [Theory]
    [InlineData(ControlEnding.StoppedEarly, 0, true)]
    [InlineData(ControlEnding.StoppedEarly, 19, true)]
    [InlineData(ControlEnding.StoppedEarly, 21, false)]
    [InlineData(ControlEnding.AsPlanned, 2, true)]
    [InlineData(ControlEnding.AsPlanned, 42, false)]
    [InlineData(ControlEnding.Partial, 42, true)]
    public void On_ControlAfterAJarOverTheLine_SilencesItOnlyWhenItRanForHalfItsTime(ControlEnding ending, int days, bool isDue)
    {
        var start = Today.AddDays(-days - 1);
        _scene.Book.Jar(_scene.Colonies[0], start, 40);
        var use = _scene.Use("amitraz-strips", start, 42, _scene.Colonies[0]);
        Assert.DoesNotContain(Items(), item => item.Kind == DueKind.Decide);

        _scene.Book.Write(new ControlEnded(use.Control, start.AddDays(days), ending, Reason: "they fell out"));
        Assert.Equal(isDue && days < SeasonStale, Items().Any(item => item.Kind == DueKind.Decide));
        if (!isDue || days >= SeasonStale)
            return;
        Assert.Contains("cut short", Items().First(item => item.Kind == DueKind.Decide).Text, StringComparison.Ordinal);
        Assert.Equal(Urgency.OverTheLine, Season().Urgency);
        Assert.Contains("not taken for an answer", Season().Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void On_ControlAtWork_ApiaryWaitsForTheJarsAfterItAndStandsBeforeTheRest()
    {
        var calm = _scene.Book.Apiary("Another");
        _scene.Book.Jar(_scene.Book.Colony(calm, "9", new DateOnly(2025, 4, 1)), Today.AddDays(-3), 0);
        _scene.Book.Jar(_scene.Colonies[0], Today.AddDays(-3), 40);
        _scene.Use("formic-acid-long", Today.AddDays(-2), 14, _scene.Colonies[0]);

        Assert.Equal(Urgency.Answered, Season().Urgency);
        var state = _scene.Book.State;
        var order = new SeasonOverview(state, TestBook.Knowledge, Strips()).On(Today);
        Assert.Equal(["Orchard", "Another"], order.Select(season => season.Apiary.Name));
    }

    // Strips out after a day kill less than strips left for six weeks, and strips that fell out are less sure.
    [Fact]
    public void Forecast_StripsTakenOutTheSameDay_KillLessThanAllOfThem()
    {
        var whole = Middle(null);
        var stopped = Middle(new(default, Today.AddDays(-40), ControlEnding.StoppedEarly, Reason: "robbing"));
        var partly = Middle(new(default, Today.AddDays(-2), ControlEnding.Partial, Reason: "fell out"));
        Assert.True(stopped > 2 * whole, $"{stopped} and {whole}");
        Assert.True(partly > whole, $"{partly} and {whole}");
    }

    [Fact]
    public void Check_AsPlannedLongBeforeThePlannedEnd_IsAnErrorThatSaysWhatToDo()
    {
        var use = _scene.Use("amitraz-strips", Today, 42);
        var problem = Assert.Single(Check(new ControlEnded(use.Control, Today)), one => one.Gravity == Gravity.Error);
        Assert.Equal("ending", problem.Field);
        Assert.Contains("42 days before the planned end", problem.Message, StringComparison.Ordinal);
        Assert.Equal(Gravity.Doubt, Assert.Single(Check(new ControlEnded(use.Control, Today.AddDays(41)), Today.AddDays(41))).Gravity);
        Assert.Empty(Check(new ControlEnded(use.Control, Today, ControlEnding.StoppedEarly, Reason: "robbing")));
    }

    [Fact]
    public void Check_AsPlannedWithoutAPlanAndBeforeTheUsualDays_IsDoubted()
    {
        var open = new ControlRecord(_scene.NewControl(), "amitraz-strips", Today.AddDays(-5), _scene.Colonies);
        _scene.Book.Write(open);
        var problem = Assert.Single(Check(new ControlEnded(open.Control, Today)));
        Assert.Equal(Gravity.Doubt, problem.Gravity);
        Assert.Contains("5 days after its start", problem.Message, StringComparison.Ordinal);
    }

    // Older than six weeks a jar says nothing of today any more, whatever was done.
    private const int SeasonStale = 42;

    private double Middle(ControlEnded? end)
    {
        var scene = new ControlScene();
        scene.Book.Jar(scene.Colonies[0], Today.AddDays(-42), 20);
        var use = scene.Use("amitraz-strips", Today.AddDays(-40), 42, scene.Colonies[0]);
        if (end is not null)
            scene.Book.Write(end with { Control = use.Control });
        return new ApiaryForecaster(scene.Book.State, TestBook.Knowledge, CultureInfo.InvariantCulture)
            .Of(scene.Book.State.Apiaries[scene.Apiary], Today, new ForecastOptions { Particles = 400, Ahead = 30 })
            .Colonies.Single(one => one.Colony == scene.Colonies[0]).Fan.First(point => point.On >= Today).Middle;
    }

    private IReadOnlyList<Problem> Check(ControlEnded ended, DateOnly? today = null) => RecordRules.Check(ended, _scene.Book.State, TestBook.Knowledge, today ?? Today);

    private SeasonStrips Strips() => new(_scene.Book.State, TestBook.Knowledge, CultureInfo.InvariantCulture);

    private ApiarySeason Season() => new SeasonOverview(_scene.Book.State, TestBook.Knowledge, Strips()).Of(_scene.Book.State.Apiaries[_scene.Apiary], Today);

    private IReadOnlyList<DueItem> Items() => new DueItems(_scene.Book.State, TestBook.Knowledge, Strips()).On(Today);
}
