using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace Foundress.Book.Records;

/// <summary>Records as the JSON text of an entry's payload.</summary>
public static class RecordJson
{
    /// <summary>The record as compact JSON.</summary>
    public static string Write(Record record) => JsonSerializer.Serialize(record, TypeOf(RecordKinds.Of(record))!);

    /// <summary>Reads a payload.</summary>
    /// <param name="kind">The entry's kind.</param>
    /// <param name="payload">The entry's payload.</param>
    /// <param name="problem">Why the payload could not be read; null on success.</param>
    /// <returns>
    /// The record, or null when the kind is unknown to this version or the payload does not fit it. Fields this version does
    /// not know are passed over.
    /// </returns>
    public static Record? TryRead(string kind, string payload, out string? problem)
    {
        problem = null;
        if (TypeOf(kind) is not { } type)
        {
            problem = RecordTexts.FormatKindUnknown(kind);
            return null;
        }

        try
        {
            return (Record?)JsonSerializer.Deserialize(payload, type);
        }
        catch (JsonException error)
        {
            problem = RecordTexts.FormatUnreadable(kind, error.Message);
            return null;
        }
    }

    /// <summary>How a kind is written as JSON; null for a kind this version does not know.</summary>
    public static JsonTypeInfo? TypeOf(string kind) => kind switch
    {
        RecordKinds.Apiary => RecordContext.Default.ApiaryRecord,
        RecordKinds.Colony => RecordContext.Default.ColonyRecord,
        RecordKinds.ColonyMoved => RecordContext.Default.ColonyMoved,
        RecordKinds.ColonyDied => RecordContext.Default.ColonyDied,
        RecordKinds.ColonySplit => RecordContext.Default.ColonySplit,
        RecordKinds.ColoniesUnited => RecordContext.Default.ColoniesUnited,
        RecordKinds.Inspection => RecordContext.Default.InspectionRecord,
        RecordKinds.Queen => RecordContext.Default.QueenRecord,
        RecordKinds.ColonyBegan => RecordContext.Default.ColonyBegan,
        RecordKinds.BroodRemoved => RecordContext.Default.BroodRemoved,
        RecordKinds.Round => RecordContext.Default.RoundRecord,
        RecordKinds.RoundSkip => RecordContext.Default.RoundSkip,
        RecordKinds.RoundStop => RecordContext.Default.RoundStop,
        RecordKinds.Jar => RecordContext.Default.JarRecord,
        RecordKinds.JarPlaced => RecordContext.Default.JarPlaced,
        RecordKinds.Control => RecordContext.Default.ControlRecord,
        RecordKinds.ControlEnded => RecordContext.Default.ControlEnded,
        RecordKinds.Agent => RecordContext.Default.AgentRecord,
        RecordKinds.ControlPlan => RecordContext.Default.ControlPlanRecord,
        RecordKinds.Normals => RecordContext.Default.NormalsRecord,
        RecordKinds.MiteFall => RecordContext.Default.MiteFallRecord,
        RecordKinds.OpenedBrood => RecordContext.Default.OpenedBroodRecord,
        RecordKinds.Policy => RecordContext.Default.PolicyRecord,
        RecordKinds.Strike => RecordContext.Default.Strike,
        RecordKinds.DueSnoozed => RecordContext.Default.DueSnoozed,
        RecordKinds.ApiaryDays => RecordContext.Default.ApiaryDays,
        _ => null,
    };
}
