using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;

namespace Foundress.Book.Controls;

/// <summary>The controls an operation reckons with: those of the knowledge files with the keeper's own figures, and the keeper's own.</summary>
public sealed class ControlList
{
    private readonly Dictionary<string, ControlAgent> _byId = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string[]> _ownAliases = new(StringComparer.Ordinal);
    private readonly IReadOnlyDictionary<string, AgentRecord> _own;
    private readonly ControlFacts _facts;

    private ControlList(BookState state, KnowledgeBase knowledge)
    {
        _own = state.OwnAgents;
        _facts = knowledge.Controls;
        var all = new List<ControlAgent>();
        foreach (var agent in _facts.Agents)
            all.Add(_own.TryGetValue(agent.Id, out var own) ? Narrowed(agent, own) : agent);
        foreach (var own in _own.Values.Where(own => !_facts.Agents.TryGet(own.Agent, out _)).OrderBy(own => own.Title ?? own.Agent, NaturalOrder.Instance))
        {
            // One that was written by a newer version may be like nothing known here; it is kept in the book and not offered.
            if (_facts.Agents.TryGet(own.Like, out var like))
                all.Add(Narrowed(like with { Id = own.Agent, Title = own.Title ?? own.Agent, Aliases = [], IsOffered = true }, own));
        }

        All = all;
        foreach (var agent in all)
        {
            _byId[agent.Id] = agent;
            _ownAliases[agent.Id] = [.. (_own.GetValueOrDefault(agent.Id)?.Aliases ?? []).Select(ControlNames.Plain)];
        }
    }

    /// <summary>Every control, those of the knowledge files first.</summary>
    public IReadOnlyList<ControlAgent> All { get; }

    /// <summary>How it is proven that a control worked.</summary>
    public ProofRules Proof => _facts.Proof;

    /// <summary>How plans of controls are searched.</summary>
    public PlanRules Planning => _facts.Planning;

    /// <summary>The controls of an operation.</summary>
    public static ControlList Of(BookState state, KnowledgeBase knowledge) => new(state, knowledge);

    /// <summary>The control with an id, or null.</summary>
    public ControlAgent? Find(string id) => _byId.GetValueOrDefault(id);

    /// <summary>The title of a control; the text itself for one that is not known.</summary>
    public string TitleOf(string agent) => Find(agent)?.Title ?? agent;

    /// <summary>The controls a name in a file may mean; see <see cref="ControlFacts.Named"/>. The keeper's own names come first.</summary>
    public IReadOnlyList<ControlAgent> Named(string name)
    {
        var wanted = ControlNames.Plain(name);
        if (wanted.Length == 0)
            return [];
        var own = All.Where(agent => _own.ContainsKey(agent.Id)
            && (ControlNames.Plain(agent.Id) == wanted || ControlNames.Plain(agent.Title) == wanted || _ownAliases[agent.Id].Contains(wanted))).ToArray();
        return own.Length > 0 ? own : [.. _facts.Named(name).Select(agent => _byId[agent.Id])];
    }

    /// <summary>The mode of action of a control.</summary>
    public ModeOfAction ModeOf(ControlAgent agent) => _facts.Modes[agent.ModeId];

    /// <summary>The gear a control needs.</summary>
    public IReadOnlyList<Gear> GearOf(ControlAgent agent) => [.. agent.GearIds.Select(id => _facts.Gear[id])];

    /// <summary>Whether the keeper does not want it.</summary>
    public bool IsRefused(string agent) => _own.GetValueOrDefault(agent)?.Refused == true;

    /// <summary>The withdrawal period in days the keeper gave; null when none was given.</summary>
    public int? WithdrawalDays(string agent) => _own.GetValueOrDefault(agent)?.WithdrawalDays;

    /// <summary>What it costs for a colony by the keeper's own figure, in the keeper's money; null when none was given. None is shipped.</summary>
    public double? CostOf(string agent) => _own.GetValueOrDefault(agent)?.CostPerColony;

    /// <summary>Whether the keeper gave figures of a label for it.</summary>
    public bool HasOwnFigures(string agent) => _own.ContainsKey(agent);

    private static ControlAgent Narrowed(ControlAgent agent, AgentRecord own)
    {
        var source = new Source(own.LabelSource is { } label ? ControlTexts.FormatOwnLabel(label) : ControlTexts.OwnEntry, SourceStatus.Seen);
        Figure Days(int days) => new(days, Units.Days, source);
        Figure Share(double share) => new(share, Units.Percent, source);
        var temperatures = new List<TemperatureLimit>();
        if (own.Coldest is { } coldest)
            temperatures.Add(new(true, DayTemperature.Maximum, new Figure(coldest, Units.DegreesCelsius, source), null, ControlTexts.ColderThanLabel));
        if (own.Warmest is { } warmest)
            temperatures.Add(new(false, DayTemperature.Maximum, new Figure(warmest, Units.DegreesCelsius, source), null, ControlTexts.WarmerThanLabel));
        temperatures.AddRange(agent.Temperatures.Where(limit => limit.IsLeast ? own.Coldest is null : own.Warmest is null));
        return agent with
        {
            Title = own.Title ?? agent.Title,
            Days = own.Days is { } days ? Days(days) : agent.Days,
            Temperatures = temperatures,
            Supers = own.Supers is { } rule ? [.. agent.Supers.Select(ruling => new SuperRuling(ruling.Jurisdiction, rule, null, source))] : agent.Supers,
            DaysBeforeSupers = own.DaysBeforeSupers is { } before ? Days(before) : agent.DaysBeforeSupers,
            MinimumInterval = own.MinimumInterval is { } interval ? Days(interval) : agent.MinimumInterval,
            TargetBroodless = own.Target is { } target ? Share(target) : agent.TargetBroodless,
            TargetWithBrood = own.Target is { } withBrood ? Share(withBrood) : agent.TargetWithBrood,
            Model = own.Days is { } modelDays && agent.Model.Action == ControlAction.Kill && agent.Model.Days.Value == agent.Days.Value
                ? agent.Model with { Days = Days(modelDays) }
                : agent.Model,
        };
    }
}
