using System.Text.Json.Serialization;

namespace Foundress.Book.Journal;

/// <summary>Identifies a colony.</summary>
/// <param name="Value">The bare identifier, a UUID.</param>
[JsonConverter(typeof(IdConverter<ColonyId>))]
public readonly record struct ColonyId(Guid Value) : IId<ColonyId>
{
    /// <inheritdoc/>
    public static ColonyId From(Guid value) => new(value);

    /// <summary>The UUID in its usual lower-case form.</summary>
    public override string ToString() => Value.ToString("D");
}
