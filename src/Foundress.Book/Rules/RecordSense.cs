using Foundress.Book.Records;
using Foundress.Book.Wording;

namespace Foundress.Book.Rules;

/// <summary>
/// What no record of the field can say, whatever the book holds besides: counts below nought, a latitude beyond the pole.
/// A record that came from another device is not held to <see cref="RecordRules"/>, which a later version may loosen; but
/// one that makes no sense must not take the whole book from everyone who reads it. It is kept, told of, and does not count.
/// </summary>
internal static class RecordSense
{
    // Far wider than any rule: only what the calendar's arithmetic could not bear.
    private const int EarliestYear = 1900;
    private const int LatestYear = 2200;

    /// <summary>What makes no sense in a record; null when all does.</summary>
    internal static string? Problem(Record record) => record switch
    {
        ApiaryRecord r => Out("latitude", r.Latitude, -90, 90) ?? Out("longitude", r.Longitude, -180, 180) ?? Out("altitude", r.Altitude, -430, 6000)
            ?? Out("broodFrom", r.BroodFrom, 1, 12) ?? Out("broodTo", r.BroodTo, 1, 12),
        ColonyRecord r => Day("on", r.On),
        ColonyMoved r => Day("on", r.On),
        ColonyDied r => Day("on", r.On),
        ColonySplit r => Day("on", r.On) ?? Frames(r.FramesOfBees, r.FramesOfBrood),
        ColoniesUnited r => Day("on", r.On),
        InspectionRecord r => Day("on", r.On) ?? Frames(r.FramesOfBees, r.FramesOfBrood),
        QueenRecord r => Day("on", r.On) ?? Word("event", r.Event) ?? Out("shareOfBees", r.ShareOfBees, 0, 1),
        ColonyBegan r => Day("on", r.On) ?? Word("as", r.As) ?? Out("kilogramsOfBees", r.KilogramsOfBees, 0, 100) ?? Frames(r.FramesOfBees, r.FramesOfBrood),
        BroodRemoved r => Day("on", r.On) ?? Word("brood", r.Brood) ?? Out("share", r.Share, 0, 1),
        RoundRecord r => Day("on", r.On) ?? First(r.Draws, draw => draw.EarlyStop is { } early ? Stop(early) : null),
        RoundStop r => Day("on", r.On),
        JarRecord r => Day("on", r.On) ?? Jar(r),
        MiteFallRecord r => Day("on", r.On) ?? Out("mites", r.Mites, 0, JarLimits.MostMites) ?? OutAbove("days", r.Days, 0, OtherCountRules.MostDays)
            ?? OutAbove("shareCounted", r.ShareCounted, 0, 1),
        OpenedBroodRecord r => Day("on", r.On) ?? Word("brood", r.Brood) ?? Out("cells", r.Cells, 1, OtherCountRules.MostCells) ?? Out("infested", r.Infested, 0, r.Cells)
            ?? Out("mites", r.Mites, r.Infested, r.Infested == 0 ? 0 : JarLimits.MostMites),
        ControlRecord r => Day("start", r.Start) ?? Day("plannedEnd", r.PlannedEnd) ?? Out("withdrawalDays", r.WithdrawalDays, 0, 3650)
            ?? Out("airLow", r.AirLow, -60, 60) ?? Out("airHigh", r.AirHigh, -60, 60),
        ControlEnded r => Day("on", r.On) ?? Word("ending", r.Ending),
        AgentRecord r => Out("days", r.Days, 1, 365) ?? Out("coldest", r.Coldest, -60, 60) ?? Out("warmest", r.Warmest, -60, 60) ?? Word("supers", r.Supers)
            ?? Out("daysBeforeSupers", r.DaysBeforeSupers, 0, 365) ?? Out("withdrawalDays", r.WithdrawalDays, 0, 3650) ?? Out("minimumInterval", r.MinimumInterval, 0, 3650)
            ?? Out("target", r.Target, 1, 100) ?? Out("costPerColony", r.CostPerColony, 0, 1_000_000) ?? Texts("aliases", r.Aliases),
        ControlPlanRecord r => Day("made", r.Made) ?? Out("tolerance", r.Tolerance, 0, 1) ?? Out("peak", r.Peak, 0, 1)
            ?? First(r.Uses, use => use is null ? Missing("uses") : Day("start", use.Start) ?? Day("end", use.End) ?? (use.End < use.Start ? RuleTexts.SenseUseEnd : null)),
        NormalsRecord r => Out("highs", r.Highs.Count, 12, 12) ?? Out("lows", r.Lows.Count, 12, 12) ?? First(r.Highs, degrees => Out("highs", degrees, -60, 60)) ?? First(r.Lows, degrees => Out("lows", degrees, -60, 60)),
        PolicyRecord r => Policy(r),
        ApiaryDays r => Day("supersOn", r.SupersOn) ?? Day("harvestOn", r.HarvestOn),
        DueSnoozed r => Day("until", r.Until),
        _ => null,
    };

    private static string? Jar(JarRecord r) =>
        Out("passes", r.Passes.Count, 1, JarLimits.MostPasses) ?? First(r.Passes, mites => Out("mites", mites, 0, JarLimits.MostMites)) ?? Word("basis", r.Bees.Basis)
        ?? Out("bees", r.Bees.Count, 1, JarLimits.MostBees) ?? Out("logSpread", r.Bees.LogSpread, 0, 1) ?? Out("grams", r.Bees.Grams, 0, 10_000)
        ?? OutAbove("milligramsPerBee", r.Bees.MilligramsPerBee, 0, 1_000) ?? Out("sampleBees", r.Bees.SampleBees, 1, JarLimits.MostBees) ?? OutAbove("sampleGrams", r.Bees.SampleGrams, 0, 10_000)
        ?? Out("countedJars", r.Bees.CountedJars, 0, 1_000_000) ?? Out("airCelsius", r.Conditions?.AirCelsius, -60, 60);

    private static string? Policy(PolicyRecord r) =>
        Out("ownWatch", r.OwnWatch, 0, 100) ?? Out("ownAct", r.OwnAct, 0, 100) ?? Out("sureBelow", r.SureBelow, 0, 0.5) ?? Out("sureAbove", r.SureAbove, 0.5, 1)
        ?? Out("tolerance", r.Tolerance, 0.001, 0.999) ?? Out("confidence", r.Confidence, 0.5, 0.999) ?? Out("scoopBees", r.ScoopBees, 1, JarLimits.MostBees)
        ?? Out("scoopLogSpread", r.ScoopLogSpread, 0, 1) ?? Word("units", r.Units) ?? Word("jurisdiction", r.Jurisdiction) ?? Texts("gear", r.Gear);

    private static string? Stop(EarlyStop early) =>
        Out("low", early.Low, 0, 100) ?? Out("high", early.High, early.Low, 100) ?? Out("errorChance", early.ErrorChance, 0.001, 0.5)
        ?? Out("shape", early.Shape, 0.01, 100_000) ?? Out("beesPerJar", early.BeesPerJar, 1, JarLimits.MostBees);

    private static string? Frames(double? bees, double? brood) =>
        Out("framesOfBees", bees, 0, InspectionRules.MostFrames) ?? Out("framesOfBrood", brood, 0, InspectionRules.MostFrames);

    private static string? Out(string field, double? given, double least, double most) => given is not { } value || (value >= least && value <= most)
        ? null
        : RuleTexts.FormatSenseRange(field, Findings.Show(value), Findings.Show(least), Findings.Show(most));

    private static string? OutAbove(string field, double? given, double above, double most) => given is not { } value || (value > above && value <= most)
        ? null
        : RuleTexts.FormatSenseAbove(field, Findings.Show(value), Findings.Show(above), Findings.Show(most));

    private static string? Day(string field, DateOnly? given) => given is not { } day || day.Year is >= EarliestYear and < LatestYear
        ? null
        : RuleTexts.FormatSenseDay(field, Say.IsoDay(day));

    // The form takes numbers for words, and numbers that stand for none.
    private static string? Word<T>(string field, T? given)
        where T : struct, Enum => given is not { } word || Enum.IsDefined(word) ? null : RuleTexts.FormatSenseWord(field, word);

    private static string? Word<T>(string field, T given)
        where T : struct, Enum => Word<T>(field, (T?)given);

    private static string? Texts(string field, IReadOnlyList<string>? texts) => texts is null || !texts.Contains(null!) ? null : Missing(field);

    private static string Missing(string field) => RuleTexts.FormatSenseMissing(field);

    private static string? First<T>(IReadOnlyList<T> items, Func<T, string?> problem)
    {
        foreach (var item in items)
        {
            if (item is null)
                return Missing("list");
            if (problem(item) is { } found)
                return found;
        }

        return null;
    }
}
