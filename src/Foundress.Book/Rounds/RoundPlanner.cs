using System.Globalization;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science.Sampling;

namespace Foundress.Book.Rounds;

/// <summary>Plans a sampling round: how many colonies, and which.</summary>
/// <param name="state">The book.</param>
/// <param name="knowledge">The rules of thumb.</param>
public sealed class RoundPlanner(BookState state, KnowledgeBase knowledge)
{
    /// <summary>The rule of thumb with its figures from the knowledge files.</summary>
    public RuleOfThumb Rule { get; } = knowledge.Sampling.ToRuleOfThumb();

    /// <summary>Proposes how many colonies to sample.</summary>
    /// <param name="apiaries">The apiaries of the round.</param>
    /// <param name="day">The day of the round: colonies living then are counted.</param>
    public RoundProposal Propose(IReadOnlyList<ApiaryId> apiaries, DateOnly day)
    {
        var places = apiaries.Distinct()
            .Select(id => state.Apiaries[id])
            .OrderBy(apiary => apiary.Name, NaturalOrder.Instance)
            .Select(apiary => (Apiary: apiary, Colonies: state.ColoniesIn(apiary.Id, day)))
            .Where(place => place.Colonies.Count > 0)
            .ToList();
        var sizes = places.Count == 0 ? [] : Rule.ForOperation([.. places.Select(place => place.Colonies.Count)]).PerApiary;
        return new RoundProposal(
            [.. places.Zip(sizes, (place, size) => new ApiaryProposal(place.Apiary, place.Colonies, size.Take))],
            Words(places.Count));
    }

    /// <summary>Draws the colonies: the same proposal and seed always give the same draw.</summary>
    /// <param name="proposal">How many to draw where; the numbers may have been changed by the keeper.</param>
    /// <param name="round">The new round's id.</param>
    /// <param name="on">The day the jars are due.</param>
    /// <param name="method">Id of the counting method.</param>
    /// <param name="purpose">Why, in the keeper's words.</param>
    /// <param name="seed">The seed; shown to the keeper so that the draw can be repeated.</param>
    /// <param name="early">The rule by which the round may stop early in an apiary; none where it is of fixed size.</param>
    public static RoundRecord Draw(
        RoundProposal proposal, RoundId round, DateOnly on, string method, string purpose, ulong seed, Func<ApiaryProposal, EarlyStop?>? early = null)
    {
        // Two offline phones may have given one name twice; the id then tells the two apart.
        var names = Keys(proposal.Apiaries, place => place.Apiary.Name, place => place.Apiary.Id.Value);
        var strata = names.Select(named => (Name: named.Key, Place: named.Value, Colonies: Keys(named.Value.Colonies, colony => colony.Name, colony => colony.Id.Value))).ToList();
        var draw = ColonyDraw.Draw([.. strata.Select(stratum => new Stratum(stratum.Name, [.. stratum.Colonies.Keys], stratum.Place.Take))], seed);
        var draws = strata.Select(stratum =>
        {
            var drawn = draw.Strata.Single(one => one.Apiary == stratum.Name);
            return new ApiaryDraw(
                stratum.Place.Apiary.Id,
                [.. drawn.Chosen.Select(key => stratum.Colonies[key].Id)],
                [.. drawn.Reserves.Select(key => stratum.Colonies[key].Id)],
                stratum.Place.Take < 2 ? null : early?.Invoke(stratum.Place));
        });
        return new RoundRecord(round, on, purpose, method, proposal.Rule, seed.ToString(CultureInfo.InvariantCulture), [.. draws]);
    }

    private static Dictionary<string, T> Keys<T>(IEnumerable<T> things, Func<T, string> name, Func<T, Guid> id)
    {
        var keys = new Dictionary<string, T>(StringComparer.Ordinal);
        foreach (var thing in things)
        {
            if (!keys.TryAdd(name(thing), thing))
                keys.Add($"{name(thing)} ({id(thing)})", thing);
        }

        return keys;
    }

    /// <summary>The rule the numbers follow, in words, with its source.</summary>
    /// <param name="apiaries">How many apiaries are sampled.</param>
    public string Words(int apiaries)
    {
        var source = knowledge.Sampling.ColoniesInOneApiary.Source.Text;
        return apiaries <= 1
            ? RoundTexts.FormatRuleOneApiary(Rule.SampleAllBelow, Rule.OneApiary, source)
            : RoundTexts.FormatRuleSeveral(Say.Percent(Rule.ShareLow, CultureInfo.InvariantCulture), Say.Percent(Rule.ShareHigh, CultureInfo.InvariantCulture), Rule.OneApiary, source);
    }
}
