using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Science;

namespace Foundress.Book.State;

/// <summary>
/// Everything the book says today: the outcome of reading all entries in order. It depends only on the set of entries,
/// not on the order they arrived in. Immutable.
/// </summary>
public sealed class BookState
{
    private static readonly IReadOnlyList<Jar> NoJars = [];
    private static readonly IReadOnlyList<Inspection> NoInspections = [];
    private static readonly IReadOnlyList<Happening> NoHappenings = [];
    private static readonly IReadOnlyList<Entry> NoEntries = [];

    private readonly Dictionary<ColonyId, List<Jar>> _jarsByColony;
    private readonly Dictionary<ApiaryId, List<(Jar Jar, Colony Colony)>> _jarsByApiary;
    private readonly Dictionary<ColonyId, List<Inspection>> _inspectionsByColony;
    private readonly Dictionary<ColonyId, List<MiteFall>> _fallsByColony;
    private readonly Dictionary<ColonyId, List<BroodOpening>> _broodByColony;
    private readonly Dictionary<ColonyId, List<Happening>> _happeningsByColony;
    private readonly Dictionary<ColonyId, List<Entry>> _entriesByColony;
    private readonly Dictionary<ApiaryId, List<Entry>> _entriesByApiary;
    private readonly Dictionary<ColonyId, List<Course>> _coursesByColony;

    private readonly IReadOnlySet<ApiaryId>? _only;

    private IReadOnlyList<Jar>? _teachingJars;

    internal BookState(BookFold fold)
    {
        _only = fold.Only;
        Apiaries = fold.Apiaries;
        Colonies = fold.Colonies;
        Jars = fold.Jars;
        Rounds = fold.Rounds;
        Policy = fold.Policy;
        Controls = fold.Controls.Controls;
        ControlPlans = fold.Controls.Plans;
        OwnAgents = fold.Controls.OwnAgents;
        Normals = fold.Controls.Normals;
        Days = fold.Controls.Days;
        PutOff = fold.Controls.PutOff;
        _coursesByColony = fold.Controls.CoursesByColony;
        Struck = fold.Struck;
        Unreadable = fold.Unreadable;
        _jarsByColony = fold.JarsByColony;
        _jarsByApiary = fold.JarsByApiary;
        _inspectionsByColony = fold.InspectionsByColony;
        _fallsByColony = fold.FallsByColony;
        _broodByColony = fold.BroodByColony;
        _happeningsByColony = fold.HappeningsByColony;
        _entriesByColony = fold.EntriesByColony;
        _entriesByApiary = fold.EntriesByApiary;
    }

    /// <summary>A book with nothing in it.</summary>
    public static BookState Empty { get; } = BookFold.Fold([]);

    /// <summary>Every apiary, by id.</summary>
    public IReadOnlyDictionary<ApiaryId, Apiary> Apiaries { get; }

    /// <summary>Every colony, living or ended, by id.</summary>
    public IReadOnlyDictionary<ColonyId, Colony> Colonies { get; }

    /// <summary>Every jar that counts, by the day it was taken, then in the book's order.</summary>
    public IReadOnlyList<Jar> Jars { get; }

    /// <summary>Every round, by id.</summary>
    public IReadOnlyDictionary<RoundId, Round> Rounds { get; }

    /// <summary>Every use of a control, by id.</summary>
    public IReadOnlyDictionary<ControlId, Control> Controls { get; }

    /// <summary>Plans of controls that stand, in the book's order.</summary>
    public IReadOnlyList<ControlPlan> ControlPlans { get; }

    /// <summary>The keeper's own words on controls, each field as last set, by the control's id.</summary>
    public IReadOnlyDictionary<string, AgentRecord> OwnAgents { get; }

    /// <summary>The usual temperatures the keeper gave, by apiary.</summary>
    public IReadOnlyDictionary<ApiaryId, NormalsRecord> Normals { get; }

    /// <summary>When supers go on and the harvest is, by apiary.</summary>
    public IReadOnlyDictionary<ApiaryId, ApiaryDays> Days { get; }

    /// <summary>What the keeper put off, by its key.</summary>
    public IReadOnlyDictionary<string, DueSnoozed> PutOff { get; }

    /// <summary>The operation's settings, each field as last set.</summary>
    public PolicyRecord Policy { get; }

    /// <summary>Entries that were struck out, by id.</summary>
    public IReadOnlyDictionary<EntryId, StruckEntry> Struck { get; }

    /// <summary>Entries that are kept but could not be taken into account, each with its reason.</summary>
    public IReadOnlyList<Unreadable> Unreadable { get; }

    /// <summary>A colony's jars by day.</summary>
    public IReadOnlyList<Jar> JarsOf(ColonyId colony) => _jarsByColony.TryGetValue(colony, out var jars) ? jars : NoJars;

    /// <summary>The jars of colonies that stood in an apiary on the day they were taken, by day.</summary>
    public IReadOnlyList<(Jar Jar, Colony Colony)> JarsIn(ApiaryId apiary) => _jarsByApiary.TryGetValue(apiary, out var jars) ? jars : [];

    /// <summary>A colony's inspections by day.</summary>
    public IReadOnlyList<Inspection> InspectionsOf(ColonyId colony) =>
        _inspectionsByColony.TryGetValue(colony, out var inspections) ? inspections : NoInspections;

    /// <summary>A colony's courses of controls by start.</summary>
    public IReadOnlyList<Course> CoursesOf(ColonyId colony) => _coursesByColony.TryGetValue(colony, out var courses) ? courses : [];

    /// <summary>How a use of a control ran in each of its colonies, in the order they are named.</summary>
    public IReadOnlyList<Course> CoursesOf(Control use) =>
        [.. use.Facts.Colonies.Distinct().SelectMany(CoursesOf).Where(course => course.Control.Id == use.Id)];

    /// <summary>Whether a use of a control is at work in some colony, or nobody said that it ended there.</summary>
    public bool IsOpen(Control use) => CoursesOf(use).Any(course => course.Ending == CourseEnding.Open);

    /// <summary>The uses of controls on colonies that stood in an apiary when they started, by start.</summary>
    public IReadOnlyList<Control> ControlsIn(ApiaryId apiary) =>
        [.. Controls.Values
            .Where(control => control.Facts.Colonies.Any(id => Colonies.TryGetValue(id, out var colony) && colony.ApiaryOn(control.Facts.Start) == apiary))
            .OrderBy(control => control.Facts.Start).ThenBy(control => control.Entry)];

    /// <summary>A colony's natural falls by day.</summary>
    public IReadOnlyList<MiteFall> FallsOf(ColonyId colony) => _fallsByColony.TryGetValue(colony, out var falls) ? falls : [];

    /// <summary>A colony's openings of brood by day.</summary>
    public IReadOnlyList<BroodOpening> BroodOf(ColonyId colony) => _broodByColony.TryGetValue(colony, out var openings) ? openings : [];

    /// <summary>What changed a colony's queen, bees or brood, by day, then in the book's order.</summary>
    public IReadOnlyList<Happening> HappeningsOf(ColonyId colony) =>
        _happeningsByColony.TryGetValue(colony, out var happenings) ? happenings : NoHappenings;

    /// <summary>Every entry that speaks of a colony, struck ones too, in the book's order.</summary>
    public IReadOnlyList<Entry> EntriesOf(ColonyId colony) => _entriesByColony.TryGetValue(colony, out var entries) ? entries : NoEntries;

    /// <summary>Every entry that speaks of an apiary itself, struck ones too, in the book's order.</summary>
    public IReadOnlyList<Entry> EntriesOf(ApiaryId apiary) => _entriesByApiary.TryGetValue(apiary, out var entries) ? entries : NoEntries;

    /// <summary>Jars whose bees were counted and whose measure is named, by day: those that teach what a measure holds. Gathered when first asked for.</summary>
    public IReadOnlyList<Jar> TeachingJars =>
        _teachingJars ??= [.. Jars.Where(jar => jar.Facts.Bees is { Basis: BeeBasis.Counted, Measure: not null })];

    /// <summary>Jars that were kept without a colony.</summary>
    public IEnumerable<Jar> LooseJars => Jars.Where(jar => jar.Colony is null);

    /// <summary>The colonies that stood in an apiary on a day and lived then, by name.</summary>
    public IReadOnlyList<Colony> ColoniesIn(ApiaryId apiary, DateOnly day) =>
        [.. Colonies.Values
            .Where(colony => colony.LivesOn(day) && colony.ApiaryOn(day) == apiary)
            .OrderBy(colony => colony.Name, NaturalOrder.Instance)];

    /// <summary>The apiaries that are looked after here, by name.</summary>
    public IReadOnlyList<Apiary> ApiariesByName => [.. Apiaries.Values.Where(apiary => Lists(apiary.Id)).OrderBy(apiary => apiary.Name, NaturalOrder.Instance)];

    /// <summary>Whether an apiary is looked after here (<see cref="Ledger.Only"/>). Of another one only the name can be relied on.</summary>
    public bool Lists(ApiaryId apiary) => _only?.Contains(apiary) != false;
}
