using System.Globalization;
using Foundress.Book.Changes;
using Foundress.Book.Forecasts;
using Foundress.Book.Journal;
using Foundress.Book.Judging;
using Foundress.Book.Rounds;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Web.Store;

namespace Foundress.Web.Pages;

/// <summary>
/// What is worked out from the open book for its pages, kept until the book, the day or the reader's language changes: drawing a page again costs
/// nothing, and going back to the front page does not read every jar anew.
/// </summary>
/// <param name="session">The open book.</param>
public sealed class SeasonShelf(BookSession session)
{
    private readonly Dictionary<(Guid Id, int Years), DrawnStrip> _strips = [];
    private readonly Dictionary<RoundId, RoundResult> _results = [];
    private readonly Dictionary<ColonyId, ChangeSince?> _changes = [];
    private readonly Dictionary<DrawnStrip, (IReadOnlyList<FanPoint> Fan, DrawnStrip Drawn)> _fanned = [];
    private BookState? _state;
    private DateOnly _today;
    private (CultureInfo Numbers, CultureInfo Words) _reads;
    private SeasonStrips? _reader;
    private IReadOnlyList<ApiarySeason>? _seasons;

    /// <summary>All apiaries, those that need their keeper first.</summary>
    public IReadOnlyList<ApiarySeason> Seasons =>
        Fresh()._seasons ??= new SeasonOverview(session.State, KnowledgeBase.Load(), Reader).On(session.Today);

    /// <summary>One apiary as it stands today.</summary>
    public ApiarySeason Season(Apiary apiary) =>
        Fresh()._seasons?.FirstOrDefault(season => season.Apiary.Id == apiary.Id) ?? new SeasonOverview(session.State, KnowledgeBase.Load(), Reader).Of(apiary, session.Today);

    /// <summary>Reads the jars of the open book.</summary>
    public SeasonStrips Reader => Fresh()._reader!;

    /// <summary>The strip of an apiary.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="years">Which twelve months: 0 holds today, -1 is the twelve before.</param>
    public DrawnStrip Of(Apiary apiary, int years) => Strip(apiary.Id.Value, years, within => Reader.Of(apiary, session.Today, within));

    /// <summary>The strip of a colony.</summary>
    /// <param name="colony">The colony.</param>
    /// <param name="years">Which twelve months: 0 holds today, -1 is the twelve before.</param>
    public DrawnStrip Of(Colony colony, int years) => Strip(colony.Id.Value, years, within => Reader.Of(colony, session.Today, within));

    /// <summary>A strip with a forecast laid into it; the strip itself when there is none.</summary>
    public DrawnStrip WithFan(DrawnStrip strip, IReadOnlyList<FanPoint> fan)
    {
        if (fan.Count == 0)
            return strip;
        if (!_fanned.TryGetValue(strip, out var kept) || !ReferenceEquals(kept.Fan, fan))
            _fanned[strip] = kept = (fan, strip.With(fan));
        return kept.Drawn;
    }

    /// <summary>What a round says so far.</summary>
    public RoundResult Of(Round round)
    {
        Fresh();
        if (!_results.TryGetValue(round.Id, out var result))
            _results[round.Id] = result = new RoundResults(session.State, KnowledgeBase.Load(), CultureInfo.CurrentCulture).Of(round, session.Today);
        return result;
    }

    /// <summary>How a colony's level moved between its last two visits; null when there is nothing to compare.</summary>
    public ChangeSince? ChangeOf(ColonyId colony)
    {
        Fresh();
        if (!_changes.TryGetValue(colony, out var change))
            _changes[colony] = change = new ChangeReader(session.State, KnowledgeBase.Load(), JudgingPolicy.Of(session.State, KnowledgeBase.Load()).Confidence, CultureInfo.CurrentCulture).OfColony(colony);
        return change;
    }

    private SeasonShelf Fresh()
    {
        var reads = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        if (_reader is not null && ReferenceEquals(_state, session.State) && _today == session.Today && _reads.Equals(reads))
            return this;
        (_state, _today, _reads, _seasons) = (session.State, session.Today, reads, null);
        _strips.Clear();
        _fanned.Clear();
        _results.Clear();
        _changes.Clear();
        _reader = new SeasonStrips(_state, KnowledgeBase.Load(), CultureInfo.CurrentCulture);
        return this;
    }

    private DrawnStrip Strip(Guid id, int years, Func<DateOnly, SeasonStrip> read)
    {
        Fresh();
        if (!_strips.TryGetValue((id, years), out var strip))
            _strips[(id, years)] = strip = new DrawnStrip(read(session.Today.AddYears(years)), $"s{id:N}y{Math.Abs(years)}");
        return strip;
    }
}
