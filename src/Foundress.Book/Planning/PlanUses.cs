using Foundress.Book.Choosing;
using Foundress.Book.Controls;
using Foundress.Book.Forecasting;
using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science.Planning;

namespace Foundress.Book.Planning;

/// <summary>The controls a plan may hold, on the days they can start: what the rules leave of them.</summary>
internal sealed class PlanUses
{
    // Later starts show too little of what they do.
    private const int LastDays = 28;

    private readonly List<PlanUse> _uses = [];
    private readonly SortedDictionary<Ground, (int Count, SortedSet<string> Titles)> _ruledOut = [];

    private PlanUses()
    {
    }

    /// <summary>The controls on their days, by day.</summary>
    internal IReadOnlyList<PlanUse> All => _uses;

    /// <summary>Controls on days that were ruled out, in words.</summary>
    internal IEnumerable<DroppedPlans> RuledOut => _ruledOut.Select(one => new DroppedPlans(
        one.Value.Count, Plural.Pick(one.Value.Count, Words(one.Key, one.Value.Count, Say.List([.. one.Value.Titles], 20)))));

    /// <summary>Controls whose effect on mites is not followed by the model, in words.</summary>
    internal List<string> LeftOut { get; } = [];

    /// <summary>How many starts were looked at.</summary>
    internal int Looked { get; private set; }

    internal static PlanUses Find(
        Apiary apiary, IReadOnlyList<ColonyId> colonies, BookState state, KnowledgeBase knowledge, ControlList controls, PlanFutures futures,
        (DateOnly First, DateOnly Today) days, PlanOptions options)
    {
        var uses = new PlanUses();
        ControlAgent[] agents = [.. controls.All.Where(agent => agent.IsOffered)];
        uses.LeftOut.AddRange(agents.Where(agent => !IsFollowed(agent)).Select(agent => PlanTexts.FormatNotFollowed(agent.Title)));
        for (var day = 0; day <= options.Ahead - LastDays; day += options.Step)
        {
            var on = days.Today.AddDays(day);
            var brood = Enumerable.Range(0, colonies.Count).Any(colony => futures.Brood(colony, [], on) == BroodState.Some) ? BroodState.Some : BroodState.None;
            var situation = PlanSituations.On(apiary, colonies, state, knowledge, on, options, brood);
            for (var place = 0; place < agents.Length; place++)
            {
                if (IsFollowed(agents[place]))
                    uses.Look(agents[place], place, situation, controls, (day, days.First), colonies.Count);
            }
        }

        return uses;
    }

    private static bool IsFollowed(ControlAgent agent) => agent.Model.Action is not (ControlAction.Requeen or ControlAction.Split);

    private void Look(ControlAgent agent, int place, Situation situation, ControlList controls, (int Day, DateOnly First) at, int colonies)
    {
        Looked++;
        var offer = ControlChoices.For(agent, situation, controls);
        var broodless = agent.Requirements.Any(one => one is { Need: ControlNeed.Broodless, IsStrict: true });
        // What another control of the plan may lift is left to the search.
        var hard = offer.Against.FirstOrDefault(reason => reason.Ground != Ground.Rotation && !(reason.Ground == Ground.Brood && broodless));
        if (hard is not null)
        {
            if (!_ruledOut.TryGetValue(hard.Ground, out var known))
                known = (0, new SortedSet<string>(StringComparer.Ordinal));
            known.Titles.Add(agent.Title);
            _ruledOut[hard.Ground] = (known.Count + 1, known.Titles);
            return;
        }

        var kills = ControlEffects.Kills([new ForecastControl(agent, offer.Start, offer.End)], at.First);
        _uses.Add(new PlanUse(
            offer,
            new PlanCandidate(place, at.Day, at.Day + (offer.End.DayNumber - offer.Start.DayNumber), agent.HazardRank.Value, agent.LabourRank.Value, (controls.CostOf(agent.Id) ?? 0) * colonies, agent.IsNonChemical),
            kills.Count > 0 ? kills[0].Effect : null,
            offer.Against.Any(reason => reason.Ground == Ground.Brood),
            agent.Requirements.Any(one => one is { Need: ControlNeed.Brood, IsStrict: true }),
            offer.Against.Any(reason => reason.Ground == Ground.Rotation)));
    }

    private static string Words(Ground ground, int count, string controls) => ground switch
    {
        Ground.Temperature => PlanTexts.FormatRuledByTemperature(count, controls),
        Ground.Supers => PlanTexts.FormatRuledBySupers(count, controls),
        Ground.Brood => PlanTexts.FormatRuledByBrood(count, controls),
        Ground.Cluster => PlanTexts.FormatRuledByCluster(count, controls),
        Ground.Rotation => PlanTexts.FormatRuledByRotation(count, controls),
        Ground.Interval => PlanTexts.FormatRuledByInterval(count, controls),
        Ground.Gear => PlanTexts.FormatRuledByGear(count, controls),
        Ground.Refused => PlanTexts.FormatRuledByKeeper(count, controls),
        Ground.Organic => PlanTexts.FormatRuledByOrganic(count, controls),
        Ground.Queen => PlanTexts.FormatRuledByQueen(count, controls),
        _ => throw new ArgumentOutOfRangeException(nameof(ground), ground, "This ground has no words."),
    };
}
