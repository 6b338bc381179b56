using Foundress.Book.Dues;
using Foundress.Book.State;

namespace Foundress.Cli.Output;

/// <summary>Something due as JSON.</summary>
internal sealed record DueOutput(
    string Key, DueKind Kind, DueTime Time, string Apiary, IReadOnlyList<string> Colonies, DateOnly From, DateOnly To, string Text, DateOnly? PutOffUntil, string? PutOffReason)
{
    internal static DueOutput Of(DueItem item, BookState state) => new(
        item.Key, item.Kind, item.Time, state.Apiaries.GetValueOrDefault(item.Apiary)?.Name ?? "?",
        [.. item.Colonies.Select(id => state.Colonies[id].Name)], item.From, item.To, item.Text, item.PutOff?.Until, item.PutOff?.Reason);
}
