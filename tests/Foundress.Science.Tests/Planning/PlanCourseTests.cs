using Foundress.Science.Dynamics;
using Foundress.Science.Forecasting;
using Foundress.Science.Planning;
using Foundress.Science.Tests.Forecasting;

namespace Foundress.Science.Tests.Planning;

public class PlanCourseTests
{
    private const int Until = 60;
    private const double LineLoad = 0.03;
    private static readonly ForecastPriors Priors = PlainForecast.Priors with { DriftPerMonth = 0.4, DriftAfterControl = 0.5 };
    private static readonly ControlEffect Strips = new(80, 40, 0.1, 0, 0.4, 0.1, 0.3);
    private static readonly ControlEffect Knock = new(101, 5, 0.4, 0, 0.4);

    /// <summary>With all particles the course is that of the forecast, whose own checks against publications thereby hold for plans.</summary>
    [Fact]
    public void Read_AllParticles_LevelsAreThoseOfTheForecast()
    {
        var (filter, history, colony) = Scene(600, 600);
        ColonyDays future = history.Days.With([Strips]);
        ColonyOutlook outlook = filter.Project(future, 190, 1d, 7);
        PlanCourse course = Course(colony);
        Dictionary<int, float[]> loads = [];
        course.Read(future, [7], new float[course.Days], (day, all) => loads[day] = all.ToArray());

        for (int day = 0; day < course.Days; day++)
        {
            double expected = Mean(outlook.Loads(day * 7));
            Assert.Equal(expected, Mean(loads[day]), 1e-4 * expected);
        }
    }

    /// <summary>What the model leaves out, taken in as a normal spread, against the same drawn at random: 600 courses, within five standard errors.</summary>
    [Fact]
    public void Read_Chances_AreThoseOfTheForecastWithoutItsGrain()
    {
        var (filter, history, colony) = Scene(600, 600);
        ColonyDays future = history.Days.With([Strips]);
        ColonyOutlook outlook = filter.Project(future, 190, 1d, 7);
        PlanCourse course = Course(colony);
        float[] chances = new float[course.Days];
        course.Read(future, [7], chances);

        Assert.Contains(chances, chance => chance is > 0.1f and < 0.9f);
        for (int day = 0; day < course.Days; day++)
        {
            double drawn = outlook.Over(MiteLevel.FromPerBee(LineLoad), day * 7).Value;
            Assert.Equal(drawn, chances[day], 0.01 + (5d * Math.Sqrt(drawn * (1d - drawn) / 600d)));
        }
    }

    [Fact]
    public void ReadFrom_StateKept_GivesWhatReadingTheWholePlanGives()
    {
        var (_, history, colony) = Scene(96, 48);
        PlanCourse course = Course(colony);
        ColonyDays first = history.Days.With([Strips]);
        float[] kept = new float[course.Days];
        // Days 20, 21 and 41 of the plan: one between two readings, one on a reading.
        course.KeepAt(first, [3], [20, 21, 41], kept);
        foreach (int start in (int[])[20, 21, 41])
        {
            ColonyDays both = history.Days.With([Strips, Knock with { FirstDay = Until + start }]);
            float[] whole = new float[course.Days];
            Course(colony).Read(both, [3, 4], whole);
            float[] parts = [.. kept];
            course.ReadFrom(start, both, [3, 4], parts);
            Assert.Equal(whole, parts);
        }
    }

    [Fact]
    public void Read_FurtherControl_NeverRaisesTheMeanCourse()
    {
        var (_, history, colony) = Scene(400, 400);
        PlanCourse course = Course(colony);
        Dictionary<int, double> without = [];
        Dictionary<int, double> with = [];
        course.Read(history.Days.With([Strips]), [3], new float[course.Days], (day, loads) => without[day] = Mean(loads.Span));
        course.Read(history.Days.With([Strips, Knock]), [3, 4], new float[course.Days], (day, loads) => with[day] = Mean(loads.Span));

        for (int day = 0; day < course.Days; day++)
            Assert.True(with[day] <= without[day] * 1.02, $"Day {day * 7}: {with[day]} with, {without[day]} without.");
        int over = (Knock.EndDay - Until + 6) / 7;
        Assert.True(with[over] < 0.85 * without[over], $"{with[over]} with, {without[over]} without.");
    }

    [Fact]
    public void Read_BeforeAControlBegins_NothingDiffers()
    {
        var (_, history, colony) = Scene(96, 96);
        PlanCourse course = Course(colony);
        float[] none = new float[course.Days];
        float[] late = new float[course.Days];
        course.Read(history.Days, [], none);
        course.Read(history.Days.With([Knock]), [9], late);

        int same = (Knock.FirstDay - Until) / 7;
        Assert.Equal(none[..(same + 1)], late[..(same + 1)]);
        Assert.NotEqual(none[same + 1], late[same + 1]);
    }

    [Fact]
    public void Fewer_ThanAll_StaysNearTheWhole()
    {
        var (_, history, colony) = Scene(2000, 2000);
        float[] all = new float[19];
        float[] few = new float[19];
        Course(colony).Read(history.Days.With([Strips]), [3], all);
        Course(colony.Fewer(64)).Read(history.Days.With([Strips]), [3], few);

        for (int day = 0; day < all.Length; day++)
            Assert.Equal(all[day], few[day], 0.15);
    }

    [Fact]
    public void PlanColony_TooManyParticles_AreRefused()
    {
        var (_, _, colony) = Scene(96, 48);
        Assert.Throws<ArgumentOutOfRangeException>(() => colony.Fewer(49));
        Assert.Throws<ArgumentOutOfRangeException>(() => Scene(96, 97));
        Assert.Equal(3, colony.MostFurther);
    }

    private static PlanCourse Course(PlanColony colony) => new(colony, [.. Enumerable.Repeat((double?)LineLoad, 19)], 7);

    private static (ColonyFilter Filter, ColonyHistory History, PlanColony Colony) Scene(int particles, int taken)
    {
        ColonyHistory history = PlainForecast.History(PlainForecast.Jar(30, 3), PlainForecast.Jar(55, 6));
        ColonyFilter filter = new(particles);
        filter.Run(history, ColonyBelief.Before(history, Priors), Priors, Until, 11);
        return (filter, history, new PlanColony(filter, history, Priors, taken, 3));
    }

    private static double Mean(ReadOnlySpan<float> loads)
    {
        double sum = 0d;
        foreach (float load in loads)
            sum += load;
        return sum / loads.Length;
    }
}
