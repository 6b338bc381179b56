using System.Text.Json.Serialization;

namespace Foundress.Book.Forecasts.Exchange;

/// <summary>Source-generated JSON of forecasts.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true,
    Converters = [typeof(FanConverter)])]
[JsonSerializable(typeof(ForecastRequest))]
[JsonSerializable(typeof(ApiaryCourse))]
internal sealed partial class ForecastContext : JsonSerializerContext;
