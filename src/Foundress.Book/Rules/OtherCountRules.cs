using Foundress.Book.Records;
using Foundress.Book.State;

namespace Foundress.Book.Rules;

/// <summary>Rules for counts on other scales than mites per 100 bees.</summary>
public static class OtherCountRules
{
    /// <summary>The longest a board lies; the estimators take no longer.</summary>
    public const double MostDays = 60;

    /// <summary>More cells than anybody opens at once: beyond it a typing slip is certain (product choice).</summary>
    public const int MostCells = 5_000;

    /// <summary>Fewer cells than this say next to nothing (product choice).</summary>
    public const int FewCells = 30;

    internal static void Check(MiteFallRecord record, BookState state, DateOnly today, Findings findings)
    {
        RecordRules.LivesOn(RecordRules.Known(record.Colony, "colony", state, findings), "on", record.On, findings);
        findings.Day("on", record.On, today);
        if (record.Mites is < 0 or > JarLimits.MostMites)
            findings.Error("mites", record.Mites, $"{record.Mites} is not a count of mites. Give a whole number from 0 to {JarLimits.MostMites}.");
        if (!(record.Days is > 0 and <= MostDays))
            findings.Error("days", record.Days, $"{Findings.Show(record.Days)} is not a time a board lies. Give the days, above 0 and at most {MostDays}.");
        else if (record.Days < 1)
            findings.Doubt("days", record.Days, $"A board of {Findings.Show(record.Days)} days says little: single days swing. Three days or more are usual.");
        if (record.ShareCounted is { } share && !(share is > 0 and <= 1))
            findings.Error("shareCounted", share, $"{Findings.Show(share)} is not a share of the board. Give a share above 0 and at most 1 (100 per cent), or leave it out for the whole board.");
        findings.Text("note", record.Note, 2000);
        if (state.FallsOf(record.Colony).Any(fall => fall.Facts.On == record.On && fall.Facts.Mites == record.Mites && fall.Facts.Days == record.Days))
            findings.Doubt("on", record.On, "The book already has this very fall for this colony and day. Keep it only if two boards gave the same counts.");
    }

    internal static void Check(OpenedBroodRecord record, BookState state, DateOnly today, Findings findings)
    {
        RecordRules.LivesOn(RecordRules.Known(record.Colony, "colony", state, findings), "on", record.On, findings);
        findings.Day("on", record.On, today);
        if (record.Cells is < 1 or > MostCells)
            findings.Error("cells", record.Cells, $"{record.Cells} is not a number of opened cells. Give a whole number from 1 to {MostCells}.");
        else if (record.Infested < 0 || record.Infested > record.Cells)
            findings.Error("infested", record.Infested, $"{record.Infested} of {record.Cells} cells cannot be infested. Give a whole number from 0 to {record.Cells}.");
        else if (record.Mites is { } mites && (mites < record.Infested || mites > JarLimits.MostMites || (record.Infested == 0 && mites > 0)))
            findings.Error("mites", mites, $"{mites} mites do not fit {record.Infested} infested cells: each holds at least one mother mite, and the others none. Count again, or leave the mites out.");
        else if (record.Cells < FewCells)
            findings.Doubt("cells", record.Cells, $"Only {record.Cells} cells: the interval will be very wide. A hundred or more are usual.");
        findings.Text("note", record.Note, 2000);
        if (state.BroodOf(record.Colony).Any(known => known.Facts with { Note = null } == record with { Note = null }))
            findings.Doubt("on", record.On, "The book already has this very count for this colony and day. Keep it only if cells were opened twice with the same counts.");
    }
}
