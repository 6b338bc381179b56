using Foundress.Book.Judging;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;

namespace Foundress.Book.Rules;

/// <summary>Rules for the operation's settings.</summary>
public static class PolicyRules
{
    /// <summary>The name under which the keeper's own two lines are chosen.</summary>
    public const string Own = "own";

    internal static void Check(PolicyRecord record, BookState state, KnowledgeBase knowledge, Findings findings)
    {
        findings.Name("operationName", record.OperationName, needed: false);
        if (record.LinePolicy is { } policy && policy != Own && !knowledge.LinePolicies.TryGet(policy, out _))
            findings.Error("linePolicy", policy, $"'{policy}' is not a known set of lines. Use one of: {Own}, {string.Join(", ", knowledge.LinePolicies.Ids)}.");
        findings.Range("ownWatch", record.OwnWatch, 0, 100, "a line in mites per 100 bees");
        findings.Range("ownAct", record.OwnAct, 0, 100, "a line in mites per 100 bees");
        var watch = record.OwnWatch ?? state.Policy.OwnWatch;
        var act = record.OwnAct ?? state.Policy.OwnAct;
        if (watch > act)
            findings.Error("ownWatch", watch, $"The lower line ({Findings.Show(watch.Value)}) is above the upper one ({Findings.Show(act!.Value)}). Swap them.");
        if ((record.LinePolicy ?? state.Policy.LinePolicy) == Own && act is null)
            findings.Error("ownAct", null, "Your own lines are chosen but no line is given. Give the level above which a control is needed.");
        findings.Range("sureBelow", record.SureBelow, 0, 0.5, "a chance for 'below'");
        findings.Range("sureAbove", record.SureAbove, 0.5, 1, "a chance for 'above'");
        if ((record.SureBelow ?? state.Policy.SureBelow) is 0.5 && (record.SureAbove ?? state.Policy.SureAbove) is 0.5)
            findings.Error("sureBelow", 0.5, "With 0.5 for both, no jar could be unclear. Lower the one for 'below' or raise the one for 'above'.");
        findings.Range("tolerance", record.Tolerance, 0.01, 0.5, "a chance of standing over the line that is borne");
        findings.Range("confidence", record.Confidence, 0.5, 0.999, "a confidence");
        if (record.JarMeasure is { } measure && !knowledge.JarMeasures.TryGet(measure, out _))
            findings.Error("jarMeasure", measure, $"'{measure}' is not a known measure. Use one of: {string.Join(", ", knowledge.JarMeasures.Ids)}.");
        findings.Range("scoopBees", record.ScoopBees, 50, 2000, "a number of bees in a scoop");
        findings.Range("scoopLogSpread", record.ScoopLogSpread, 0.01, 1, "a spread");
        if (record.Jurisdiction is { } where && !Enum.IsDefined(where))
            findings.Error("jurisdiction", where, $"'{where}' is not a known jurisdiction. Use one of: {string.Join(", ", Enum.GetNames<Jurisdiction>())}.");
        foreach (var gear in (record.Gear ?? []).Where(gear => !knowledge.Controls.Gear.TryGet(gear, out _)))
            findings.Error("gear", gear, $"'{gear}' is not known gear. Use some of: {string.Join(", ", knowledge.Controls.Gear.Ids)}.");
        Fits("fallLines", record.FallLines, OtherScales.Fall, knowledge, findings);
        Fits("droneLines", record.DroneLines, OtherScales.DroneCells, knowledge, findings);
        Fits("workerLines", record.WorkerLines, OtherScales.WorkerCells, knowledge, findings);
    }

    private static void Fits(string field, string? lines, string scale, KnowledgeBase knowledge, Findings findings)
    {
        if (lines is null or OtherScales.NoLines || (knowledge.LinePolicies.TryGet(lines, out var policy) && policy.AppliesTo(scale)))
            return;
        var known = knowledge.LinePolicies.Where(one => one.AppliesTo(scale)).Select(one => one.Id);
        findings.Error(field, lines, $"'{lines}' is not a set of lines for this kind of count. Use one of: {string.Join(", ", known.Append(OtherScales.NoLines))}.");
    }
}
