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
        var apiary = new Option<string[]>("--apiary") { Description = RoundCommandTexts.PlanApiary, HelpName = "NAME[=N]" };
        var on = CommonOptions.Day("--on", RoundCommandTexts.PlanOn);
        var method = CommonOptions.Method();
        var design = new Option<bool>("--design") { Description = RoundCommandTexts.PlanDesign };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command("plan", RoundCommandTexts.Plan) { apiary, on, method, design, data, operation, json };
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
                Write(around.Out, output, around.Culture);
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
                var designer = new RoundDesigner(state, knowledge, around.Culture);
                return place => designed && place.Take > 0 ? designer.Of(place.Apiary, place.Colonies.Count, place.Take, day, methodId) : null;
            }
        });
        return command;
    }

    private static PlanOutput Of(RoundProposal proposal, DateOnly day, Func<Apiary, DueMark?> due, Func<ApiaryProposal, RoundDesign?> design) => new(
        day, proposal.Jars, proposal.Rule,
        [.. proposal.Apiaries.Select(place => new PlanApiary(place.Apiary.Name, place.Colonies.Count, place.Take, due(place.Apiary), design(place) is { } bought ? PlanDesign.Of(bought) : null))]);

    private static void Write(TextWriter text, string apiary, PlanDesign design, CultureInfo culture)
    {
        text.WriteLine();
        text.WriteLine(RoundCommandTexts.FormatDesignOf(apiary, Say.Line(design.Line, culture), design.ShapeBasis));
        TextTable.Write(
            text, indent: 2, gap: 2,
            [RoundCommandTexts.HeadColonies, RoundCommandTexts.HeadMeanWithin, RoundCommandTexts.HeadFindsOne, RoundCommandTexts.HeadMisses, RoundCommandTexts.HeadActsInVain],
            design.Rows.Select(row => (string[])[row.Colonies.ToString(culture), Whole(196 * row.RelativeError), Whole(100 * row.FindsOne), Whole(100 * row.WaitsTooLong), Whole(100 * row.ActsInVain)]));
        text.WriteLine("  " + design.Sentence);
        text.WriteLine();

        string Whole(double percent) => percent.ToString("0", culture) + " %";
    }

    private static void Write(TextWriter text, PlanOutput plan, CultureInfo culture)
    {
        if (plan.Apiaries.Count == 0)
        {
            text.WriteLine(RoundCommandTexts.NothingToSample);
            return;
        }

        foreach (var apiary in plan.Apiaries)
        {
            text.WriteLine(Plural.Pick(apiary.Colonies, RoundCommandTexts.FormatTakeOf(apiary.Apiary, apiary.Take, apiary.Colonies)));
            if (apiary.Due is { } due)
                text.WriteLine("  " + RoundCommandTexts.FormatDueAround(Say.Day(due.On), Say.Day(due.From), Say.Day(due.To), due.Text));
        }

        foreach (var apiary in plan.Apiaries.Where(apiary => apiary.Design is not null))
            Write(text, apiary.Apiary, apiary.Design!, culture);
        text.WriteLine(RoundCommandTexts.FormatJarsOn(Say.Jars(plan.Jars), Say.Day(plan.On), plan.Rule));
    }
}
