using System.Text.Json.Serialization;

namespace Foundress.Book.Journal;

/// <summary>Identifies an entry of the journal.</summary>
/// <param name="Value">The bare identifier, a UUID.</param>
[JsonConverter(typeof(IdConverter<EntryId>))]
public readonly record struct EntryId(Guid Value) : IId<EntryId>
{
    /// <inheritdoc/>
    public static EntryId From(Guid value) => new(value);

    /// <summary>The UUID in its usual lower-case form.</summary>
    public override string ToString() => Value.ToString("D");
}
