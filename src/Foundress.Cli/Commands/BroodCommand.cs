using System.CommandLine;
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
        var kind = new Option<string>("--kind") { Description = CountCommandTexts.BroodKind, HelpName = "drone|worker", DefaultValueFactory = _ => "drone" };
        kind.AcceptOnlyFromAmong("drone", "worker");
        var cells = new Option<string?>("--cells") { Description = CountCommandTexts.BroodCells, HelpName = "N" };
        var infested = new Option<string?>("--infested") { Description = CountCommandTexts.BroodInfested, HelpName = "N" };
        var mites = new Option<string?>("--mites") { Description = CountCommandTexts.BroodMites, HelpName = "N" };
        var lines = OtherCountOptions.Lines(OtherScales.DroneCells, knowledge);
        var date = CommonOptions.Day("--date", CountCommandTexts.BroodDate);
        var working = CommonOptions.Working();
        var json = CommonOptions.Json();
        var command = new Command("brood", CountCommandTexts.Brood) { kind, cells, infested, mites, lines, date, working, json };
        command.SetAction(parsed =>
        {
            var brood = parsed.GetValue(kind) == "worker" ? BroodKind.Worker : BroodKind.Drone;
            var scale = brood == BroodKind.Worker ? OtherScales.WorkerCells : OtherScales.DroneCells;
            var record = Checked(new OpenedBroodRecord(
                default, CommonOptions.PastDay("--date", parsed.GetValue(date), around), brood,
                OtherCountOptions.Count("--cells", parsed.GetValue(cells) ?? throw new UsageException(CountCommandTexts.BroodCellsMissing)),
                OtherCountOptions.Count("--infested", parsed.GetValue(infested) ?? throw new UsageException(CountCommandTexts.BroodInfestedMissing)),
                parsed.GetValue(mites) is { } text ? OtherCountOptions.Count("--mites", text) : null));
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
            throw UsageException.OfValue("--cells", record.Cells, CountCommandTexts.FormatBroodCellsRange(OtherCountRules.MostCells));
        if (record.Infested > record.Cells)
            throw UsageException.OfValue("--infested", record.Infested, CountCommandTexts.FormatBroodTooManyInfested(record.Cells));
        if (record.Mites is { } mites && (mites < record.Infested || (record.Infested == 0 && mites > 0)))
            throw UsageException.OfValue("--mites", mites, CountCommandTexts.FormatBroodMitesDisagree(record.Infested));
        return record;
    }
}
