using System.CommandLine;
using System.Globalization;
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
        var method = CommonOptions.Method();
        var design = new Option<bool>("--design") { Description = "Also what 3, 5, 8, 12 and all colonies would buy: precision, finding one over the line, wrong decisions." };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command(
            "plan",
            """
            How many colonies to sample in each apiary, and when jars are due.

            Examples:
              foundress plan --apiary Home=12 --apiary Hill=30
              foundress plan --apiary Hill=40 --design
              foundress plan --on 2026-08-01 --json
            """) { apiary, on, method, design, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var knowledge = KnowledgeBase.Load();
            var day = CommonOptions.PlannedDay("--on", parsed.GetValue(on), around);
            var given = ApiaryArgument.ReadAll(parsed.GetValue(apiary) ?? []);
            var methodId = CommonOptions.MethodOf(parsed.GetValue(method));
            var designed = parsed.GetValue(design);
            var output = given.Any(one => one.Colonies is not null)
                ? Of(BareProposal.Of(given, new RoundPlanner(BookState.Empty, knowledge)), day, _ => null, DesignerOf(BookState.Empty))
                : await OfBookAsync();
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, output);
            else
                Write(around.Out, output);
            return ExitCodes.Fine;

            async Task<PlanOutput> OfBookAsync()
            {
                using var book = await BookAccess.OpenExistingAsync(
                    CommonOptions.PlaceOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, around, cancellation);
                var state = book.Ledger.State;
                var proposal = new RoundPlanner(state, knowledge).Propose(ApiaryArgument.Find(given, state), day);
                return Of(proposal, day, place => DueDates.Next(place, state, knowledge, around.Today), DesignerOf(state));
            }

            Func<ApiaryProposal, RoundDesign?> DesignerOf(BookState state)
            {
                var designer = new RoundDesigner(state, knowledge, CultureInfo.InvariantCulture);
                return place => designed && place.Take > 0 ? designer.Of(place.Apiary, place.Colonies.Count, place.Take, day, methodId) : null;
            }
        });
        return command;
    }

    private static PlanOutput Of(RoundProposal proposal, DateOnly day, Func<Apiary, DueMark?> due, Func<ApiaryProposal, RoundDesign?> design) => new(
        day, proposal.Jars, proposal.Rule,
        [.. proposal.Apiaries.Select(place => new PlanApiary(place.Apiary.Name, place.Colonies.Count, place.Take, due(place.Apiary), design(place) is { } bought ? PlanDesign.Of(bought) : null))]);

    private static void Write(TextWriter text, string apiary, PlanDesign design)
    {
        text.WriteLine();
        text.WriteLine($"{apiary}: what a number of jars buys (line {Say.Line(design.Line, CultureInfo.InvariantCulture)} per 100; colonies' spread {design.ShapeBasis})");
        text.WriteLine("  colonies  mean within  finds one over  misses a harmful level  acts in vain");
        foreach (var row in design.Rows)
            text.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {row.Colonies,8}  {196 * row.RelativeError,9:0} %  {100 * row.FindsOne,12:0} %  {100 * row.WaitsTooLong,20:0} %  {100 * row.ActsInVain,10:0} %"));
        text.WriteLine("  " + design.Sentence);
        text.WriteLine();
    }

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

        foreach (var apiary in plan.Apiaries.Where(apiary => apiary.Design is not null))
            Write(text, apiary.Apiary, apiary.Design!);
        text.WriteLine($"{Say.Count(plan.Jars, "jar", "jars")} on {Say.Day(plan.On)}. {plan.Rule}");
    }
}
