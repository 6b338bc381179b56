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
            findings.Error("mites", record.Mites, JarRuleTexts.FormatMitesNumber(record.Mites, JarLimits.MostMites));
        if (!(record.Days is > 0 and <= MostDays))
            findings.Error("days", record.Days, JarRuleTexts.FormatBoardDays(Findings.Show(record.Days), Findings.Show(MostDays)));
        else if (record.Days < 1)
            findings.Doubt("days", record.Days, JarRuleTexts.FormatBoardShort(Findings.Show(record.Days)));
        if (record.ShareCounted is { } share && !(share is > 0 and <= 1))
            findings.Error("shareCounted", share, JarRuleTexts.FormatBoardShare(Findings.Show(share)));
        findings.Text("note", record.Note, 2000);
        if (state.FallsOf(record.Colony).Any(fall => fall.Facts.On == record.On && fall.Facts.Mites == record.Mites && fall.Facts.Days == record.Days))
            findings.Doubt("on", record.On, JarRuleTexts.FallTwin);
    }

    internal static void Check(OpenedBroodRecord record, BookState state, DateOnly today, Findings findings)
    {
        RecordRules.LivesOn(RecordRules.Known(record.Colony, "colony", state, findings), "on", record.On, findings);
        findings.Day("on", record.On, today);
        if (record.Cells is < 1 or > MostCells)
            findings.Error("cells", record.Cells, JarRuleTexts.FormatCellsNumber(record.Cells, MostCells));
        else if (record.Infested < 0 || record.Infested > record.Cells)
            findings.Error("infested", record.Infested, JarRuleTexts.FormatInfestedNumber(record.Infested, record.Cells));
        else if (record.Mites is { } mites && (mites < record.Infested || mites > JarLimits.MostMites || (record.Infested == 0 && mites > 0)))
            findings.Error("mites", mites, JarRuleTexts.FormatMitesUnfit(mites, record.Infested));
        else if (record.Cells < FewCells)
            findings.Doubt("cells", record.Cells, JarRuleTexts.FormatFewCells(record.Cells));
        findings.Text("note", record.Note, 2000);
        if (state.BroodOf(record.Colony).Any(known => known.Facts with { Note = null } == record with { Note = null }))
            findings.Doubt("on", record.On, JarRuleTexts.BroodTwin);
    }
}
