using System.Text.Json.Serialization;

namespace Foundress.Book.Journal;

/// <summary>Identifies a use of a control.</summary>
/// <param name="Value">The bare identifier, a UUID.</param>
[JsonConverter(typeof(IdConverter<ControlId>))]
public readonly record struct ControlId(Guid Value) : IId<ControlId>
{
    /// <inheritdoc/>
    public static ControlId From(Guid value) => new(value);

    /// <summary>The UUID in its usual lower-case form.</summary>
    public override string ToString() => Value.ToString("D");
}
