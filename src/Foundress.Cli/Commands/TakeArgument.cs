using System.Globalization;
using Foundress.Book.Rounds;
using Foundress.Book.Wording;
using Foundress.Cli.Running;

namespace Foundress.Cli.Commands;

/// <summary>How many colonies the keeper wants from each apiary, where that differs from the rule.</summary>
internal static class TakeArgument
{
    internal static RoundProposal Apply(string? text, RoundProposal proposal)
    {
        if (text is null)
            return proposal;
        if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var take) || take < 1)
            throw UsageException.OfValue("--take", text, RoundCommandTexts.TakeRange);
        var small = proposal.Apiaries.FirstOrDefault(apiary => apiary.Colonies.Count < take);
        if (small is not null)
            throw new UsageException(Plural.Pick(small.Colonies.Count, RoundCommandTexts.FormatTakeTooMany(take, small.Apiary.Name, small.Colonies.Count)));
        return proposal with
        {
            Apiaries = [.. proposal.Apiaries.Select(apiary => apiary with { Take = take })],
            Rule = RoundCommandTexts.FormatTakeRule(take),
        };
    }
}
