using System.Globalization;
using Foundress.Book.Controls;
using Foundress.Book.Histories;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Estimation;

namespace Foundress.Web.Pages;

/// <summary>Entries of the book in plain words.</summary>
public static class Words
{
    /// <summary>What to do about jars over the line.</summary>
    public const string ActNow = "over the line. See which controls are workable now, and sample the colonies not yet looked at.";

    /// <summary>What an entry says, in one sentence.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="state">The book, for the names of apiaries and colonies.</param>
    public static string Of(Entry entry, BookState state)
    {
        if (RecordKinds.IsNewer(entry.Kind, entry.Schema))
            return $"Written by a newer version of the program (kind “{entry.Kind}”, form {entry.Schema}). It is kept and copied unchanged; update the program to read it";
        return RecordJson.TryRead(entry.Kind, entry.Payload, out _) is { } record
            ? Of(record, state)
            : $"A record of the kind “{entry.Kind}” that cannot be read. It is kept and copied unchanged";
    }

    /// <summary>What no longer holds of an entry, and what holds instead: what, by whom and when.</summary>
    public static string Of(Superseded superseded, BookState state) => string.Create(
        CultureInfo.CurrentCulture,
        $"{(superseded.Field is { } field ? $"{FieldName(field)} is now “{FieldValue(field, superseded.Now, state)}”" : "Replaced by a later record")}, {superseded.By.Author}, {superseded.By.Clock.Instant.ToLocalTime():g}{(superseded.OtherDevice ? ", on another device" : null)}");

    private static string FieldName(string field) => field switch
    {
        "apiary" => "The apiary",
        "on" => "The day",
        "linePolicy" => "The line",
        "broodFrom" => "The first month of brood",
        "broodTo" => "The last month of brood",
        "name" => "The name",
        "note" => "The note",
        "latitude" or "longitude" or "altitude" or "climate" => $"The {field}",
        "ownWatch" => "Your watch line",
        "ownAct" => "Your act line",
        "sureBelow" or "sureAbove" => "How sure is sure",
        "scoopBees" or "scoopLogSpread" => "Your scoop",
        "tolerance" => "The chance you can bear",
        "withdrawalDays" => "The withdrawal period",
        _ => "A setting",
    };

    private static string? FieldValue(string field, string? value, BookState state) =>
        field == "apiary" && Guid.TryParse(value, out var id) ? Name(new ApiaryId(id), state) : value;

    /// <summary>The day an entry speaks of; the day it was written when it names none.</summary>
    public static DateOnly DayOf(Entry entry) => RecordKinds.IsNewer(entry.Kind, entry.Schema) ? WrittenOn(entry) : RecordJson.TryRead(entry.Kind, entry.Payload, out _) switch
    {
        InspectionRecord record => record.On,
        QueenRecord record => record.On,
        ColonyBegan record => record.On,
        BroodRemoved record => record.On,
        JarRecord record => record.On,
        ColonyMoved record => record.On,
        ColonyDied record => record.On,
        ColonySplit record => record.On,
        ColoniesUnited record => record.On,
        RoundRecord record => record.On,
        RoundSkip record => record.On,
        RoundStop record => record.On,
        ControlRecord record => record.Start,
        ControlEnded record => record.On,
        ControlPlanRecord record => record.Made,
        MiteFallRecord record => record.On,
        OpenedBroodRecord record => record.On,
        ColonyRecord { On: { } on } => on,
        _ => WrittenOn(entry),
    };

    /// <summary>A colony's name, or a question mark when the book does not have it.</summary>
    public static string Name(ColonyId colony, BookState state) => state.Colonies.TryGetValue(colony, out var known) ? known.Name : "?";

    /// <summary>An apiary's name, or a question mark when the book does not have it.</summary>
    public static string Name(ApiaryId apiary, BookState state) => state.Apiaries.TryGetValue(apiary, out var known) ? known.Name : "?";

    /// <summary>A count of things: <c>1 colony</c>, <c>12 colonies</c>.</summary>
    public static string Count(int count, string one, string many) => Book.Wording.Say.Count(count, one, many);

    /// <summary>A day as the device writes it.</summary>
    public static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.CurrentCulture);

    /// <summary>What happened to a queen, as the rest of a sentence.</summary>
    public static string Of(QueenEvent happened) => happened switch
    {
        QueenEvent.Lost => "queen lost",
        QueenEvent.Caged => "queen caged",
        QueenEvent.Released => "queen let out of the cage",
        QueenEvent.Introduced => "another queen given",
        QueenEvent.NewLaying => "new queen laying",
        QueenEvent.Swarmed => "swarmed",
        _ => "something happened to the queen",
    };

    /// <summary>What a colony began as, with its article.</summary>
    public static string Of(ColonyBeginning beginning) => beginning switch
    {
        ColonyBeginning.Package => "a package",
        ColonyBeginning.Swarm => "a hived swarm",
        ColonyBeginning.Nucleus => "a nucleus",
        _ => "a whole colony",
    };

    private static DateOnly WrittenOn(Entry entry) => DateOnly.FromDateTime(entry.Clock.Instant.LocalDateTime);

    private static string Of(Record record, BookState state) => record switch
    {
        ApiaryRecord apiary => $"Apiary {apiary.Name}",
        ColonyRecord { Apiary: { } apiary } colony => $"Registered as {colony.Name} in {Name(apiary, state)}{Tail(colony.Note)}",
        ColonyRecord { Name: { } name } colony => $"Renamed {name}{Tail(colony.Note)}",
        ColonyRecord colony => $"Note{Tail(colony.Note)}",
        ColonyMoved moved => $"Moved to {Name(moved.To, state)}{Tail(moved.Note)}",
        ColonyDied died => $"Died or was given up{Tail(died.Cause)}",
        ColonySplit split => $"{split.Name} was made from {Name(split.Parent, state)}{Tail(Frames(split.FramesOfBees, split.FramesOfBrood))}",
        ColoniesUnited united => $"{Name(united.Colony, state)} was united with {Name(united.Into, state)}",
        InspectionRecord seen => $"Inspection{Tail(Seen(seen))}",
        QueenRecord queen => $"{Sentence(Of(queen.Event))}{(queen.ShareOfBees is { } share ? $" with {Share(share)} of the bees" : null)}{Tail(queen.Note)}",
        ColonyBegan began => $"Began as {Of(began.As)}{Tail(Began(began))}",
        BroodRemoved removed => $"{Share(removed.Share)} of {(removed.Brood == RemovedBrood.Drone ? "the drone brood" : "all brood")} taken out{Tail(removed.Note)}",
        JarRecord jar => $"Jar: {Count(jar.Mites, "mite", "mites")} in {Bees(jar.Bees)}{Passes(jar)}{Tail(jar.Note)}",
        JarPlaced placed => $"A jar was put to {Name(placed.Colony, state)}{Tail(state.Jars.FirstOrDefault(jar => jar.Id == placed.Jar) is { } jar ? Of(jar.Entry, state) : null)}",
        RoundRecord round => $"Round: {round.Purpose}",
        RoundStop stop => $"The round ended early in {Name(stop.Apiary, state)}: {stop.Reason}",
        RoundSkip skip => $"Not sampled in the round: {skip.Reason}",
        ControlRecord control => $"{ControlTitle(control.Agent, state)}{Colonies(control.Colonies)}{Tail(Given(control))}",
        ControlEnded ended => $"{(state.Controls.TryGetValue(ended.Control, out var use) ? ControlTitle(use.Facts.Agent, state) : "A control")} {Ending(ended.Ending)}{Tail(ended.Reason ?? ended.Note)}",
        AgentRecord agent => $"Own figures for {agent.Title ?? ControlTitle(agent.Agent, state)}{Tail(agent.LabelSource)}",
        ControlPlanRecord plan => $"Plan kept: {string.Join("; ", plan.Uses.Select(use => $"{ControlTitle(use.Agent, state)} from about {Day(use.Start)}"))}{Colonies(plan.Colonies)}{Tail(plan.Note)}",
        NormalsRecord normals => $"Usual temperatures of {Name(normals.Apiary, state)}{Tail(normals.Station)}",
        MiteFallRecord fall => $"Mite fall: {Count(fall.Mites, "mite", "mites")} in {fall.Days:0.#} {(fall.Days == 1 ? "day" : "days")}{(fall.ShareCounted is { } share ? $", {100 * share:0.#} % of the board counted" : null)}{Tail(Void(fall))}{Tail(fall.Note)}",
        OpenedBroodRecord opened => $"{(opened.Brood == BroodKind.Drone ? "Drone" : "Worker")} brood opened: {opened.Infested} of {Count(opened.Cells, "cell", "cells")} infested{(opened.Mites is { } mothers ? $", {Count(mothers, "mother mite", "mother mites")}" : null)}{Tail(opened.Note)}",
        ApiaryDays days => $"Supers and harvest of {Name(days.Apiary, state)}",
        DueSnoozed snoozed => $"Put off until {Day(snoozed.Until)}: {snoozed.Reason}",
        PolicyRecord => "Settings of the operation changed",
        Strike strike => $"Struck out: {strike.Reason}",
        _ => record.GetType().Name,
    };

    private static string ControlTitle(string agent, BookState state) => ControlList.Of(state, KnowledgeBase.Load()).TitleOf(agent);

    private static string Colonies(IReadOnlyList<ColonyId> colonies) => colonies.Count > 1 ? $" in {colonies.Count} colonies" : string.Empty;

    private static string Given(ControlRecord control)
    {
        var parts = new List<string>();
        if (control.PlannedEnd is { } end)
            parts.Add(end == control.Start ? "done in a day" : $"to come out on {Day(end)}");
        parts.AddRange(new[] { control.Quantity, control.Batch is { } batch ? $"batch {batch}" : null, control.Note }.Where(part => !string.IsNullOrWhiteSpace(part)).OfType<string>());
        return string.Join(", ", parts);
    }

    private static string Ending(ControlEnding ending) => ending switch
    {
        ControlEnding.StoppedEarly => "stopped early",
        ControlEnding.Partial => "given only in part",
        _ => "over",
    };

    private static string Sentence(string words) => char.ToUpper(words[0], CultureInfo.CurrentCulture) + words[1..];

    private static string Share(double share) => $"{100 * share:0} %";

    private static string Began(ColonyBegan began) => string.Join(", ", new[]
    {
        began.KilogramsOfBees is { } weight ? $"{weight:0.##} kg of bees" : null,
        Frames(began.FramesOfBees, began.FramesOfBrood) is { Length: > 0 } frames ? frames : null,
        string.IsNullOrWhiteSpace(began.Note) ? null : began.Note,
    }.OfType<string>());

    private static string Tail(string? text) => string.IsNullOrWhiteSpace(text) ? string.Empty : ": " + text;

    private static string Passes(JarRecord jar) => jar.Passes.Count > 1 ? $" ({string.Join(" + ", jar.Passes)})" : string.Empty;

    private static string Bees(JarBees bees) => bees.Basis switch
    {
        BeeBasis.Counted => $"{bees.Count:0} bees, counted",
        BeeBasis.Weighed => $"about {bees.Count:0} bees, weighed",
        _ => $"about {bees.Count:0} bees, assumed",
    };

    private static string Void(MiteFallRecord fall) => string.Join(", ", new[]
    {
        fall.Broodless is { } broodless ? broodless ? "no brood" : "with brood" : null,
        fall.Collapsing == true ? "collapsing" : null,
        fall.UnderControl == true ? "a control was working" : null,
        fall.Scavengers == true ? "ants or others reached the board" : null,
    }.OfType<string>());

    private static string Seen(InspectionRecord seen)
    {
        var parts = new List<string>();
        if (Frames(seen.FramesOfBees, seen.FramesOfBrood) is { Length: > 0 } frames)
            parts.Add(frames);
        if (seen.QueenSeen is { } queen)
            parts.Add(queen ? "queen seen" : "queen not seen");
        if (seen.SupersOn is { } supers)
            parts.Add(supers ? "supers on" : "no supers on");
        if (seen.Clustered is { } clustered)
            parts.Add(clustered ? "in the winter cluster" : "not in the cluster");
        if (!string.IsNullOrWhiteSpace(seen.Note))
            parts.Add(seen.Note);
        return string.Join(", ", parts);
    }

    private static string Frames(double? bees, double? brood) => string.Join(", ", new[]
    {
        bees is { } b ? $"{b:0.#} frames of bees" : null,
        brood is { } c ? $"{c:0.#} of brood" : null,
    }.OfType<string>());
}
