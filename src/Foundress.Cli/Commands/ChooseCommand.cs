using System.CommandLine;
using System.Globalization;
using Foundress.Book.Choosing;
using Foundress.Book.Importing;
using Foundress.Book.Journal;
using Foundress.Book.Planning;
using Foundress.Book.State;
using Foundress.Cli.Output;
using Foundress.Cli.Running;
using Foundress.Knowledge;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress choose</c>: which controls can be used on a day and why the others cannot, and plans of them.</summary>
internal static class ChooseCommand
{
    internal static Command Make(Surroundings around)
    {
        var apiary = new Option<string[]>("--apiary") { Description = "An apiary of the book. May be left out when there is only one.", HelpName = "NAME" };
        var colony = new Option<string[]>("--colony") { Description = "A colony of the apiary. May be repeated. Without it: all of them.", HelpName = "NAME" };
        var on = CommonOptions.Day("--on", "The day a control would start");
        var search = new Option<bool>("--search") { Description = "Search plans of up to three controls from today on." };
        var tolerance = new Option<double?>("--tolerance") { Description = "The chance of standing over the line that is borne, 0.01 to 0.5. Without it: the keeper's setting.", HelpName = "CHANCE" };
        var days = new Option<int>("--days") { Description = "Days a plan looks ahead, 56 to 366.", HelpName = "N", DefaultValueFactory = _ => new PlanOptions().Ahead };
        var harvest = new Option<string?>("--harvest") { Description = "The day supers come off (yyyy-MM-dd).", HelpName = "DAY" };
        var supers = new Option<string?>("--supers") { Description = "The day supers go on next (yyyy-MM-dd).", HelpName = "DAY" };
        var supersOn = YesNo("--supers-on", "Whether supers are on today: yes or no. Without it: what the book says.");
        var brood = YesNo("--sealed-brood", "Whether there is sealed brood today: yes or no. Without it: what the book says.");
        var cluster = YesNo("--clustered", "Whether the bees sit in the winter cluster today: yes or no. Without it: what the book says, or the season.");
        var seed = new Option<ulong>("--seed") { Description = "Seed: the same book, day and seed give the same plans.", HelpName = "N", DefaultValueFactory = _ => 1UL };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command(
            "choose",
            """
            Which controls can be used on a day, and why each of the others cannot. With --search also plans of up to three
            controls that keep the chance of standing over the line within a tolerance, to choose from.

            It informs and never prescribes: the label, local law and licensed practice decide.

            Example:
              foundress choose --apiary Home --on 2026-08-05 --search --tolerance 0.2
            """) { apiary, colony, on, search, tolerance, days, harvest, supers, supersOn, brood, cluster, seed, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var start = CommonOptions.PlannedDay("--on", parsed.GetValue(on), around);
            if (start < around.Today)
                throw new UsageException($"--on '{start:yyyy-MM-dd}': this day has passed. Give today ({around.Today:yyyy-MM-dd}) or a later day.");
            if (parsed.GetValue(tolerance) is { } borne && borne is not (>= 0.01 and <= 0.5))
                throw new UsageException(string.Create(CultureInfo.InvariantCulture, $"--tolerance '{borne}': write a chance from 0.01 to 0.5, for example 0.2."));
            if (parsed.GetValue(days) is var ahead && ahead is < 56 or > 366)
                throw new UsageException($"--days '{ahead}': write a whole number from 56 to 366.");
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
            var planner = new ControlPlanner(state, KnowledgeBase.Load(), CultureInfo.InvariantCulture);
            var found = new ChooseOutput(
                place.Name, start, [.. planner.Offers(place, start, options).Select(ChooseControl.Of)],
                parsed.GetValue(search) ? planner.Of(place, around.Today, options, cancellation) : null);
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, found);
            else
                ChooseText.Write(around.Out, found);
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
            throw new UsageException($"--apiary '{numbered.Name}={numbered.Colonies}': name an apiary of the book, without a number of colonies.");
        var found = ApiaryArgument.Find(named, state);
        return found.Count switch
        {
            1 => found[0],
            0 => throw new UsageException("The book has no apiary yet. Register one in the app or import jars first."),
            _ => throw new UsageException($"--apiary: choose one of {string.Join(", ", state.ApiariesByName.Select(one => one.Name))}."),
        };
    }

    private static IReadOnlyList<ColonyId>? Colonies(string[] given, Apiary apiary, BookState state, DateOnly today)
    {
        if (given.Length == 0)
            return null;
        var living = state.ColoniesIn(apiary.Id, today);
        return [.. given.Select(name => living.FirstOrDefault(one => NameField.Key(one.Name) == NameField.Key(name))?.Id
            ?? throw new UsageException($"--colony '{name}': {apiary.Name} has no such living colony. It has: {string.Join(", ", living.Select(one => one.Name))}."))];
    }

    private static DateOnly? Optional(string option, string? text, Surroundings around) => text is null ? null : CommonOptions.PlannedDay(option, text, around);
}
