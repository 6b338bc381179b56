using Foundress.Book.Records;
using Foundress.Book.State;

namespace Foundress.Book.Rules;

internal static class InspectionRules
{
    /// <summary>More frames than any single colony's hive holds: beyond it a typing slip is certain (product choice).</summary>
    internal const double MostFrames = 60;

    internal static void Check(InspectionRecord record, BookState state, DateOnly today, Findings findings)
    {
        var colony = RecordRules.Known(record.Colony, "colony", state, findings);
        findings.Day("on", record.On, today);
        RecordRules.LivesOn(colony, "on", record.On, findings);
        findings.Range("framesOfBees", record.FramesOfBees, 0, MostFrames, QuantityTexts.FramesOfBees);
        findings.Range("framesOfBrood", record.FramesOfBrood, 0, MostFrames, QuantityTexts.FramesOfBrood);
        if (record.FramesOfBrood > record.FramesOfBees)
            findings.Doubt("framesOfBrood", record.FramesOfBrood, RuleTexts.MoreBroodThanBees);
        if (record is { FramesOfBees: null, FramesOfBrood: null, QueenSeen: null, SupersOn: null, Clustered: null } && string.IsNullOrWhiteSpace(record.Note))
            findings.Error("note", null, RuleTexts.InspectionEmpty);
        findings.Text("note", record.Note, 2000);
    }
}
