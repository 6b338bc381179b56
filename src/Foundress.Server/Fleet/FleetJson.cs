using System.Text.Json.Serialization;

namespace Foundress.Server.Fleet;

/// <summary>Source-generated JSON of what is worked out ahead.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(FleetInput))]
[JsonSerializable(typeof(FleetState))]
internal sealed partial class FleetJson : JsonSerializerContext;
