using System.Text.Json;
using System.Text.Json.Serialization;
using Foundress.Book.Jobs;

namespace Foundress.Web.Background;

/// <summary>Steps of jobs as the JSON that goes from the worker to the page.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(JobStep))]
internal sealed partial class WorkJson : JsonSerializerContext
{
    internal static string Write(JobStep step) => JsonSerializer.Serialize(step, Default.JobStep);

    internal static JobStep Read(string json) => JsonSerializer.Deserialize(json, Default.JobStep);
}
