using Foundress.Book.Choosing;

namespace Foundress.Cli.Output;

/// <summary>A control held against a day, as JSON.</summary>
internal sealed record ChooseControl(string Agent, string Title, Workability Workability, DateOnly Start, DateOnly End, IReadOnlyList<Reason> Against, IReadOnlyList<Reason> Missing, IReadOnlyList<string> Mind)
{
    internal static ChooseControl Of(ControlOffer offer) => new(offer.Agent.Id, offer.Agent.Title, offer.Workability, offer.Start, offer.End, offer.Against, offer.Missing, offer.Mind);
}
