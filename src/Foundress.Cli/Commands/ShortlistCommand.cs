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
        var apiary = new Option<string[]>("--apiary") { Description = "An apiary of the book. May be repeated. Without it: all of the book.", HelpName = "NAME" };
        var since = CommonOptions.Day("--since", "First day of jars looked at");
        since.Description = "First day of jars looked at (yyyy-MM-dd). Without it: a year ago.";
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command(
            "shortlist",
            """
            Colonies ranked by how slowly their mites grow between controls, with the chance that each is truly among the
            slowest fifth. Says so when the order is mostly chance.

            Example:
              foundress shortlist --apiary Home --since 2026-04-01
            """) { apiary, since, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var given = ApiaryArgument.ReadAll(parsed.GetValue(apiary) ?? []);
            if (given.FirstOrDefault(one => one.Colonies is not null) is { } numbered)
                throw new UsageException($"--apiary '{numbered.Name}={numbered.Colonies}': name an apiary of the book, without a number of colonies.");
            var from = parsed.GetValue(since) is { } text ? CommonOptions.PastDay("--since", text, around) : around.Today.AddYears(-1);
            using var book = await BookAccess.OpenExistingAsync(
                CommonOptions.PlaceOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, around, cancellation);
            var state = book.Ledger.State;
            var list = new BreedingLists(state, KnowledgeBase.Load(), CultureInfo.InvariantCulture).Of([.. ApiaryArgument.Find(given, state)], from, around.Today);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, ShortlistOutput.Of(list, from));
            else
                Write(around.Out, list);
            return ExitCodes.Fine;
        });
        return command;
    }

    private static void Write(TextWriter text, BreedingList list)
    {
        text.WriteLine(list.Sentence);
        if (list.Rows.Count > 0)
            text.WriteLine("colony        growth a day (90 % interval)     in the slowest fifth");
        foreach (var (colony, growth) in list.Rows)
        {
            var interval = growth.Interval(0.9);
            text.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{colony.Name,-12}  {100 * growth.Mean,5:0.0} % ({100 * interval.Lower:0.0} to {100 * interval.Upper:0.0})    {Say.InHundred(growth.ChanceInBestFifth, CultureInfo.InvariantCulture)}"));
        }

        if (list.LeftOut.Count > 0)
            text.WriteLine($"Without a jar in this time: {Say.List([.. list.LeftOut.Select(colony => colony.Name)], 20)}.");
    }
}
