using Foundress.Book.Records;
using Foundress.Book.State;

namespace Foundress.Book.Rules;

/// <summary>Rules for what happens to a colony's queen, bees and brood.</summary>
internal static class HiveRules
{
    /// <summary>A caging longer ago than this was ended by something the book does not say (product choice).</summary>
    private const int LongestCage = 60;

    internal static void Check(QueenRecord record, BookState state, DateOnly today, Findings findings)
    {
        var colony = RecordRules.Known(record.Colony, "colony", state, findings);
        findings.Day("on", record.On, today);
        RecordRules.LivesOn(colony, "on", record.On, findings);
        if (!Enum.IsDefined(record.Event))
            findings.Error("event", (int)record.Event, RuleTexts.FormatQueenEventUnknown((int)record.Event, string.Join(", ", Enum.GetNames<QueenEvent>())));
        findings.Range("shareOfBees", record.ShareOfBees, 0, 1, QuantityTexts.ShareOfBees);
        if (record is { ShareOfBees: not null, Event: not QueenEvent.Swarmed })
            findings.Error("shareOfBees", record.ShareOfBees, RuleTexts.SwarmShareOnly);
        if (record.Event == QueenEvent.Released && !IsCaged(record, state))
            findings.Doubt("event", record.Event, RuleTexts.FormatNoCaging(LongestCage, Findings.Show(record.On)));
        if (state.HappeningsOf(record.Colony).Any(other => other.Facts is QueenRecord queen && queen.On == record.On && queen.Event == record.Event))
            findings.Doubt("on", record.On, RuleTexts.FormatHappenedAlready(Findings.Show(record.On)));
        findings.Text("note", record.Note, 2000);
    }

    internal static void Check(ColonyBegan record, BookState state, DateOnly today, Findings findings)
    {
        var colony = RecordRules.Known(record.Colony, "colony", state, findings);
        findings.Day("on", record.On, today);
        RecordRules.LivesOn(colony, "on", record.On, findings);
        if (!Enum.IsDefined(record.As))
            findings.Error("as", (int)record.As, RuleTexts.FormatBeginningUnknown((int)record.As, string.Join(", ", Enum.GetNames<ColonyBeginning>())));
        findings.Range("kilogramsOfBees", record.KilogramsOfBees, 0.1, 10, QuantityTexts.KilogramsOfBees);
        findings.Range("framesOfBees", record.FramesOfBees, 0, InspectionRules.MostFrames, QuantityTexts.FramesOfBees);
        findings.Range("framesOfBrood", record.FramesOfBrood, 0, InspectionRules.MostFrames, QuantityTexts.FramesOfBrood);
        if (record is { As: ColonyBeginning.Package or ColonyBeginning.Swarm, FramesOfBrood: > 0 })
            findings.Doubt("framesOfBrood", record.FramesOfBrood, RuleTexts.PackageWithBrood);
        if (colony?.SplitFrom is not null)
            findings.Doubt("as", record.As, RuleTexts.FormatMadeBySplit(colony.Name));
        if (state.HappeningsOf(record.Colony).FirstOrDefault(other => other.On < record.On && other.Facts is QueenRecord or BroodRemoved) is { } earlier)
            findings.Doubt("on", record.On, RuleTexts.FormatBeforeItBegan(Findings.Show(earlier.On)));
        findings.Text("note", record.Note, 2000);
    }

    internal static void Check(BroodRemoved record, BookState state, DateOnly today, Findings findings)
    {
        var colony = RecordRules.Known(record.Colony, "colony", state, findings);
        findings.Day("on", record.On, today);
        RecordRules.LivesOn(colony, "on", record.On, findings);
        if (!Enum.IsDefined(record.Brood))
            findings.Error("brood", (int)record.Brood, RuleTexts.FormatBroodKindUnknown((int)record.Brood, string.Join(", ", Enum.GetNames<RemovedBrood>())));
        if (record.Share is not (> 0 and <= 1))
            findings.Error("share", record.Share, RuleTexts.FormatBroodShare(Findings.Show(record.Share)));
        findings.Text("note", record.Note, 2000);
    }

    private static bool IsCaged(QueenRecord record, BookState state) => state.HappeningsOf(record.Colony)
        .Any(other => other.Facts is QueenRecord { Event: QueenEvent.Caged or QueenEvent.Introduced } && other.On <= record.On && other.On >= record.On.AddDays(-LongestCage));
}
