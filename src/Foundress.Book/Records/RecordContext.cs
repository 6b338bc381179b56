using System.Text.Json.Serialization;

namespace Foundress.Book.Records;

/// <summary>Source-generated JSON of the records: camel case, enums by name, nothing written for a field that is not given.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    UseStringEnumConverter = true,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true,
    IgnoreReadOnlyProperties = true)]
[JsonSerializable(typeof(ApiaryRecord))]
[JsonSerializable(typeof(ColonyRecord))]
[JsonSerializable(typeof(ColonyMoved))]
[JsonSerializable(typeof(ColonyDied))]
[JsonSerializable(typeof(ColonySplit))]
[JsonSerializable(typeof(ColoniesUnited))]
[JsonSerializable(typeof(InspectionRecord))]
[JsonSerializable(typeof(QueenRecord))]
[JsonSerializable(typeof(ColonyBegan))]
[JsonSerializable(typeof(BroodRemoved))]
[JsonSerializable(typeof(RoundRecord))]
[JsonSerializable(typeof(RoundSkip))]
[JsonSerializable(typeof(RoundStop))]
[JsonSerializable(typeof(JarRecord))]
[JsonSerializable(typeof(JarPlaced))]
[JsonSerializable(typeof(ControlRecord))]
[JsonSerializable(typeof(ControlEnded))]
[JsonSerializable(typeof(AgentRecord))]
[JsonSerializable(typeof(ControlPlanRecord))]
[JsonSerializable(typeof(NormalsRecord))]
[JsonSerializable(typeof(MiteFallRecord))]
[JsonSerializable(typeof(OpenedBroodRecord))]
[JsonSerializable(typeof(PolicyRecord))]
[JsonSerializable(typeof(Strike))]
[JsonSerializable(typeof(DueSnoozed))]
[JsonSerializable(typeof(ApiaryDays))]
internal sealed partial class RecordContext : JsonSerializerContext;
