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
        var apiary = new Option<string[]>("--apiary") { Description = "An apiary of the book (Home), or one with colonies 1 to N and no book (Home=12). May be repeated. Without it: all of the book.", HelpName = "NAME[=N]" };
        var take = new Option<string?>("--take") { Description = "Colonies to take in each apiary. Without it: by the rule of thumb.", HelpName = "N" };
        var seed = new Option<string?>("--seed") { Description = "Seed of the draw: the same seed and colonies give the same draw. Without it a fresh one is taken and printed.", HelpName = "N" };
        var on = CommonOptions.Day("--on", "Day the jars are due");
        var method = CommonOptions.Method();
        var early = new Option<bool>("--early") { Description = "Let the round stop in an apiary as soon as the jars tell a low level from a high one." };
        var sheet = new Option<string?>("--sheet") { Description = "Write a sheet for the clipboard, an HTML page to print.", HelpName = "FILE" };
        var purpose = new Option<string>("--purpose") { Description = "Why the round is done.", HelpName = "TEXT", DefaultValueFactory = _ => "Sampling round" };
        var keep = new Option<bool>("--keep") { Description = "Write the round into the book." };
        var author = new Option<string>("--author") { Description = "Who writes it down, with --keep.", HelpName = "NAME", DefaultValueFactory = _ => "command line" };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command(
            "draw",
            """
            Draw the colonies to sample, with reserves in order. Anyone can repeat the draw from its seed.

            Examples:
              foundress draw --apiary Home=12 --take 8 --seed 42
              foundress draw --apiary Home --on 2026-08-01 --keep
            """) { apiary, take, seed, on, method, purpose, early, sheet, keep, author, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var methodId = CommonOptions.MethodOf(parsed.GetValue(method));
            var day = CommonOptions.PlannedDay("--on", parsed.GetValue(on), around);
            var number = SeedOf(parsed.GetValue(seed), around);
            var given = ApiaryArgument.ReadAll(parsed.GetValue(apiary) ?? []);
            var bare = given.Any(one => one.Colonies is not null);
            if (bare && parsed.GetValue(keep))
                throw new UsageException("--keep: these apiaries are in no book. Name apiaries of the book, without a number of colonies.");
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
                    throw new UsageException("No apiary of the book has a living colony on that day: there is nothing to draw from.");
                round = RoundPlanner.Draw(proposal, new RoundId(ids.Next()), day, methodId, parsed.GetValue(purpose)!, number, EarlyOf(state));
                if (parsed.GetValue(keep))
                {
                    Require(RecordRules.Check(round, state, knowledge, around.Today));
                    await book.Store.AppendAsync(book.Scribe.Operation, [book.Scribe.Write(round)], cancellation);
                }
            }

            if (parsed.GetValue(sheet) is { } file)
                await File.WriteAllTextAsync(file, Sheet(round, proposal, knowledge), cancellation);
            var output = DrawOutput.Of(round, proposal, parsed.GetValue(keep));
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, output);
            else
                Write(around.Out, output);
            return ExitCodes.Fine;

            Func<ApiaryProposal, EarlyStop?>? EarlyOf(BookState state)
            {
                var designer = new RoundDesigner(state, knowledge, CultureInfo.InvariantCulture);
                return parsed.GetValue(early) ? place => designer.EarlyStopOf(place.Apiary, day, methodId) : null;
            }
        });
        return command;
    }

    private static string Sheet(RoundRecord round, RoundProposal proposal, KnowledgeBase knowledge)
    {
        var apiaries = proposal.Apiaries.ToDictionary(place => place.Apiary.Id, place => place.Apiary.Name);
        var colonies = proposal.Apiaries.SelectMany(place => place.Colonies).ToDictionary(colony => colony.Id, colony => colony.Name);
        return RoundSheet.Write(round, id => apiaries[id], id => colonies[id], knowledge, CultureInfo.InvariantCulture);
    }

    private static ulong SeedOf(string? text, Surroundings around)
    {
        if (text is null)
            return around.NewSeed();
        return ulong.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var seed)
            ? seed
            : throw new UsageException($"--seed '{text}': write a whole number from 0 to {ulong.MaxValue}.");
    }

    private static string Author(string text) =>
        NameField.Read(text, out var author) is { } problem ? throw new UsageException($"--author '{text}': {problem}") : author;

    private static void Require(IReadOnlyList<Problem> problems)
    {
        if (problems.Where(problem => problem.Gravity == Gravity.Error).ToArray() is { Length: > 0 } errors)
            throw new UsageException(string.Join(" ", errors.Select(error => error.ToString())));
    }

    private static void Write(TextWriter text, DrawOutput draw)
    {
        foreach (var apiary in draw.Apiaries)
        {
            text.WriteLine($"{apiary.Apiary}, {apiary.Chosen.Count} of {Say.Count(apiary.Chosen.Count + apiary.Reserves.Count, "colony", "colonies")}:");
            text.WriteLine("  take      " + string.Join(", ", apiary.Chosen));
            if (apiary.Reserves.Count > 0)
                text.WriteLine("  reserves  " + string.Join(", ", apiary.Reserves));
        }

        text.WriteLine($"{draw.Rule} A reserve stands in for a colony that cannot be sampled, in this order.");
        text.WriteLine($"Seed {draw.Seed}: the same seed and colonies give this draw again.{(draw.Kept ? " The round is in the book." : string.Empty)}");
    }
}
