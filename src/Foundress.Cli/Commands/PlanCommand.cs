using System.CommandLine;
using Foundress.Book.Rounds;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Cli.Output;
using Foundress.Cli.Running;
using Foundress.Knowledge;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress plan</c>: how many colonies to sample, and when jars are due.</summary>
internal static class PlanCommand
{
    internal static Command Make(Surroundings around)
    {
        var apiary = new Option<string[]>("--apiary") { Description = "An apiary of the book (Home), or one with so many colonies and no book (Home=12). May be repeated. Without it: all of the book.", HelpName = "NAME[=N]" };
        var on = CommonOptions.Day("--on", "Day of the round");
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command(
            "plan",
            """
            How many colonies to sample in each apiary, and when jars are due.

            Examples:
              foundress plan --apiary Home=12 --apiary Hill=30
              foundress plan --on 2026-08-01 --json
            """) { apiary, on, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var knowledge = KnowledgeBase.Load();
            var day = CommonOptions.PlannedDay("--on", parsed.GetValue(on), around);
            var given = ApiaryArgument.ReadAll(parsed.GetValue(apiary) ?? []);
            var output = given.Any(one => one.Colonies is not null)
                ? Of(BareProposal.Of(given, new RoundPlanner(BookState.Empty, knowledge)), day, _ => null)
                : await OfBookAsync();
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, output);
            else
                Write(around.Out, output);
            return ExitCodes.Fine;

            async Task<PlanOutput> OfBookAsync()
            {
                using var book = await BookAccess.OpenExistingAsync(
                    CommonOptions.DirectoryOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, around, cancellation);
                var state = book.Ledger.State;
                var proposal = new RoundPlanner(state, knowledge).Propose(ApiaryArgument.Find(given, state), day);
                return Of(proposal, day, place => DueDates.Next(place, state, knowledge, around.Today));
            }
        });
        return command;
    }

    private static PlanOutput Of(RoundProposal proposal, DateOnly day, Func<Apiary, DueMark?> due) => new(
        day, proposal.Jars, proposal.Rule,
        [.. proposal.Apiaries.Select(place => new PlanApiary(place.Apiary.Name, place.Colonies.Count, place.Take, due(place.Apiary)))]);

    private static void Write(TextWriter text, PlanOutput plan)
    {
        if (plan.Apiaries.Count == 0)
        {
            text.WriteLine("No apiary of the book has a living colony on that day: there is nothing to sample.");
            return;
        }

        foreach (var apiary in plan.Apiaries)
        {
            text.WriteLine($"{apiary.Apiary}: {apiary.Take} of {Say.Count(apiary.Colonies, "colony", "colonies")}.");
            if (apiary.Due is { } due)
                text.WriteLine($"  Due around {Say.Day(due.On)} ({Say.Day(due.From)} to {Say.Day(due.To)}): {due.Text}");
        }

        text.WriteLine($"{Say.Count(plan.Jars, "jar", "jars")} on {Say.Day(plan.On)}. {plan.Rule}");
    }
}
