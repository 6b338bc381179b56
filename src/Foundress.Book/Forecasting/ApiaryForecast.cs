using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Forecasting;
using Foundress.Science.Numerics;

namespace Foundress.Book.Forecasting;

/// <summary>Foretells jars of the colonies of one apiary from its record.</summary>
/// <remarks>
/// A jar is foretold from what was known on its day: jars and inspections of later days are not used, controls are (they may
/// be planned). The same input and seed give the same numbers, whatever the order of rows or apiaries. Not safe for
/// concurrent use; keep one for each thread.
/// </remarks>
public sealed class ApiaryForecast
{
    private const int LongestRecord = 1100;

    private readonly KnowledgeBase _knowledge;
    private readonly ColonyFilter _filter;
    private readonly ColonyFilter _scout;
    private float[] _loads = [];

    /// <summary>A forecast.</summary>
    /// <param name="knowledge">The knowledge files.</param>
    /// <param name="particles">Particles for each colony, 64 to 100,000; 2,000 for what people see.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="particles"/> is out of its range.</exception>
    public ApiaryForecast(KnowledgeBase knowledge, int particles)
    {
        if (particles is < 64 or > 100_000)
            throw new ArgumentOutOfRangeException(nameof(particles), particles, "A forecast works with 64 to 100,000 particles.");
        _knowledge = knowledge;
        _filter = new ColonyFilter(particles);
        _scout = new ColonyFilter(Math.Max(particles / 6, 64));
    }

    /// <summary>Foretells jars.</summary>
    /// <param name="builder">The builder of the apiary's site.</param>
    /// <param name="colonies">The apiary's colonies, with or without a record.</param>
    /// <param name="wishes">The jars to foretell, in any order.</param>
    /// <param name="seed">Seed of everything drawn.</param>
    /// <returns>One forecast for each wish, in the order of the wishes.</returns>
    public IReadOnlyList<JarForecast> Foretell(HistoryBuilder builder, IReadOnlyList<ForecastColony> colonies, IReadOnlyList<JarWish> wishes, ulong seed)
    {
        var forecasts = new JarForecast[wishes.Count];
        if (wishes.Count == 0)
            return forecasts;
        var to = wishes.Max(wish => wish.On);
        var start = wishes.Min(wish => wish.On);
        foreach (var jar in colonies.SelectMany(colony => colony.Jars))
            start = jar.On < start ? jar.On : start;
        start = start.AddDays(-HistoryBuilder.LeadDays);
        if (to.DayNumber - start.DayNumber > LongestRecord)
            start = to.AddDays(-LongestRecord);
        var recovery = HistoryBuilder.RecoveryOf(_knowledge, HistoryBuilder.UsualMethod(colonies.SelectMany(colony => colony.Jars).Select(jar => jar.MethodId), _knowledge));
        var known = colonies.SelectMany(colony => colony.Jars.Select(jar => jar.On).Concat(colony.Inspections.Select(seen => seen.On))).Order().ToArray();
        // Jars of days between which nothing became known are foretold from one run.
        foreach (var group in Enumerable.Range(0, wishes.Count).GroupBy(i => known.Count(on => on <= wishes[i].On)).OrderBy(group => group.Key))
        {
            var asOf = group.Min(i => wishes[i].On);
            Foretell(builder, colonies, wishes, [.. group.OrderBy(i => wishes[i].On)], (start, to.AddDays(1), asOf), recovery, seed, forecasts);
        }

        return forecasts;
    }

    private void Foretell(
        HistoryBuilder builder, IReadOnlyList<ForecastColony> colonies, IReadOnlyList<JarWish> wishes, int[] group,
        (DateOnly Start, DateOnly To, DateOnly AsOf) span, double recovery, ulong seed, JarForecast[] forecasts)
    {
        var priors = _knowledge.Mites.Priors;
        var histories = new ColonyHistory[colonies.Count];
        for (var i = 0; i < colonies.Count; i++)
            histories[i] = builder.Build(colonies[i], span.Start, span.To, span.AsOf);
        var until = span.AsOf.DayNumber - span.Start.DayNumber;
        var belief = ApiaryBelief.Learn(histories, priors, [.. Enumerable.Repeat(until, colonies.Count)], _scout, seed);
        foreach (var ofColony in group.GroupBy(i => wishes[i].Colony))
        {
            var history = histories[ofColony.Key];
            var colonySeed = SeededGenerator.ForPart(seed, colonies[ofColony.Key].Name).NextUInt64();
            var report = _filter.Run(history, belief.For(history, ofColony.Key), priors, until, colonySeed);
            foreach (var i in ofColony)
            {
                var day = wishes[i].On.DayNumber - span.Start.DayNumber;
                if (day > _filter.Ensemble.Day)
                    Science.Dynamics.MiteRun.Advance(_filter.Ensemble, history.Days, day, _filter.NoiseSeed);
                if (_loads.Length < _filter.Particles)
                    _loads = new float[_filter.Particles];
                _filter.Loads(_loads);
                forecasts[i] = new(wishes[i], JarPrediction.Of(_loads.AsSpan(0, _filter.Particles), BeeCount.Counted(wishes[i].Bees), recovery, priors), report);
            }
        }
    }
}
