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
            findings.Error("event", (int)record.Event, $"{(int)record.Event} is nothing that happens to a queen. Use one of: {string.Join(", ", Enum.GetNames<QueenEvent>())}.");
        findings.Range("shareOfBees", record.ShareOfBees, 0, 1, "a share of the bees");
        if (record is { ShareOfBees: not null, Event: not QueenEvent.Swarmed })
            findings.Error("shareOfBees", record.ShareOfBees, "A share of the bees belongs to a swarm only. Leave it out.");
        if (record.Event == QueenEvent.Released && !IsCaged(record, state))
            findings.Doubt("event", record.Event, $"The book has no caging in the {LongestCage} days before {Findings.Show(record.On)}. Check the colony, or write down when she was caged.");
        if (state.HappeningsOf(record.Colony).Any(other => other.Facts is QueenRecord queen && queen.On == record.On && queen.Event == record.Event))
            findings.Doubt("on", record.On, $"The same is already in the book for {Findings.Show(record.On)}. Keep it only if it happened twice.");
        findings.Text("note", record.Note, 2000);
    }

    internal static void Check(ColonyBegan record, BookState state, DateOnly today, Findings findings)
    {
        var colony = RecordRules.Known(record.Colony, "colony", state, findings);
        findings.Day("on", record.On, today);
        RecordRules.LivesOn(colony, "on", record.On, findings);
        if (!Enum.IsDefined(record.As))
            findings.Error("as", (int)record.As, $"{(int)record.As} is no way a colony begins. Use one of: {string.Join(", ", Enum.GetNames<ColonyBeginning>())}.");
        findings.Range("kilogramsOfBees", record.KilogramsOfBees, 0.1, 10, "a weight of bees in kilograms");
        findings.Range("framesOfBees", record.FramesOfBees, 0, InspectionRules.MostFrames, "a number of frames of bees");
        findings.Range("framesOfBrood", record.FramesOfBrood, 0, InspectionRules.MostFrames, "a number of frames of brood");
        if (record is { As: ColonyBeginning.Package or ColonyBeginning.Swarm, FramesOfBrood: > 0 })
            findings.Doubt("framesOfBrood", record.FramesOfBrood, "A package or swarm comes without brood. Leave the frames of brood out, or call it a nucleus.");
        if (colony?.SplitFrom is not null)
            findings.Doubt("as", record.As, $"The book says that colony {colony.Name} was made from another by a split. Check the colony.");
        if (state.HappeningsOf(record.Colony).FirstOrDefault(other => other.On < record.On && other.Facts is QueenRecord or BroodRemoved) is { } earlier)
            findings.Doubt("on", record.On, $"The book has something of this colony from {Findings.Show(earlier.On)}, before it began. Check the day.");
        findings.Text("note", record.Note, 2000);
    }

    internal static void Check(BroodRemoved record, BookState state, DateOnly today, Findings findings)
    {
        var colony = RecordRules.Known(record.Colony, "colony", state, findings);
        findings.Day("on", record.On, today);
        RecordRules.LivesOn(colony, "on", record.On, findings);
        if (!Enum.IsDefined(record.Brood))
            findings.Error("brood", (int)record.Brood, $"{(int)record.Brood} is no kind of brood. Use one of: {string.Join(", ", Enum.GetNames<RemovedBrood>())}.");
        if (record.Share is not (> 0 and <= 1))
            findings.Error("share", record.Share, $"{Findings.Show(record.Share)} is not a share of the brood. Give a number above 0 and at most 1.");
        findings.Text("note", record.Note, 2000);
    }

    private static bool IsCaged(QueenRecord record, BookState state) => state.HappeningsOf(record.Colony)
        .Any(other => other.Facts is QueenRecord { Event: QueenEvent.Caged or QueenEvent.Introduced } && other.On <= record.On && other.On >= record.On.AddDays(-LongestCage));
}
