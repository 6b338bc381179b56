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
            findings.Error("linePolicy", policy, RuleTexts.FormatLinesUnknown(policy, string.Join(", ", knowledge.LinePolicies.Ids.Prepend(Own))));
        findings.Range("ownWatch", record.OwnWatch, 0, 100, QuantityTexts.LinePer100);
        findings.Range("ownAct", record.OwnAct, 0, 100, QuantityTexts.LinePer100);
        var watch = record.OwnWatch ?? state.Policy.OwnWatch;
        var act = record.OwnAct ?? state.Policy.OwnAct;
        if (watch > act)
            findings.Error("ownWatch", watch, RuleTexts.FormatLowerLineAbove(Findings.Show(watch.Value), Findings.Show(act!.Value)));
        if ((record.LinePolicy ?? state.Policy.LinePolicy) == Own && act is null)
            findings.Error("ownAct", null, RuleTexts.OwnLineMissing);
        findings.Range("sureBelow", record.SureBelow, 0, 0.5, QuantityTexts.SureBelow);
        findings.Range("sureAbove", record.SureAbove, 0.5, 1, QuantityTexts.SureAbove);
        if ((record.SureBelow ?? state.Policy.SureBelow) is 0.5 && (record.SureAbove ?? state.Policy.SureAbove) is 0.5)
            findings.Error("sureBelow", 0.5, RuleTexts.NeverUnclear);
        findings.Range("tolerance", record.Tolerance, 0.01, 0.5, QuantityTexts.Tolerance);
        findings.Range("confidence", record.Confidence, 0.5, 0.999, QuantityTexts.Confidence);
        if (record.JarMeasure is { } measure && !knowledge.JarMeasures.TryGet(measure, out _))
            findings.Error("jarMeasure", measure, RuleTexts.FormatMeasureUnknown(measure, string.Join(", ", knowledge.JarMeasures.Ids)));
        findings.Range("scoopBees", record.ScoopBees, 50, 2000, QuantityTexts.ScoopBees);
        findings.Range("scoopLogSpread", record.ScoopLogSpread, 0.01, 1, QuantityTexts.Spread);
        if (record.Jurisdiction is { } where && !Enum.IsDefined(where))
            findings.Error("jurisdiction", where, RuleTexts.FormatJurisdictionUnknown(where, string.Join(", ", Enum.GetNames<Jurisdiction>())));
        foreach (var gear in (record.Gear ?? []).Where(gear => !knowledge.Controls.Gear.TryGet(gear, out _)))
            findings.Error("gear", gear, RuleTexts.FormatGearUnknown(gear, string.Join(", ", knowledge.Controls.Gear.Ids)));
        Fits("fallLines", record.FallLines, OtherScales.Fall, knowledge, findings);
        Fits("droneLines", record.DroneLines, OtherScales.DroneCells, knowledge, findings);
        Fits("workerLines", record.WorkerLines, OtherScales.WorkerCells, knowledge, findings);
    }

    private static void Fits(string field, string? lines, string scale, KnowledgeBase knowledge, Findings findings)
    {
        if (lines is null or OtherScales.NoLines || (knowledge.LinePolicies.TryGet(lines, out var policy) && policy.AppliesTo(scale)))
            return;
        var known = knowledge.LinePolicies.Where(one => one.AppliesTo(scale)).Select(one => one.Id);
        findings.Error(field, lines, RuleTexts.FormatLinesUnfit(lines, string.Join(", ", known.Append(OtherScales.NoLines))));
    }
}
