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
        var mites = new Option<string?>("--mites") { Description = CountCommandTexts.FallMites, HelpName = "N" };
        var days = new Option<string?>("--days") { Description = CountCommandTexts.FallDays, HelpName = "N" };
        var share = new Option<string?>("--share") { Description = CountCommandTexts.FallShare, HelpName = SharedTexts.WordPercent };
        var broodless = new Option<bool>("--broodless") { Description = CountCommandTexts.FallBroodless };
        var collapsing = new Option<bool>("--collapsing") { Description = CountCommandTexts.FallCollapsing };
        var control = new Option<bool>("--under-control") { Description = CountCommandTexts.FallUnderControl };
        var scavengers = new Option<bool>("--scavengers") { Description = CountCommandTexts.FallScavengers };
        var lines = OtherCountOptions.Lines(OtherScales.Fall, knowledge);
        var date = CommonOptions.Day("--date", CountCommandTexts.FallDate);
        var working = CommonOptions.Working();
        var json = CommonOptions.Json();
        var command = new Command("fall", CountCommandTexts.Fall) { mites, days, share, broodless, collapsing, control, scavengers, lines, date, working, json };
        command.SetAction(parsed =>
        {
            var record = new MiteFallRecord(
                default, CommonOptions.PastDay("--date", parsed.GetValue(date), around),
                OtherCountOptions.Count("--mites", parsed.GetValue(mites) ?? throw new UsageException(CountCommandTexts.FallMitesMissing)),
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
        if (text is null)
            throw new UsageException(CountCommandTexts.FallDaysMissing);
        var days = OtherCountOptions.Number("--days", text, CountCommandTexts.FallDaysRange);
        return days is > 0 and <= OtherCountRules.MostDays ? days : throw UsageException.OfValue("--days", text, CountCommandTexts.FallDaysRange);
    }

    private static double? Share(string? text)
    {
        if (text is null)
            return null;
        var share = OtherCountOptions.Number("--share", text, CountCommandTexts.FallShareRange) / 100;
        return share is > 0 and <= 1 ? share : throw UsageException.OfValue("--share", text, CountCommandTexts.FallShareRange);
    }
}
