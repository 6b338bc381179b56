using Foundress.Science.Dynamics;
using Foundress.Science.Forecasting;
using Foundress.Science.Tests.Dynamics;

namespace Foundress.Science.Tests.Forecasting;

public class ColonyOutlookTests
{
    private readonly ColonyFilter _filter = new(1000);
    private readonly ColonyHistory _history = PlainForecast.History(PlainForecast.Jar(30, 6));

    public ColonyOutlookTests() => _filter.Run(_history, ColonyBelief.Before(_history, PlainForecast.Priors), PlainForecast.Priors, 40, 1, keepCourse: true);

    [Fact]
    public void Fan_EveryDay_IsInOrderAndEndsOnTheLastDay()
    {
        ColonyOutlook outlook = _filter.Project(_history.Days, 200, 0.9, 1);
        IReadOnlyList<FanDay> fan = outlook.Fan(7);

        Assert.All(fan, day => Assert.True(day.Low < day.LowerQuarter && day.LowerQuarter < day.Middle && day.Middle < day.UpperQuarter && day.UpperQuarter < day.High));
        Assert.Equal(outlook.FirstDay, fan[0].On);
        Assert.Equal(outlook.FirstDay.AddDays(outlook.Days - 1), fan[^1].On);
    }

    [Fact]
    public void Fan_Middle_IsTheMedianOfTheCourses()
    {
        ColonyOutlook outlook = _filter.Project(_history.Days, 100, 0.9, 1);
        float[] loads = outlook.Loads(30).ToArray();
        Array.Sort(loads);
        // A bin of the quantiles is 0.8 % wide.
        Assert.Equal(1d, outlook.Fan()[30].Middle.PerBee / (0.9 * loads[500]), 0.01);
    }

    [Fact]
    public void Crossing_ALine_RisesAndLeavesTheRestToNever()
    {
        ColonyOutlook outlook = _filter.Project(_history.Days, 200, 1d, 1);
        CrossingDates dates = outlook.Crossing(MiteLevel.Per100(3));
        double before = 0d;
        for (DateOnly day = dates.FirstDay; day <= dates.LastDay; day = day.AddDays(1))
        {
            Assert.True(dates.By(day).Value >= before);
            before = dates.By(day).Value;
        }

        Assert.Equal(1d, before + dates.Never.Value, 12);
        Assert.InRange(dates.By(dates.LastDay).Value, 0.5, 1d);
        Assert.True(dates.Day(Chance.Of(0.5)) > dates.FirstDay);
        Assert.True(outlook.Over(MiteLevel.Per100(3), outlook.Days - 1) <= dates.By(dates.LastDay));
    }

    [Fact]
    public void Project_FurtherControl_ChangesNothingBeforeItAndLowersAllAfter()
    {
        ColonyDays treated = PlainColony.Days(_history.Days.Bees, null, new ControlEffect(60, 30, 0.2, 0d, 0.3, 0.1, 0.3));
        ColonyOutlook free = _filter.Project(_history.Days, 120, 1d, 1);
        ColonyOutlook controlled = _filter.Project(treated, 120, 1d, 1);

        Assert.Equal(free.Loads(20).ToArray(), controlled.Loads(20).ToArray());
        Assert.True(controlled.Mean(60).Per100Bees < 0.5 * free.Mean(60).Per100Bees);
        float[] without = free.Loads(60).ToArray();
        float[] with = controlled.Loads(60).ToArray();
        Assert.True(without.Zip(with).Count(pair => pair.Second < pair.First) > 950);
    }

    [Fact]
    public void Course_AfterARun_HoldsThePastAndPassesNearTheJar()
    {
        ColonyOutlook past = _filter.Course(1d);
        Assert.Equal(40, past.Days);
        Assert.InRange(past.Fan()[30].Middle.Per100Bees, 0.8, 3d);
    }

    [Fact]
    public void Find_LineOutOfReach_HasNoDay() =>
        Assert.Null(NextJar.Find(_filter.Project(_history.Days, 120, 1d, 1), MiteLevel.Per100(5000), Chance.Of(0.5), BeeCount.Counted(300), PlainForecast.Priors));

    [Fact]
    public void Find_LineAhead_SampleBeforeItIsCertain()
    {
        ColonyOutlook outlook = _filter.Project(_history.Days, 200, 1d, 1);
        NextJar next = NextJar.Find(outlook, MiteLevel.Per100(3), Chance.Of(0.5), BeeCount.Counted(300), PlainForecast.Priors)!.Value;
        Assert.InRange(outlook.Over(MiteLevel.Per100(3), next.Day + 14).Value, 0.1, 0.9);
        Assert.InRange(next.ChanceOfChange.Value, 0.05, 0.6);
        Assert.True(next.Gain > 0d);
        NextJar later = NextJar.Find(outlook, MiteLevel.Per100(3), Chance.Of(0.5), BeeCount.Counted(300), PlainForecast.Priors, canTake: day => day > next.On)!.Value;
        Assert.True(later.On > next.On);
        Assert.Null(NextJar.Find(outlook, MiteLevel.Per100(3), Chance.Of(0.5), BeeCount.Counted(300), PlainForecast.Priors, canTake: _ => false));
    }
}
