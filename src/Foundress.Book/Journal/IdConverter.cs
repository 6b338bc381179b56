using System.Text.Json;
using System.Text.Json.Serialization;

namespace Foundress.Book.Journal;

/// <summary>Writes a typed identifier as its bare lower-case UUID text, as a value or as a property name.</summary>
/// <typeparam name="TId">The identifier.</typeparam>
public sealed class IdConverter<TId> : JsonConverter<TId>
    where TId : struct, IId<TId>
{
    /// <inheritdoc/>
    public override TId Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType == JsonTokenType.String && reader.TryGetGuid(out var value)
            ? TId.From(value)
            : throw new JsonException(EntryTexts.FormatExpectedUuid(typeof(TId).Name));

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, TId value, JsonSerializerOptions options) => writer.WriteStringValue(value.Value);
}
