using System.CommandLine;
using System.Globalization;
using Foundress.Book.Choosing;
using Foundress.Book.Importing;
using Foundress.Book.Journal;
using Foundress.Book.Planning;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Cli.Output;
using Foundress.Cli.Running;
using Foundress.Knowledge;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress choose</c>: which controls can be used on a day and why the others cannot, and plans of them.</summary>
internal static class ChooseCommand
{
    internal static Command Make(Surroundings around)
    {
        var apiary = new Option<string[]>("--apiary") { Description = ChooseCommandTexts.Apiary, HelpName = "NAME" };
        var colony = new Option<string[]>("--colony") { Description = ChooseCommandTexts.Colony, HelpName = "NAME" };
        var on = CommonOptions.Day("--on", ChooseCommandTexts.On);
        var search = new Option<bool>("--search") { Description = ChooseCommandTexts.Search };
        var tolerance = new Option<double?>("--tolerance") { Description = ChooseCommandTexts.Tolerance, HelpName = SharedTexts.WordChance };
        var days = new Option<int>("--days") { Description = ChooseCommandTexts.Days, HelpName = "N", DefaultValueFactory = _ => new PlanOptions().Ahead };
        var harvest = new Option<string?>("--harvest") { Description = ChooseCommandTexts.Harvest, HelpName = SharedTexts.WordDay };
        var supers = new Option<string?>("--supers") { Description = ChooseCommandTexts.Supers, HelpName = SharedTexts.WordDay };
        var supersOn = YesNo("--supers-on", ChooseCommandTexts.SupersOn);
        var brood = YesNo("--sealed-brood", ChooseCommandTexts.SealedBrood);
        var cluster = YesNo("--clustered", ChooseCommandTexts.Clustered);
        var seed = new Option<ulong>("--seed") { Description = ChooseCommandTexts.Seed, HelpName = "N", DefaultValueFactory = _ => 1UL };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command("choose", ChooseCommandTexts.Description) { apiary, colony, on, search, tolerance, days, harvest, supers, supersOn, brood, cluster, seed, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var start = CommonOptions.PlannedDay("--on", parsed.GetValue(on), around);
            if (start < around.Today)
                throw UsageException.OfValue("--on", Say.IsoDay(start), ChooseCommandTexts.FormatDayHasPassed(Say.Day(around.Today)));
            if (parsed.GetValue(tolerance) is { } borne && borne is not (>= 0.01 and <= 0.5))
                throw UsageException.OfValue("--tolerance", borne.ToString(CultureInfo.InvariantCulture), ChooseCommandTexts.ToleranceRange);
            if (parsed.GetValue(days) is var ahead && ahead is < 56 or > 366)
                throw UsageException.OfValue("--days", ahead, BookCommandTexts.FormatDaysRange(56, 366));
            using var book = await BookAccess.OpenExistingAsync(CommonOptions.PlaceOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, around, cancellation);
            var state = book.Ledger.State;
            var place = state.Apiaries[One(parsed.GetValue(apiary) ?? [], state)];
            var options = new PlanOptions
            {
                Ahead = ahead,
                Tolerance = parsed.GetValue(tolerance),
                Seed = parsed.GetValue(seed),
                HarvestOn = Optional("--harvest", parsed.GetValue(harvest), around),
                SupersDue = Optional("--supers", parsed.GetValue(supers), around),
                Said = new SaidOfColonies(
                    around.Today, Answer(parsed.GetValue(supersOn)), Answer(parsed.GetValue(brood)) is { } sealedBrood ? sealedBrood ? BroodState.Some : BroodState.None : null,
                    Answer(parsed.GetValue(cluster))),
                Colonies = Colonies(parsed.GetValue(colony) ?? [], place, state, around.Today),
            };
            var planner = new ControlPlanner(state, KnowledgeBase.Load(), around.Culture);
            var found = new ChooseOutput(
                place.Name, start, [.. planner.Offers(place, start, options).Select(ChooseControl.Of)],
                parsed.GetValue(search) ? planner.Of(place, around.Today, options, cancellation) : null);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, found);
            else
                ChooseText.Write(around.Out, found, around.Culture);
            return ExitCodes.Fine;
        });
        return command;
    }

    private static Option<string?> YesNo(string name, string description)
    {
        var option = new Option<string?>(name) { Description = description, HelpName = "yes|no" };
        option.AcceptOnlyFromAmong("yes", "no");
        return option;
    }

    private static bool? Answer(string? said) => said is null ? null : said == "yes";

    private static ApiaryId One(string[] given, BookState state)
    {
        var named = ApiaryArgument.ReadAll(given);
        if (named.FirstOrDefault(one => one.Colonies is not null) is { } numbered)
            throw UsageException.OfValue("--apiary", $"{numbered.Name}={numbered.Colonies}", RoundCommandTexts.NoNumberOfColonies);
        var found = ApiaryArgument.Find(named, state);
        return found.Count switch
        {
            1 => found[0],
            0 => throw new UsageException(ChooseCommandTexts.NoApiary),
            _ => throw new UsageException(ChooseCommandTexts.FormatWhichApiary(string.Join(", ", state.ApiariesByName.Select(one => one.Name)))),
        };
    }

    private static IReadOnlyList<ColonyId>? Colonies(string[] given, Apiary apiary, BookState state, DateOnly today)
    {
        if (given.Length == 0)
            return null;
        var living = state.ColoniesIn(apiary.Id, today);
        return [.. given.Select(name => living.FirstOrDefault(one => NameField.Key(one.Name) == NameField.Key(name))?.Id
            ?? throw UsageException.OfValue("--colony", name, ChooseCommandTexts.FormatNoSuchColony(apiary.Name, string.Join(", ", living.Select(one => one.Name)))))];
    }

    private static DateOnly? Optional(string option, string? text, Surroundings around) => text is null ? null : CommonOptions.PlannedDay(option, text, around);
}
