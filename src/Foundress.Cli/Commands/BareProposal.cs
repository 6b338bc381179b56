using System.Globalization;
using Foundress.Book.Journal;
using Foundress.Book.Rounds;
using Foundress.Book.State;

namespace Foundress.Cli.Commands;

/// <summary>A round's proposal for apiaries that are in no book.</summary>
internal static class BareProposal
{
    internal static RoundProposal Of(IReadOnlyList<ApiaryArgument> apiaries, RoundPlanner planner)
    {
        var ordered = apiaries.OrderBy(apiary => apiary.Name, NaturalOrder.Instance).ToArray();
        var sizes = planner.Rule.ForOperation([.. ordered.Select(apiary => apiary.Colonies!.Value)]).PerApiary;
        return new RoundProposal([.. ordered.Zip(sizes, (apiary, size) => new ApiaryProposal(Place(apiary), Colonies(apiary), size.Take))], planner.Words(ordered.Length));
    }

    private static Apiary Place(ApiaryArgument apiary) => new(new ApiaryId(NamedIds.Of("apiary without a book", apiary.Name)), apiary.Name);

    private static List<Colony> Colonies(ApiaryArgument apiary)
    {
        var place = Place(apiary).Id;
        return [.. Enumerable.Range(1, apiary.Colonies!.Value).Select(number =>
        {
            var name = number.ToString(CultureInfo.InvariantCulture);
            return new Colony(new ColonyId(NamedIds.Of("colony without a book", apiary.Name, name)), name, [new Stay(place, null)]);
        })];
    }
}
