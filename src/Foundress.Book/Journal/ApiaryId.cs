using System.Text.Json.Serialization;

namespace Foundress.Book.Journal;

/// <summary>Identifies an apiary.</summary>
/// <param name="Value">The bare identifier, a UUID.</param>
[JsonConverter(typeof(IdConverter<ApiaryId>))]
public readonly record struct ApiaryId(Guid Value) : IId<ApiaryId>
{
    /// <inheritdoc/>
    public static ApiaryId From(Guid value) => new(value);

    /// <summary>The UUID in its usual lower-case form.</summary>
    public override string ToString() => Value.ToString("D");
}
