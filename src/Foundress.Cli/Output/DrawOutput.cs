using Foundress.Book.Records;
using Foundress.Book.Rounds;

namespace Foundress.Cli.Output;

/// <summary>A draw as JSON. The seed is text, for it may be larger than a JSON reader's whole numbers.</summary>
internal sealed record DrawOutput(string Seed, DateOnly On, string Method, string Purpose, string Rule, bool Kept, Guid? Round, IReadOnlyList<DrawApiary> Apiaries)
{
    internal static DrawOutput Of(RoundRecord round, RoundProposal proposal, bool kept) => new(
        round.Seed, round.On, round.Method, round.Purpose, round.Rule, kept, kept ? round.Round.Value : null,
        [.. round.Draws.Select(draw =>
        {
            var place = proposal.Apiaries.Single(apiary => apiary.Apiary.Id == draw.Apiary);
            var names = place.Colonies.ToDictionary(colony => colony.Id, colony => colony.Name);
            return new DrawApiary(place.Apiary.Name, [.. draw.Chosen.Select(id => names[id])], [.. draw.Reserves.Select(id => names[id])]);
        })]);
}
