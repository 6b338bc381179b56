using System.Text.Json.Serialization;
using Foundress.Book.Forecasts.Exchange;

namespace Foundress.Book.Planning.Exchange;

/// <summary>Source-generated JSON of plans.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UseStringEnumConverter = true,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true,
    Converters = [typeof(FanConverter)])]
[JsonSerializable(typeof(PlanRequest))]
[JsonSerializable(typeof(ControlPlans))]
internal sealed partial class PlanContext : JsonSerializerContext;
