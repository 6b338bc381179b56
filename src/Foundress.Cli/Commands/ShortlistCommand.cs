using System.CommandLine;
using System.Globalization;
using Foundress.Book.Breeding;
using Foundress.Book.Wording;
using Foundress.Cli.Output;
using Foundress.Cli.Running;
using Foundress.Knowledge;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress shortlist</c>: colonies ranked for breeding by how slowly their mites grow.</summary>
internal static class ShortlistCommand
{
    internal static Command Make(Surroundings around)
    {
        var apiary = CommonOptions.Apiaries();
        var since = new Option<string?>("--since") { Description = BookCommandTexts.ShortlistSince, HelpName = SharedTexts.WordDay };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command("shortlist", BookCommandTexts.Shortlist) { apiary, since, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var given = ApiaryArgument.ReadAll(parsed.GetValue(apiary) ?? []);
            if (given.FirstOrDefault(one => one.Colonies is not null) is { } numbered)
                throw UsageException.OfValue("--apiary", $"{numbered.Name}={numbered.Colonies}", RoundCommandTexts.NoNumberOfColonies);
            var from = parsed.GetValue(since) is { } text ? CommonOptions.PastDay("--since", text, around) : around.Today.AddYears(-1);
            using var book = await BookAccess.OpenExistingAsync(
                CommonOptions.PlaceOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, around, cancellation);
            var state = book.Ledger.State;
            var list = new BreedingLists(state, KnowledgeBase.Load(), around.Culture).Of([.. ApiaryArgument.Find(given, state)], from, around.Today);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, ShortlistOutput.Of(list, from));
            else
                Write(around.Out, list, around.Culture);
            return ExitCodes.Fine;
        });
        return command;
    }

    private static void Write(TextWriter text, BreedingList list, CultureInfo culture)
    {
        text.WriteLine(list.Sentence);
        if (list.Rows.Count > 0)
            text.WriteLine(BookCommandTexts.ShortlistHead);
        foreach (var (colony, growth) in list.Rows)
        {
            var interval = growth.Interval(0.9);
            text.WriteLine(BookCommandTexts.FormatShortlistRow(
                colony.Name.PadRight(12), Tenths(growth.Mean).PadLeft(5), Tenths(interval.Lower), Tenths(interval.Upper), Say.InHundred(growth.ChanceInBestFifth, culture)));
        }

        if (list.LeftOut.Count > 0)
            text.WriteLine(BookCommandTexts.FormatShortlistLeftOut(Say.List([.. list.LeftOut.Select(colony => colony.Name)], 20)));

        string Tenths(double share) => (100 * share).ToString("0.0", culture);
    }
}
