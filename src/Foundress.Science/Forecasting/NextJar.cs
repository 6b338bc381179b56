using Foundress.Science.Numerics;

namespace Foundress.Science.Forecasting;

/// <summary>The day on which a jar would most likely change what the keeper does.</summary>
/// <param name="Day">The day, counted from the first of the outlook.</param>
/// <param name="On">The day.</param>
/// <param name="ChanceOfChange">The chance that the jar turns the decision.</param>
/// <param name="Gain">What the jar saves on average, where leaving a colony over the line costs 1.</param>
public readonly record struct NextJar(int Day, DateOnly On, Chance ChanceOfChange, double Gain)
{
    private const int MostParticles = 400;
    private const double EnoughOfBest = 0.9;

    /// <summary>Finds the day.</summary>
    /// <param name="outlook">What may come.</param>
    /// <param name="line">The line.</param>
    /// <param name="act">The chance of being over the line from which the keeper acts, above 0 and below 1.</param>
    /// <param name="bees">Bees in the jar.</param>
    /// <param name="priors">The figures of counting.</param>
    /// <param name="step">Days from one candidate to the next, 1 or more.</param>
    /// <param name="notice">Days between a jar and the time its answer must serve for, 0 or more.</param>
    /// <param name="canTake">Whether a jar can be taken on a day; on any when not given.</param>
    /// <returns>Null when on no day a jar could change anything.</returns>
    /// <remarks>
    /// Preposterior analysis (Raiffa &amp; Schlaifer 1961): for each day, over all counts the jar may show, the loss of the better of
    /// acting and waiting, against that of deciding without the jar. Acting for nothing costs act / (1 - act) of what waiting
    /// in vain costs, so that without a jar the keeper acts from the chance <paramref name="act"/>. Of days that gain nearly as
    /// much as the best the earliest is taken.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of its range.</exception>
    public static NextJar? Find(ColonyOutlook outlook, MiteLevel line, Chance act, BeeCount bees, ForecastPriors priors, int step = 7, int notice = 14, Func<DateOnly, bool>? canTake = null)
    {
        if (act.Value is not (> 0d and < 1d))
            throw new ArgumentOutOfRangeException(nameof(act), act.Value, "The chance from which the keeper acts lies between 0 and 1.");
        if (step < 1)
            throw new ArgumentOutOfRangeException(nameof(step), step, "Candidates are at least one day apart.");
        if (notice < 0)
            throw new ArgumentOutOfRangeException(nameof(notice), notice, "The notice is 0 days or more.");
        double cost = act.Value / (1d - act.Value);
        List<NextJar> found = [];
        for (int day = 0; day + notice < outlook.Days; day += step)
        {
            if (canTake is not null && !canTake(outlook.FirstDay.AddDays(day)))
                continue;
            NextJar one = At(outlook, line, cost, bees, priors, day, day + notice);
            if (one.Gain > 1e-6)
                found.Add(one);
        }

        if (found.Count == 0)
            return null;
        double best = found.Max(one => one.Gain);
        return found.First(one => one.Gain >= EnoughOfBest * best);
    }

    private static NextJar At(ColonyOutlook outlook, MiteLevel line, double cost, BeeCount bees, ForecastPriors priors, int day, int served)
    {
        ReadOnlySpan<float> now = outlook.Loads(day);
        ReadOnlySpan<float> then = outlook.Loads(served);
        int stride = Math.Max(1, now.Length / MostParticles);
        int count = now.Length / stride;
        Evidence jar = Evidence.Jar(0, 0, bees, outlook.Recovery, priors.JarSize);
        double limit = line.PerBee / outlook.Recovery;
        double[] over = new double[1];
        double[] under = new double[1];
        int particlesOver = 0;
        for (int i = 0; i < count; i++)
        {
            bool isOver = then[i * stride] > limit;
            particlesOver += isOver ? 1 : 0;
            double mean = now[i * stride] * jar.Base;
            if (isOver)
                Spread(mean, jar.Size, 1d / count, ref over);
            else
                Spread(mean, jar.Size, 1d / count, ref under);
        }

        double chance = (double)particlesOver / count;
        bool actsBefore = chance > (1d - chance) * cost;
        double withJar = 0d;
        double changed = 0d;
        for (int mites = 0; mites < Math.Max(over.Length, under.Length); mites++)
        {
            double o = mites < over.Length ? over[mites] : 0d;
            double u = (mites < under.Length ? under[mites] : 0d) * cost;
            withJar += Math.Min(o, u);
            if (o > u != actsBefore)
                changed += o + (u / cost);
        }

        double gain = Math.Max(0d, Math.Min(chance, (1d - chance) * cost) - withJar);
        return new(day, outlook.FirstDay.AddDays(day), Chance.Of(Math.Clamp(changed, 0d, 1d)), gain);
    }

    // Adds the negative binomial chances of one particle, up to where hardly any is left.
    private static void Spread(double mean, double size, double weight, ref double[] chances)
    {
        double share = mean / (size + mean);
        double chance = weight * PortableFunctions.Exp(-size * PortableFunctions.Log(1d + (mean / size)));
        for (int mites = 0; mites < 20_000; mites++)
        {
            if (mites == chances.Length)
                Array.Resize(ref chances, chances.Length * 2);
            chances[mites] += chance;
            chance *= (mites + size) / (mites + 1d) * share;
            if (chance < 1e-6 * weight && mites > mean)
                return;
        }
    }
}
