namespace Foundress.Science.Forecasting;

/// <summary>The course of a colony's level, as many possible courses day by day.</summary>
/// <remarks>Levels are on the scale of a method: mites per 100 bees as its jars would show them on average. Safe for concurrent use: immutable.</remarks>
public sealed class ColonyOutlook
{
    private static readonly double[] FanChances = [0.05, 0.25, 0.5, 0.75, 0.95];

    private readonly float[] _loads;
    private readonly int _particles;
    private readonly int _stride;

    internal ColonyOutlook(DateOnly firstDay, int days, int particles, int stride, float[] loads, double recovery)
    {
        if (recovery is not (> 0d and <= 1d))
            throw new ArgumentOutOfRangeException(nameof(recovery), recovery, "The share a method brings off lies above 0 and at most at 1.");
        (FirstDay, Days, _particles, _stride, _loads, Recovery) = (firstDay, days, particles, stride, loads, recovery);
    }

    /// <summary>The first day.</summary>
    public DateOnly FirstDay { get; }

    /// <summary>The number of days.</summary>
    public int Days { get; }

    /// <summary>Share of the mites that the method of the scale brings off.</summary>
    public double Recovery { get; }

    /// <summary>Mites per adult bee of every possible course on a day, counted from the first.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The day lies outside.</exception>
    public ReadOnlySpan<float> Loads(int day) =>
        day >= 0 && day < Days
            ? _loads.AsSpan(day * _stride, _particles)
            : throw new ArgumentOutOfRangeException(nameof(day), day, $"The outlook has {Days} days.");

    /// <summary>The fan of levels.</summary>
    /// <param name="step">Days from one to the next, 1 or more; the last day is always there.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="step"/> is below 1.</exception>
    public IReadOnlyList<FanDay> Fan(int step = 1)
    {
        if (step < 1)
            throw new ArgumentOutOfRangeException(nameof(step), step, "A fan goes on by at least one day.");
        List<FanDay> fan = new((Days / step) + 2);
        LoadQuantiles quantiles = new();
        Span<float> found = stackalloc float[5];
        for (int day = 0; day < Days; day = day == Days - 1 ? Days : Math.Min(day + step, Days - 1))
        {
            quantiles.Fill(Loads(day), FanChances, found);
            fan.Add(new(FirstDay.AddDays(day), Level(found[0]), Level(found[1]), Level(found[2]), Level(found[3]), Level(found[4])));
        }

        return fan;
    }

    /// <summary>The mean level on a day, counted from the first.</summary>
    public MiteLevel Mean(int day)
    {
        double sum = 0d;
        foreach (float load in Loads(day))
            sum += load;
        return Level(sum / _particles);
    }

    /// <summary>The chance of standing over a line on a day, counted from the first.</summary>
    public Chance Over(MiteLevel line, int day)
    {
        float load = LoadAt(line);
        int over = 0;
        foreach (float one in Loads(day))
            over += one > load ? 1 : 0;
        return Chance.Of((double)over / _particles);
    }

    /// <summary>When the colony first stands over a line that may step from day to day.</summary>
    /// <param name="line">The line of each day, counted from the first; null on days without one.</param>
    /// <exception cref="ArgumentException">There are no days.</exception>
    public CrossingDates Crossing(Func<int, MiteLevel?> line)
    {
        if (Days == 0)
            throw new ArgumentException("An outlook without days crosses nothing.", nameof(line));
        bool[] crossed = new bool[_particles];
        double[] by = new double[Days];
        int count = 0;
        for (int day = 0; day < Days; day++)
        {
            if (line(day) is { } level)
            {
                float load = LoadAt(level);
                ReadOnlySpan<float> loads = Loads(day);
                for (int i = 0; i < crossed.Length; i++)
                {
                    if (!crossed[i] && loads[i] > load)
                    {
                        crossed[i] = true;
                        count++;
                    }
                }
            }

            by[day] = (double)count / _particles;
        }

        return new(FirstDay, by);
    }

    /// <summary>When the colony first stands over a line.</summary>
    public CrossingDates Crossing(MiteLevel line) => Crossing(_ => line);

    /// <summary>What a jar of a day would show.</summary>
    /// <param name="day">The day, counted from the first.</param>
    /// <param name="bees">Bees in the jar.</param>
    /// <param name="priors">The figures of counting.</param>
    public JarPrediction Jar(int day, BeeCount bees, ForecastPriors priors) => JarPrediction.Of(Loads(day), bees, Recovery, priors);

    private float LoadAt(MiteLevel level) => (float)(level.PerBee / Recovery);

    // A colony that is nearly gone may carry more mites than bees by far; levels stay numbers people can read.
    private MiteLevel Level(double load) => MiteLevel.FromPerBee(Math.Min(load, 1e4) * Recovery);
}
