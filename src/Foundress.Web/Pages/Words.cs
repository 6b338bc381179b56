using System.Globalization;
using Foundress.Book.Controls;
using Foundress.Book.Histories;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Estimation;

namespace Foundress.Web.Pages;

/// <summary>Entries of the book in plain words.</summary>
public static class Words
{
    /// <summary>What an entry says, in one sentence.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="state">The book, for the names of apiaries and colonies.</param>
    public static string Of(Entry entry, BookState state)
    {
        if (RecordKinds.IsNewer(entry.Kind, entry.Schema))
            return EntryTexts.FormatNewerKind(entry.Kind, entry.Schema);
        return RecordJson.TryRead(entry.Kind, entry.Payload, out _) is { } record
            ? Of(record, state)
            : EntryTexts.FormatUnreadableKind(entry.Kind);
    }

    /// <summary>When an entry was written, by the clock of who reads it.</summary>
    public static string Written(Entry entry) => Say.Moment(entry.Clock.Instant.ToLocalTime());

    /// <summary>What no longer holds of an entry, and what holds instead: what, by whom and when.</summary>
    public static string Of(Superseded superseded, BookState state)
    {
        var what = superseded.Field is { } field ? IsNow(field, FieldValue(field, superseded.Now, state)) : HistoryTexts.Replaced;
        var (author, when) = (superseded.By.Author, Written(superseded.By));
        return superseded.OtherDevice ? HistoryTexts.FormatSupersededElsewhere(what, author, when) : HistoryTexts.FormatSuperseded(what, author, when);
    }

    private static string IsNow(string field, string? value) => field switch
    {
        "apiary" => HistoryTexts.FormatApiaryIsNow(value),
        "on" => HistoryTexts.FormatDayIsNow(value),
        "linePolicy" => HistoryTexts.FormatLineIsNow(value),
        "broodFrom" => HistoryTexts.FormatBroodFromIsNow(value),
        "broodTo" => HistoryTexts.FormatBroodToIsNow(value),
        "name" => HistoryTexts.FormatNameIsNow(value),
        "note" => HistoryTexts.FormatNoteIsNow(value),
        "latitude" => HistoryTexts.FormatLatitudeIsNow(value),
        "longitude" => HistoryTexts.FormatLongitudeIsNow(value),
        "altitude" => HistoryTexts.FormatAltitudeIsNow(value),
        "climate" => HistoryTexts.FormatClimateIsNow(value),
        "ownWatch" => HistoryTexts.FormatWatchLineIsNow(value),
        "ownAct" => HistoryTexts.FormatActLineIsNow(value),
        "sureBelow" or "sureAbove" => HistoryTexts.FormatSurenessIsNow(value),
        "scoopBees" or "scoopLogSpread" => HistoryTexts.FormatScoopIsNow(value),
        "tolerance" => HistoryTexts.FormatToleranceIsNow(value),
        "withdrawalDays" => HistoryTexts.FormatWithdrawalIsNow(value),
        _ => HistoryTexts.FormatSettingIsNow(value),
    };

    private static string? FieldValue(string field, string? value, BookState state) => field switch
    {
        "apiary" when Guid.TryParse(value, out var id) => Name(new ApiaryId(id), state),
        "on" when value is not null && FormReader.TryIso(value, out var day) => Say.Day(day),
        _ => value,
    };

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

    /// <summary>What happened to a queen, in a few words after a colon.</summary>
    public static string Of(QueenEvent happened) => happened switch
    {
        QueenEvent.Lost => EntryTexts.QueenLost,
        QueenEvent.Caged => EntryTexts.QueenCaged,
        QueenEvent.Released => EntryTexts.QueenReleased,
        QueenEvent.Introduced => EntryTexts.QueenIntroduced,
        QueenEvent.NewLaying => EntryTexts.QueenNewLaying,
        QueenEvent.Swarmed => EntryTexts.QueenSwarmed,
        _ => EntryTexts.QueenOther,
    };

    /// <summary>What a colony began as, to stand after “as”.</summary>
    public static string Of(ColonyBeginning beginning) => beginning switch
    {
        ColonyBeginning.Package => EntryTexts.BeginningPackage,
        ColonyBeginning.Swarm => EntryTexts.BeginningSwarm,
        ColonyBeginning.Nucleus => EntryTexts.BeginningNucleus,
        _ => EntryTexts.BeginningWhole,
    };

    private static DateOnly WrittenOn(Entry entry) => DateOnly.FromDateTime(entry.Clock.Instant.LocalDateTime);

    private static string Of(Record record, BookState state) => record switch
    {
        ApiaryRecord apiary => EntryTexts.FormatApiary(apiary.Name),
        ColonyRecord { Apiary: { } apiary } colony => EntryTexts.FormatRegistered(colony.Name, Name(apiary, state)) + Tail(colony.Note),
        ColonyRecord { Name: { } name } colony => EntryTexts.FormatRenamed(name) + Tail(colony.Note),
        ColonyRecord colony => EntryTexts.Note + Tail(colony.Note),
        ColonyMoved moved => EntryTexts.FormatMoved(Name(moved.To, state)) + Tail(moved.Note),
        ColonyDied died => EntryTexts.Died + Tail(died.Cause),
        ColonySplit split => EntryTexts.FormatSplit(split.Name, Name(split.Parent, state)) + Tail(Frames(split.FramesOfBees, split.FramesOfBrood)),
        ColoniesUnited united => EntryTexts.FormatUnited(Name(united.Colony, state), Name(united.Into, state)),
        InspectionRecord seen => EntryTexts.Inspection + Tail(Seen(seen)),
        QueenRecord queen => Happened(queen) + Tail(queen.Note),
        ColonyBegan began => EntryTexts.FormatBegan(Of(began.As)) + Tail(Began(began)),
        BroodRemoved removed => TakenOut(removed) + Tail(removed.Note),
        JarRecord jar => EntryTexts.FormatJar(Say.Mites(jar.Mites), Bees(jar.Bees)) + Passes(jar) + Tail(jar.Note),
        JarPlaced placed => EntryTexts.FormatJarPlaced(Name(placed.Colony, state)) + Tail(state.Jars.FirstOrDefault(jar => jar.Id == placed.Jar) is { } jar ? Of(jar.Entry, state) : null),
        RoundRecord round => EntryTexts.FormatRound(OfferedWords.Shown(round.Purpose)),
        RoundStop stop => EntryTexts.FormatRoundStopped(Name(stop.Apiary, state), stop.Reason),
        RoundSkip skip => EntryTexts.FormatRoundSkipped(OfferedWords.Shown(skip.Reason)),
        ControlRecord control => In(control.Colonies, ControlTitle(control.Agent, state)) + Tail(Given(control)),
        ControlEnded ended => Ended(ended, state) + Tail(ended.Reason ?? ended.Note),
        AgentRecord agent => EntryTexts.FormatOwnFigures(agent.Title ?? ControlTitle(agent.Agent, state)) + Tail(agent.LabelSource),
        ControlPlanRecord plan => In(plan.Colonies, EntryTexts.FormatPlanKept(Uses(plan, state))) + Tail(plan.Note),
        NormalsRecord normals => EntryTexts.FormatNormals(Name(normals.Apiary, state)) + Tail(normals.Station),
        MiteFallRecord fall => Fallen(fall) + Tail(Void(fall)) + Tail(fall.Note),
        OpenedBroodRecord opened => Opened(opened) + Tail(opened.Note),
        ApiaryDays days => EntryTexts.FormatApiaryDays(Name(days.Apiary, state)),
        DueSnoozed snoozed => EntryTexts.FormatPutOff(Say.Day(snoozed.Until), OfferedWords.Shown(snoozed.Reason)),
        PolicyRecord => EntryTexts.PolicyChanged,
        Strike strike => EntryTexts.FormatStruck(OfferedWords.Shown(strike.Reason)),
        _ => record.GetType().Name,
    };

    private static string ControlTitle(string agent, BookState state) => ControlList.Of(state, KnowledgeBase.Load()).TitleOf(agent);

    private static string In(IReadOnlyList<ColonyId> colonies, string what) => colonies.Count > 1 ? EntryTexts.FormatInColonies(what, Say.InColonies(colonies.Count)) : what;

    private static string Happened(QueenRecord queen)
    {
        var what = Sentence(Of(queen.Event));
        return queen.ShareOfBees is { } share ? EntryTexts.FormatQueenWithShare(what, Share(share)) : what;
    }

    private static string TakenOut(BroodRemoved removed) => removed.Brood == RemovedBrood.Drone
        ? EntryTexts.FormatDroneBroodRemoved(Share(removed.Share))
        : EntryTexts.FormatAllBroodRemoved(Share(removed.Share));

    private static string Given(ControlRecord control)
    {
        var parts = new List<string>();
        if (control.PlannedEnd is { } end)
            parts.Add(end == control.Start ? EntryTexts.DoneInADay : EntryTexts.FormatToComeOut(Say.Day(end)));
        parts.AddRange(new[] { control.Quantity, control.Batch is { } batch ? EntryTexts.FormatBatch(batch) : null, control.Note }.Where(part => !string.IsNullOrWhiteSpace(part)).OfType<string>());
        return string.Join(", ", parts);
    }

    private static string Ended(ControlEnded ended, BookState state)
    {
        var control = state.Controls.TryGetValue(ended.Control, out var use) ? ControlTitle(use.Facts.Agent, state) : EntryTexts.AControl;
        return ended.Ending switch
        {
            ControlEnding.StoppedEarly => EntryTexts.FormatControlStopped(control),
            ControlEnding.Partial => EntryTexts.FormatControlPartial(control),
            _ => EntryTexts.FormatControlOver(control),
        };
    }

    private static string Uses(ControlPlanRecord plan, BookState state) =>
        string.Join("; ", plan.Uses.Select(use => EntryTexts.FormatPlannedUse(ControlTitle(use.Agent, state), Say.Day(use.Start))));

    private static string Fallen(MiteFallRecord fall)
    {
        var found = Plural.Pick(fall.Days, EntryTexts.FormatMiteFall(Say.Mites(fall.Mites), Short(fall.Days)));
        return fall.ShareCounted is { } share ? EntryTexts.FormatShareOfBoard(found, Short(100 * share)) : found;
    }

    private static string Opened(OpenedBroodRecord opened)
    {
        var found = Plural.Pick(opened.Cells, opened.Brood == BroodKind.Drone
            ? EntryTexts.FormatDroneOpened(opened.Infested, opened.Cells)
            : EntryTexts.FormatWorkerOpened(opened.Infested, opened.Cells));
        return opened.Mites is { } mothers ? EntryTexts.FormatWithMothers(found, Plural.Pick(mothers, EntryTexts.FormatMotherMites(mothers))) : found;
    }

    private static string Sentence(string words) => char.ToUpper(words[0], CultureInfo.CurrentCulture) + words[1..];

    private static string Share(double share) => $"{100 * share:0} %";

    private static string Short(double number) => number.ToString("0.#", CultureInfo.CurrentCulture);

    private static string Began(ColonyBegan began) => string.Join(", ", new[]
    {
        began.KilogramsOfBees is { } weight ? EntryTexts.FormatKilograms(weight.ToString("0.##", CultureInfo.CurrentCulture)) : null,
        Frames(began.FramesOfBees, began.FramesOfBrood) is { Length: > 0 } frames ? frames : null,
        string.IsNullOrWhiteSpace(began.Note) ? null : began.Note,
    }.OfType<string>());

    private static string Tail(string? text) => string.IsNullOrWhiteSpace(text) ? string.Empty : ": " + text;

    private static string Passes(JarRecord jar) => jar.Passes.Count > 1 ? $" ({string.Join(" + ", jar.Passes)})" : string.Empty;

    private static string Bees(JarBees bees)
    {
        var count = bees.Count.ToString("0", CultureInfo.CurrentCulture);
        return bees.Basis switch
        {
            BeeBasis.Counted => EntryTexts.FormatBeesCounted(count),
            BeeBasis.Weighed => EntryTexts.FormatBeesWeighed(count),
            _ => EntryTexts.FormatBeesAssumed(count),
        };
    }

    private static string Void(MiteFallRecord fall) => string.Join(", ", new[]
    {
        fall.Broodless is { } broodless ? broodless ? EntryTexts.FallBroodless : EntryTexts.FallWithBrood : null,
        fall.Collapsing == true ? EntryTexts.FallCollapsing : null,
        fall.UnderControl == true ? EntryTexts.FallUnderControl : null,
        fall.Scavengers == true ? EntryTexts.FallScavengers : null,
    }.OfType<string>());

    private static string Seen(InspectionRecord seen)
    {
        var parts = new List<string>();
        if (Frames(seen.FramesOfBees, seen.FramesOfBrood) is { Length: > 0 } frames)
            parts.Add(frames);
        if (seen.QueenSeen is { } queen)
            parts.Add(queen ? EntryTexts.QueenSeen : EntryTexts.QueenNotSeen);
        if (seen.SupersOn is { } supers)
            parts.Add(supers ? EntryTexts.SupersOn : EntryTexts.NoSupersOn);
        if (seen.Clustered is { } clustered)
            parts.Add(clustered ? EntryTexts.Clustered : EntryTexts.NotClustered);
        if (!string.IsNullOrWhiteSpace(seen.Note))
            parts.Add(seen.Note);
        return string.Join(", ", parts);
    }

    private static string Frames(double? bees, double? brood) => string.Join(", ", new[]
    {
        bees is { } b ? Plural.Pick(b, EntryTexts.FormatFramesOfBees(Short(b))) : null,
        brood is { } c ? Plural.Pick(c, EntryTexts.FormatFramesOfBrood(Short(c))) : null,
    }.OfType<string>());
}
