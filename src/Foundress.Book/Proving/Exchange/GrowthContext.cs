using System.Text.Json.Serialization;

namespace Foundress.Book.Proving.Exchange;

/// <summary>How <see cref="GrowthAnswer"/> is written, without reflection.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(GrowthAnswer))]
internal sealed partial class GrowthContext : JsonSerializerContext;
