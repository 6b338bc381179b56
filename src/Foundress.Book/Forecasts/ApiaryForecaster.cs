using System.Globalization;
using Foundress.Book.Forecasting;
using Foundress.Book.Judging;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Forecasting;
using Foundress.Science.Judging;
using Foundress.Science.Numerics;

namespace Foundress.Book.Forecasts;

/// <summary>
/// Works out where the colonies of an apiary are heading: each from its own counts, inspections, queens and controls, and
/// from those of its neighbours.
/// </summary>
/// <remarks>
/// The method is in docs/methods/forecast.md. Not safe for concurrent use; keep one for each thread. The work goes in steps,
/// one a colony, so that a screen can show how far it is and stop it.
/// </remarks>
public sealed class ApiaryForecaster
{
    private const int PastShown = 60;
    private const int FanStep = 3;

    private readonly BookState _state;
    private readonly KnowledgeBase _knowledge;
    private readonly JudgingPolicy _policy;
    private readonly ColonyRecordReader _reader;
    private readonly ForecastSentences _sentences;

    /// <summary>A forecaster of a book.</summary>
    /// <param name="state">The book.</param>
    /// <param name="knowledge">Methods, lines, bees, mites and controls.</param>
    /// <param name="culture">How numbers are written in the sentences.</param>
    /// <param name="seasons">The bees' years made so far, when some are kept.</param>
    public ApiaryForecaster(BookState state, KnowledgeBase knowledge, CultureInfo culture, BroodSeasons? seasons = null)
    {
        (_state, _knowledge) = (state, knowledge);
        _policy = JudgingPolicy.Of(state, knowledge);
        _reader = new ColonyRecordReader(state, seasons ?? new BroodSeasons(knowledge), new OtherCountReader(knowledge, _policy, culture));
        _sentences = new ForecastSentences(culture);
    }

    /// <summary>The forecast of an apiary in one go.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="today">The day it is made on; later entries are not used.</param>
    /// <param name="options">How; the defaults when not given.</param>
    /// <param name="cancellation">Stops it between two colonies.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of its range.</exception>
    public ApiaryCourse Of(Apiary apiary, DateOnly today, ForecastOptions? options = null, CancellationToken cancellation = default)
    {
        ApiaryCourse? course = null;
        foreach (var step in Steps(apiary, today, options))
        {
            cancellation.ThrowIfCancellationRequested();
            course = step.Course;
        }

        return course!;
    }

    /// <summary>The forecast of an apiary step by step; the last step carries it.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="today">The day it is made on; later entries are not used.</param>
    /// <param name="options">How; the defaults when not given.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of its range.</exception>
    public IEnumerable<ForecastStep> Steps(Apiary apiary, DateOnly today, ForecastOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(apiary);
        var how = options ?? new ForecastOptions();
        if (how.Ahead is < 1 or > 366)
            throw new ArgumentOutOfRangeException(nameof(options), how.Ahead, "A forecast looks 1 to 366 days ahead.");
        if (how.Particles is < 64 or > 100_000)
            throw new ArgumentOutOfRangeException(nameof(options), how.Particles, "A forecast works with 64 to 100,000 particles.");
        if (how.RecordDays is < 30 or > 1000)
            throw new ArgumentOutOfRangeException(nameof(options), how.RecordDays, "A forecast uses 30 to 1,000 days of the record.");
        return StepsOf(apiary, today, how);
    }

    private IEnumerable<ForecastStep> StepsOf(Apiary apiary, DateOnly today, ForecastOptions how)
    {
        var colonies = _state.ColoniesIn(apiary.Id, today);
        var to = today.AddDays(how.Ahead);
        if (colonies.Count == 0)
        {
            yield return new ForecastStep(0, 0, new ApiaryCourse(apiary.Id, today, to, [], [], null, null, ForecastTexts.NoColonies));
            yield break;
        }

        var steps = how.Only is null ? colonies.Count + 1 : 2;
        var start = StartOf(colonies, today, how.RecordDays);
        var until = today.DayNumber - start.DayNumber + 1;
        var histories = new ColonyHistory[colonies.Count];
        var futures = new Science.Dynamics.ColonyDays?[colonies.Count];
        for (var i = 0; i < colonies.Count; i++)
            histories[i] = _reader.Read(colonies[i], start, to.AddDays(1), today, how.Suppose, out futures[i]);
        yield return new ForecastStep(0, steps, null);

        var priors = _knowledge.Mites.Priors;
        var seed = SeededGenerator.ForPart(how.Seed, apiary.Id.ToString()).NextUInt64();
        var belief = ApiaryBelief.Learn(histories, priors, [.. Enumerable.Repeat(until, colonies.Count)], new ColonyFilter(Math.Max(how.Particles / 4, 64)), seed);
        yield return new ForecastStep(1, steps, null);

        var recovery = HistoryBuilder.RecoveryOf(_knowledge, UsualMethod(colonies, today));
        var lines = LinesOf(apiary, today, how.Ahead);
        var filter = new ColonyFilter(how.Particles);
        var forecasts = new List<ColonyForecast>(colonies.Count);
        var last = how.Only is null ? colonies.Count - 1 : -1;
        var any = new AnyColonyFan(today, how.Ahead, FanStep);
        // Bees are not shaken out of a winter cluster.
        var season = SiteSeason.Of(apiary, _knowledge);
        bool CanTake(DateOnly day) => !season.PhaseOn(day).IsDormant();
        var counted = histories.Any(history => history.Evidence.ToArray().Any(count => count.Day < until));
        for (var i = 0; i < colonies.Count; i++)
        {
            if (how.Only is { } only && only != colonies[i].Id)
                continue;
            forecasts.Add(Foretell(colonies[i], histories[i], futures[i], belief.For(histories[i], i), filter, any, (today, until, recovery, counted, CanTake), lines, how));
            if (i < last)
                yield return new ForecastStep(i + 2, steps, null);
        }

        yield return new ForecastStep(steps, steps, Together(apiary, today, to, forecasts, any.Points(recovery), counted));
    }

    private ColonyForecast Foretell(
        Colony colony, ColonyHistory history, Science.Dynamics.ColonyDays? future, ColonyBelief belief, ColonyFilter filter, AnyColonyFan any,
        (DateOnly Today, int Until, double Recovery, bool Counted, Func<DateOnly, bool> CanTake) at, MiteLevel?[] lines, ForecastOptions how)
    {
        var priors = _knowledge.Mites.Priors;
        var seed = SeededGenerator.ForPart(how.Seed, colony.Id.ToString()).NextUInt64();
        var counts = history.Evidence.ToArray().Where(count => count.Day < at.Until).ToList();
        var report = filter.Run(history, belief, priors, at.Until, seed, keepCourse: counts.Count > 0);
        var fan = new List<FanPoint>();
        if (counts.Count > 0)
        {
            var first = Math.Max(counts[^1].Day, at.Until - PastShown);
            fan.AddRange(Points(filter.Course(at.Recovery).Fan(FanStep)).Where(point => point.On.DayNumber >= at.Today.DayNumber - (at.Until - 1 - first) && point.On < at.Today));
        }

        // From the start of tomorrow's reckoning on; today's state is the first of its days.
        var outlook = filter.Project(history.Days, at.Until + how.Ahead, at.Recovery, seed);
        var ahead = Points(outlook.Fan(FanStep));
        fan.AddRange(ahead);
        any.Add(outlook);
        var line = Outlook(outlook, lines);
        var next = lines[0] is { } now
            ? NextJar.Find(outlook, now, _policy.Certainty.SureAbove, BeeCount.Counted((int)_knowledge.Sampling.BeesPerJar.Value), priors, canTake: at.CanTake)
            : null;
        var jars = counts.Count(count => count.Kind == EvidenceKind.Jar);
        var supposed = future is null || how.Suppose is not { } suppose ? null : Suppose(filter, future, suppose, at, lines, line, how, seed);
        return new ColonyForecast(
            colony.Id, colony.Name, jars, fan, line, next?.On, next?.ChanceOfChange.Value ?? 0, report.Thin,
            _sentences.OfColony(jars, at.Counted, ahead[0], line, next?.On, report.Thin, at.Today.AddDays(how.Ahead)), supposed);
    }

    private SupposedCourse Suppose(
        ColonyFilter filter, Science.Dynamics.ColonyDays future, Supposition suppose, (DateOnly Today, int Until, double Recovery, bool Counted, Func<DateOnly, bool> CanTake) at,
        MiteLevel?[] lines, LineOutlook? without, ForecastOptions how, ulong seed)
    {
        var outlook = filter.Project(future, at.Until + how.Ahead, at.Recovery, seed);
        var line = Outlook(outlook, lines);
        return new SupposedCourse(suppose.Agent.Title, suppose.On, Points(outlook.Fan(FanStep)), line, _sentences.OfSupposed(suppose, without, line, at.Today.AddDays(how.Ahead)));
    }

    private static LineOutlook? Outlook(ColonyOutlook outlook, MiteLevel?[] lines)
    {
        if (lines[0] is not { } first)
            return null;
        var crossing = outlook.Crossing(day => lines[Math.Min(day, lines.Length - 1)]);
        return new LineOutlook(
            first.Per100Bees, outlook.Over(first, 0).Value, 1 - crossing.Never.Value,
            crossing.Day(Chance.Of(0.1)), crossing.Day(Chance.Of(0.5)), crossing.Day(Chance.Of(0.9)));
    }

    private ApiaryCourse Together(Apiary apiary, DateOnly today, DateOnly to, List<ColonyForecast> forecasts, IReadOnlyList<FanPoint> fan, bool counted)
    {
        List<ColonyForecast> ordered = [.. forecasts
            .OrderBy(one => one.Outlook?.Likely ?? DateOnly.MaxValue)
            .ThenByDescending(one => one.Outlook?.ByEnd ?? 0)
            .ThenBy(one => one.Name, NaturalOrder.Instance)];
        var judged = ordered.Where(one => one.Outlook is not null).ToList();
        double? expected = judged.Count == 0 ? null : judged.Sum(one => one.Outlook!.ByEnd);
        var soonest = judged.Select(one => one.Outlook!.Likely).Min();
        return new ApiaryCourse(apiary.Id, today, to, fan, ordered, expected, soonest, _sentences.OfApiary(ordered, counted, expected, today, to));
    }

    internal ColonyRecordReader Reader => _reader;

    internal DateOnly StartOf(IReadOnlyList<Colony> colonies, DateOnly today, int recordDays)
    {
        var earliest = today.AddDays(-recordDays);
        var first = colonies
            .SelectMany(colony => _state.JarsOf(colony.Id).Select(jar => jar.Facts.On)
                .Concat(_state.FallsOf(colony.Id).Select(fall => fall.Facts.On))
                .Concat(_state.BroodOf(colony.Id).Select(brood => brood.Facts.On)))
            .Where(on => on <= today && on >= earliest)
            .DefaultIfEmpty(today)
            .Min();
        return first.AddDays(-HistoryBuilder.LeadDays);
    }

    internal string UsualMethod(IReadOnlyList<Colony> colonies, DateOnly today) => HistoryBuilder.UsualMethod(
        colonies
            .SelectMany(colony => _state.JarsOf(colony.Id))
            .Where(jar => jar.Facts.On <= today && _knowledge.Methods.TryGet(jar.Facts.Method, out var method) && method is { IsJar: true, IsHistoric: false })
            .Select(jar => jar.Facts.Method),
        _knowledge);

    // The line may step with the season, so each day has its own; where a set has a gap the one before holds on.
    internal MiteLevel?[] LinesOf(Apiary apiary, DateOnly today, int ahead)
    {
        var lines = new MiteLevel?[ahead];
        MiteLevel? last = null;
        for (var day = 0; day < ahead; day++)
        {
            if (_policy.On(apiary, today.AddDays(day)) is { Unit: Units.MitesPer100Bees } line)
                last = MiteLevel.Per100(line.Deciding);
            lines[day] = last;
        }

        return lines;
    }

    private static List<FanPoint> Points(IReadOnlyList<FanDay> fan) =>
        [.. fan.Select(day => new FanPoint(
            day.On, day.Low.Per100Bees, day.LowerQuarter.Per100Bees, day.Middle.Per100Bees, day.UpperQuarter.Per100Bees, day.High.Per100Bees))];
}
