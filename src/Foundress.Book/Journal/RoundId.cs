using System.Text.Json.Serialization;

namespace Foundress.Book.Journal;

/// <summary>Identifies a sampling round.</summary>
/// <param name="Value">The bare identifier, a UUID.</param>
[JsonConverter(typeof(IdConverter<RoundId>))]
public readonly record struct RoundId(Guid Value) : IId<RoundId>
{
    /// <inheritdoc/>
    public static RoundId From(Guid value) => new(value);

    /// <summary>The UUID in its usual lower-case form.</summary>
    public override string ToString() => Value.ToString("D");
}
