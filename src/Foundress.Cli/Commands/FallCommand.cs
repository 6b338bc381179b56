using System.CommandLine;
using Foundress.Book.Judging;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Cli.Running;
using Foundress.Knowledge;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress fall</c>: reads one board of natural fall, with no book.</summary>
internal static class FallCommand
{
    internal static Command Make(Surroundings around)
    {
        var knowledge = KnowledgeBase.Load();
        var mites = new Option<string?>("--mites") { Description = "Mites counted on the part of the board that was counted.", HelpName = "N" };
        var days = new Option<string?>("--days") { Description = "Days the board lay.", HelpName = "N" };
        var share = new Option<string?>("--share") { Description = "Per cent of the board counted, spread over all of it. [default: 100]", HelpName = "PERCENT" };
        var broodless = new Option<bool>("--broodless") { Description = "The colony has no brood." };
        var collapsing = new Option<bool>("--collapsing") { Description = "The colony is collapsing." };
        var control = new Option<bool>("--under-control") { Description = "A control was working." };
        var scavengers = new Option<bool>("--scavengers") { Description = "Ants or others reached the board." };
        var lines = OtherCountOptions.Lines(OtherScales.Fall, knowledge);
        var date = CommonOptions.Day("--date", "Day the board was read, for the lines and factors of the season");
        var working = new Option<bool>("--working") { Description = "Show how it was worked out." };
        var json = CommonOptions.Json();
        var command = new Command(
            "fall",
            """
            Read one board of natural fall: mites a day on their own scale, what voids it, and the wide
            range of all mites that published factors leave. It is never turned into mites per 100 bees.

            Examples:
              foundress fall --mites 24 --days 3 --date 2026-07-14 --lines hannover-fall
              foundress fall --mites 8 --days 3 --share 33 --json
            """) { mites, days, share, broodless, collapsing, control, scavengers, lines, date, working, json };
        command.SetAction(parsed =>
        {
            var record = new MiteFallRecord(
                default, CommonOptions.PastDay("--date", parsed.GetValue(date), around),
                OtherCountOptions.Count("--mites", parsed.GetValue(mites), "the mites counted, 0 when none fell"),
                Days(parsed.GetValue(days)), Share(parsed.GetValue(share)),
                Yes(parsed.GetValue(broodless)), Yes(parsed.GetValue(collapsing)), Yes(parsed.GetValue(control)), Yes(parsed.GetValue(scavengers)));
            var settings = new PolicyRecord(FallLines: OtherCountOptions.LinesOf(parsed.GetValue(lines), OtherScales.Fall, knowledge));
            var reading = OtherCountOptions.Reader(settings, knowledge, around).Read(record, apiary: null);
            return OtherCountOptions.Answer(reading, parsed.GetValue(json), parsed.GetValue(working), around);
        });
        return command;
    }

    private static bool? Yes(bool given) => given ? true : null;

    private static double Days(string? text)
    {
        const string Fix = "Write the days as a number above 0 and up to 60, with a decimal point.";
        if (text is null)
            throw new UsageException("--days is missing: give the days the board lay.");
        var days = OtherCountOptions.Number("--days", text, Fix);
        return days is > 0 and <= OtherCountRules.MostDays ? days : throw new UsageException($"--days '{text}': {Fix}");
    }

    private static double? Share(string? text)
    {
        const string Fix = "Write the per cent of the board that was counted, above 0 and up to 100.";
        if (text is null)
            return null;
        var share = OtherCountOptions.Number("--share", text, Fix) / 100;
        return share is > 0 and <= 1 ? share : throw new UsageException($"--share '{text}': {Fix}");
    }
}
