using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.State;

/// <summary>Gathers what the entries say of controls.</summary>
internal sealed class ControlFold
{
    private readonly Dictionary<ControlId, (Entry Entry, ControlRecord Facts)> _uses = [];
    private readonly Dictionary<ControlId, HashSet<ColonyId>> _colonies = [];
    private readonly List<ControlEnd> _ends = [];

    internal Dictionary<ControlId, Control> Controls { get; } = [];

    internal Dictionary<ColonyId, List<Course>> CoursesByColony { get; } = [];

    internal Dictionary<string, AgentRecord> OwnAgents { get; } = new(StringComparer.Ordinal);

    internal Dictionary<ApiaryId, NormalsRecord> Normals { get; } = [];

    internal List<ControlPlan> Plans { get; } = [];

    internal Dictionary<ApiaryId, ApiaryDays> Days { get; } = [];

    internal Dictionary<string, DueSnoozed> PutOff { get; } = new(StringComparer.Ordinal);

    /// <summary>Every ending, struck ones too, for the history of the colonies it speaks of.</summary>
    internal List<(Entry Entry, ControlEnded Facts)> SaidEnds { get; } = [];

    /// <summary>Notes an entry whether it counts or not.</summary>
    internal void See(ReadEntry read)
    {
        if (read.Record is ControlEnded ended)
            SaidEnds.Add((read.Entry, ended));
        if (read.Record is not ControlRecord use)
            return;
        if (!_colonies.TryGetValue(use.Control, out var colonies))
            _colonies[use.Control] = colonies = [];
        colonies.UnionWith(use.Colonies);
    }

    /// <summary>The colonies an ending speaks of.</summary>
    internal IEnumerable<ColonyId> ColoniesOf(ControlEnded ended) =>
        ended.Colonies ?? (IEnumerable<ColonyId>?)_colonies.GetValueOrDefault(ended.Control) ?? [];

    internal void Take(Entry entry, Record record)
    {
        switch (record)
        {
            case ControlRecord use:
                _uses[use.Control] = (entry, use);
                break;
            case ControlEnded ended:
                _ends.Add(new ControlEnd(entry, ended));
                break;
            case ControlPlanRecord plan:
                Plans.RemoveAll(known => known.Facts.Apiary == plan.Apiary && known.Facts.Colonies.ToHashSet().SetEquals(plan.Colonies));
                Plans.Add(new ControlPlan(entry, plan));
                break;
            case NormalsRecord normals:
                Normals[normals.Apiary] = normals;
                break;
            case ApiaryDays days:
                Days[days.Apiary] = days;
                break;
            case DueSnoozed snoozed:
                PutOff[snoozed.Due] = snoozed;
                break;
            case AgentRecord agent:
                OwnAgents[agent.Agent] = OwnAgents.TryGetValue(agent.Agent, out var known) ? Merge(known, agent) : agent;
                break;
        }
    }

    internal void Finish(Dictionary<ColonyId, Colony> known)
    {
        var ends = _ends.ToLookup(end => end.Facts.Control);
        foreach (var (id, (entry, facts)) in _uses)
            Controls[id] = new Control(entry, facts, [.. ends[id].OrderBy(end => end.Facts.On)]);
        foreach (var control in Controls.Values.OrderBy(control => control.Facts.Start).ThenBy(control => control.Entry))
        {
            foreach (var colony in control.Facts.Colonies.Distinct())
                BookFold.Listed(CoursesByColony, colony).Add(Course.Of(control, colony, known.GetValueOrDefault(colony)));
        }
    }

    private static AgentRecord Merge(AgentRecord known, AgentRecord change) => new(
        known.Agent,
        change.Title ?? known.Title,
        change.Like ?? known.Like,
        change.Aliases ?? known.Aliases,
        change.Days ?? known.Days,
        change.Coldest ?? known.Coldest,
        change.Warmest ?? known.Warmest,
        change.Supers ?? known.Supers,
        change.DaysBeforeSupers ?? known.DaysBeforeSupers,
        change.WithdrawalDays ?? known.WithdrawalDays,
        change.MinimumInterval ?? known.MinimumInterval,
        change.Target ?? known.Target,
        change.Refused ?? known.Refused,
        change.LabelSource ?? known.LabelSource,
        change.Note ?? known.Note,
        change.CostPerColony ?? known.CostPerColony);
}
