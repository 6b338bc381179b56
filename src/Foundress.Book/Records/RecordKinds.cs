namespace Foundress.Book.Records;

/// <summary>The names of the kinds of record in the journal. They are part of the stored form and never change meaning.</summary>
public static class RecordKinds
{
    /// <summary>Version of the payload form that this program writes.</summary>
    public const int CurrentSchema = 1;

    /// <summary><see cref="ApiaryRecord"/>.</summary>
    public const string Apiary = "apiary";

    /// <summary><see cref="ColonyRecord"/>.</summary>
    public const string Colony = "colony";

    /// <summary><see cref="Records.ColonyMoved"/>.</summary>
    public const string ColonyMoved = "colony-moved";

    /// <summary><see cref="Records.ColonyDied"/>.</summary>
    public const string ColonyDied = "colony-died";

    /// <summary><see cref="Records.ColonySplit"/>.</summary>
    public const string ColonySplit = "colony-split";

    /// <summary><see cref="Records.ColoniesUnited"/>.</summary>
    public const string ColoniesUnited = "colonies-united";

    /// <summary><see cref="InspectionRecord"/>.</summary>
    public const string Inspection = "inspection";

    /// <summary><see cref="RoundRecord"/>.</summary>
    public const string Round = "round";

    /// <summary><see cref="Records.RoundSkip"/>.</summary>
    public const string RoundSkip = "round-skip";

    /// <summary><see cref="Records.RoundStop"/>.</summary>
    public const string RoundStop = "round-stop";

    /// <summary><see cref="JarRecord"/>.</summary>
    public const string Jar = "jar";

    /// <summary><see cref="Records.JarPlaced"/>.</summary>
    public const string JarPlaced = "jar-placed";

    /// <summary><see cref="ControlRecord"/>.</summary>
    public const string Control = "control";

    /// <summary><see cref="Records.ControlEnded"/>.</summary>
    public const string ControlEnded = "control-ended";

    /// <summary><see cref="AgentRecord"/>.</summary>
    public const string Agent = "agent";

    /// <summary><see cref="ControlPlanRecord"/>.</summary>
    public const string ControlPlan = "control-plan";

    /// <summary><see cref="NormalsRecord"/>.</summary>
    public const string Normals = "normals";

    /// <summary><see cref="MiteFallRecord"/>.</summary>
    public const string MiteFall = "mite-fall";

    /// <summary><see cref="OpenedBroodRecord"/>.</summary>
    public const string OpenedBrood = "opened-brood";

    /// <summary><see cref="PolicyRecord"/>.</summary>
    public const string Policy = "policy";

    /// <summary><see cref="Records.Strike"/>.</summary>
    public const string Strike = "strike";

    /// <summary><see cref="QueenRecord"/>.</summary>
    public const string Queen = "queen";

    /// <summary><see cref="Records.ColonyBegan"/>.</summary>
    public const string ColonyBegan = "colony-began";

    /// <summary><see cref="Records.BroodRemoved"/>.</summary>
    public const string BroodRemoved = "brood-removed";

    /// <summary><see cref="Records.DueSnoozed"/>.</summary>
    public const string DueSnoozed = "due-snoozed";

    /// <summary><see cref="Records.ApiaryDays"/>.</summary>
    public const string ApiaryDays = "apiary-days";

    /// <summary>Every kind this version reads, in the order of their names.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        Agent, Apiary, ApiaryDays, BroodRemoved, ColoniesUnited, Colony, ColonyBegan, ColonyDied, ColonyMoved, ColonySplit, Control,
        ControlEnded, ControlPlan, DueSnoozed, Inspection, Jar, JarPlaced, MiteFall, Normals, OpenedBrood, Policy, Queen, Round,
        RoundSkip, RoundStop, Strike,
    ];

    /// <summary>Whether a record was written by a newer version: its kind is unknown here, or its form is a later one.</summary>
    public static bool IsNewer(string kind, int schema) => schema > CurrentSchema || !All.Contains(kind);

    /// <summary>The kind of a record.</summary>
    public static string Of(Record record) => record switch
    {
        ApiaryRecord => Apiary,
        ColonyRecord => Colony,
        Records.ColonyMoved => ColonyMoved,
        Records.ColonyDied => ColonyDied,
        Records.ColonySplit => ColonySplit,
        Records.ColoniesUnited => ColoniesUnited,
        InspectionRecord => Inspection,
        QueenRecord => Queen,
        Records.ColonyBegan => ColonyBegan,
        Records.BroodRemoved => BroodRemoved,
        RoundRecord => Round,
        Records.RoundSkip => RoundSkip,
        Records.RoundStop => RoundStop,
        JarRecord => Jar,
        Records.JarPlaced => JarPlaced,
        ControlRecord => Control,
        Records.ControlEnded => ControlEnded,
        AgentRecord => Agent,
        ControlPlanRecord => ControlPlan,
        NormalsRecord => Normals,
        MiteFallRecord => MiteFall,
        OpenedBroodRecord => OpenedBrood,
        PolicyRecord => Policy,
        Records.Strike => Strike,
        Records.DueSnoozed => DueSnoozed,
        Records.ApiaryDays => ApiaryDays,
        _ => throw new ArgumentException($"{record.GetType().Name} has no kind.", nameof(record)),
    };
}
