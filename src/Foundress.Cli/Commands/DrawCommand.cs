using System.CommandLine;
using System.Globalization;
using Foundress.Book.Importing;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rounds;
using Foundress.Book.Rules;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Cli.Output;
using Foundress.Cli.Running;
using Foundress.Knowledge;
using Foundress.Reports.Reporting;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress draw</c>: which colonies to sample, drawn at random from a seed.</summary>
internal static class DrawCommand
{
    internal static Command Make(Surroundings around)
    {
        var knowledge = KnowledgeBase.Load();
        var apiary = new Option<string[]>("--apiary") { Description = RoundCommandTexts.DrawApiary, HelpName = "NAME[=N]" };
        var take = new Option<string?>("--take") { Description = RoundCommandTexts.DrawTake, HelpName = "N" };
        var seed = new Option<string?>("--seed") { Description = RoundCommandTexts.DrawSeed, HelpName = "N" };
        var on = CommonOptions.Day("--on", RoundCommandTexts.DrawOn);
        var method = CommonOptions.Method();
        var early = new Option<bool>("--early") { Description = RoundCommandTexts.DrawEarly };
        var sheet = new Option<string?>("--sheet") { Description = RoundCommandTexts.DrawSheet, HelpName = SharedTexts.WordFile };
        var purpose = new Option<string>("--purpose") { Description = RoundCommandTexts.DrawPurpose, HelpName = "TEXT", DefaultValueFactory = _ => RoundCommandTexts.UsualPurpose };
        var keep = new Option<bool>("--keep") { Description = RoundCommandTexts.DrawKeep };
        var author = new Option<string>("--author") { Description = RoundCommandTexts.DrawAuthor, HelpName = "NAME", DefaultValueFactory = _ => BookAccess.UsualAuthor };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command("draw", RoundCommandTexts.Draw) { apiary, take, seed, on, method, purpose, early, sheet, keep, author, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var methodId = CommonOptions.MethodOf(parsed.GetValue(method));
            var day = CommonOptions.PlannedDay("--on", parsed.GetValue(on), around);
            var number = SeedOf(parsed.GetValue(seed), around);
            var given = ApiaryArgument.ReadAll(parsed.GetValue(apiary) ?? []);
            var bare = given.Any(one => one.Colonies is not null);
            if (bare && parsed.GetValue(keep))
                throw new UsageException(RoundCommandTexts.KeepNeedsBook);
            var ids = new TimeOrderedIds(around.Time);
            RoundProposal proposal;
            RoundRecord round;
            if (bare)
            {
                proposal = TakeArgument.Apply(parsed.GetValue(take), BareProposal.Of(given, new RoundPlanner(BookState.Empty, knowledge)));
                round = RoundPlanner.Draw(proposal, new RoundId(ids.Next()), day, methodId, parsed.GetValue(purpose)!, number, EarlyOf(BookState.Empty));
            }
            else
            {
                var place = CommonOptions.PlaceOf(parsed.GetValue(data), around);
                BookAccess.RequireExisting(place);
                using var book = await BookAccess.OpenAsync(place, parsed.GetValue(operation)!, Author(parsed.GetValue(author)!), around, cancellation);
                var state = book.Ledger.State;
                proposal = TakeArgument.Apply(parsed.GetValue(take), new RoundPlanner(state, knowledge).Propose(ApiaryArgument.Find(given, state), day));
                if (proposal.Apiaries.Count == 0)
                    throw new UsageException(RoundCommandTexts.NothingToDraw);
                round = RoundPlanner.Draw(proposal, new RoundId(ids.Next()), day, methodId, parsed.GetValue(purpose)!, number, EarlyOf(state));
                if (parsed.GetValue(keep))
                {
                    Require(RecordRules.Check(round, state, knowledge, around.Today));
                    await book.Store.AppendAsync(book.Scribe.Operation, [book.Scribe.Write(round)], cancellation);
                }
            }

            if (parsed.GetValue(sheet) is { } file)
                await File.WriteAllTextAsync(file, Sheet(round, proposal, knowledge, around.Culture), cancellation);
            var output = DrawOutput.Of(round, proposal, parsed.GetValue(keep));
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, output);
            else
                Write(around.Out, output);
            return ExitCodes.Fine;

            Func<ApiaryProposal, EarlyStop?>? EarlyOf(BookState state)
            {
                var designer = new RoundDesigner(state, knowledge, around.Culture);
                return parsed.GetValue(early) ? place => designer.EarlyStopOf(place.Apiary, day, methodId) : null;
            }
        });
        return command;
    }

    private static string Sheet(RoundRecord round, RoundProposal proposal, KnowledgeBase knowledge, CultureInfo culture)
    {
        var apiaries = proposal.Apiaries.ToDictionary(place => place.Apiary.Id, place => place.Apiary.Name);
        var colonies = proposal.Apiaries.SelectMany(place => place.Colonies).ToDictionary(colony => colony.Id, colony => colony.Name);
        return RoundSheet.Write(round, id => apiaries[id], id => colonies[id], knowledge, culture);
    }

    private static ulong SeedOf(string? text, Surroundings around)
    {
        if (text is null)
            return around.NewSeed();
        return ulong.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var seed)
            ? seed
            : throw UsageException.OfValue("--seed", text, RoundCommandTexts.FormatSeedRange(ulong.MaxValue));
    }

    private static string Author(string text) =>
        NameField.Read(text, out var author) is { } problem ? throw UsageException.OfValue("--author", text, problem) : author;

    private static void Require(IReadOnlyList<Problem> problems)
    {
        if (problems.Where(problem => problem.Gravity == Gravity.Error).ToArray() is { Length: > 0 } errors)
            throw new UsageException(string.Join(" ", errors.Select(error => error.ToString())));
    }

    private static void Write(TextWriter text, DrawOutput draw)
    {
        foreach (var apiary in draw.Apiaries)
        {
            var all = apiary.Chosen.Count + apiary.Reserves.Count;
            text.WriteLine(Plural.Pick(all, RoundCommandTexts.FormatDrawnOf(apiary.Apiary, apiary.Chosen.Count, all)));
            text.WriteLine("  " + RoundCommandTexts.FormatDrawn(string.Join(", ", apiary.Chosen)));
            if (apiary.Reserves.Count > 0)
                text.WriteLine("  " + RoundCommandTexts.FormatReserves(string.Join(", ", apiary.Reserves)));
        }

        text.WriteLine(RoundCommandTexts.FormatReservesRule(draw.Rule));
        text.WriteLine(draw.Kept ? RoundCommandTexts.FormatSeedAgainKept(draw.Seed) : RoundCommandTexts.FormatSeedAgain(draw.Seed));
    }
}
