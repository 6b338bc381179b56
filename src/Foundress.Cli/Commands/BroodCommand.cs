using System.CommandLine;
using System.Globalization;
using Foundress.Book.Judging;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Cli.Running;
using Foundress.Knowledge;
using Foundress.Science.Estimation;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress brood</c>: reads one opening of brood cells, with no book.</summary>
internal static class BroodCommand
{
    internal static Command Make(Surroundings around)
    {
        var knowledge = KnowledgeBase.Load();
        var kind = new Option<string>("--kind") { Description = "Which brood was opened.", HelpName = "drone|worker", DefaultValueFactory = _ => "drone" };
        kind.AcceptOnlyFromAmong("drone", "worker");
        var cells = new Option<string?>("--cells") { Description = "Capped cells opened.", HelpName = "N" };
        var infested = new Option<string?>("--infested") { Description = "Cells with at least one mother mite.", HelpName = "N" };
        var mites = new Option<string?>("--mites") { Description = "Mother mites in all cells, when they were counted.", HelpName = "N" };
        var lines = OtherCountOptions.Lines(OtherScales.DroneCells, knowledge);
        var date = CommonOptions.Day("--date", "Day the cells were opened");
        var working = new Option<bool>("--working") { Description = "Show how it was worked out." };
        var json = CommonOptions.Json();
        var command = new Command(
            "brood",
            """
            Read opened brood cells: share of cells infested with its interval, worker and drone brood
            each on a scale of its own. It is never turned into mites per 100 bees.

            Examples:
              foundress brood --cells 100 --infested 12 --mites 15 --lines uk-drone-brood
              foundress brood --kind worker --cells 200 --infested 9 --json
            """) { kind, cells, infested, mites, lines, date, working, json };
        command.SetAction(parsed =>
        {
            var brood = parsed.GetValue(kind) == "worker" ? BroodKind.Worker : BroodKind.Drone;
            var scale = brood == BroodKind.Worker ? OtherScales.WorkerCells : OtherScales.DroneCells;
            var record = Checked(new OpenedBroodRecord(
                default, CommonOptions.PastDay("--date", parsed.GetValue(date), around), brood,
                OtherCountOptions.Count("--cells", parsed.GetValue(cells), "the cells opened"),
                OtherCountOptions.Count("--infested", parsed.GetValue(infested), "the cells with a mother mite, 0 when none had one"),
                parsed.GetValue(mites) is { } text ? OtherCountOptions.Count("--mites", text, "the mother mites") : null));
            var chosen = OtherCountOptions.LinesOf(parsed.GetValue(lines), scale, knowledge);
            var settings = brood == BroodKind.Worker ? new PolicyRecord(WorkerLines: chosen) : new PolicyRecord(DroneLines: chosen);
            var reading = OtherCountOptions.Reader(settings, knowledge, around).Read(record, apiary: null);
            return OtherCountOptions.Answer(reading, parsed.GetValue(json), parsed.GetValue(working), around);
        });
        return command;
    }

    private static OpenedBroodRecord Checked(OpenedBroodRecord record)
    {
        if (record.Cells is < 1 or > OtherCountRules.MostCells)
            throw new UsageException(Invariant($"--cells '{record.Cells}': Write a whole number from 1 to {OtherCountRules.MostCells}."));
        if (record.Infested > record.Cells)
            throw new UsageException(Invariant($"--infested '{record.Infested}': of {record.Cells} cells no more can be infested."));
        if (record.Mites is { } mites && (mites < record.Infested || (record.Infested == 0 && mites > 0)))
            throw new UsageException(Invariant($"--mites '{mites}': does not fit {record.Infested} infested cells: each holds at least one mother mite, and the others none."));
        return record;
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
