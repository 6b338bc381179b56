using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;

namespace Foundress.Book.Rules;

internal static class ColonyRules
{
    internal static void Check(ColonyRecord record, BookState state, DateOnly today, Findings findings)
    {
        var known = state.Colonies.GetValueOrDefault(record.Colony);
        findings.Name("name", record.Name, needed: known is null);
        if (record.Apiary is { } apiary)
            InBook(apiary, "apiary", state, findings);
        else if (known is null)
            findings.Error("apiary", null, RuleTexts.ApiaryMissing);
        if (record.Name is { } name && (record.Apiary ?? known?.Apiary) is { } place)
            NameIsFree(name, record.Colony, place, state, today, findings);
        if (record.On is { } on)
            findings.Day("on", on, today);
        findings.Text("note", record.Note, 2000);
    }

    internal static void Check(ColonyMoved record, BookState state, DateOnly today, Findings findings)
    {
        var colony = RecordRules.Known(record.Colony, "colony", state, findings);
        InBook(record.To, "to", state, findings);
        findings.Day("on", record.On, today);
        RecordRules.LivesOn(colony, "on", record.On, findings);
        if (colony is not null && colony.ApiaryOn(record.On) == record.To)
            findings.Doubt("to", record.To, RuleTexts.FormatAlreadyThere(colony.Name, Findings.Show(record.On)));
        if (colony is not null && state.Apiaries.ContainsKey(record.To))
            NameIsFree(colony.Name, colony.Id, record.To, state, record.On, findings);
        findings.Text("note", record.Note, 2000);
    }

    internal static void Check(ColonyDied record, BookState state, DateOnly today, Findings findings)
    {
        EndsOnce(RecordRules.Known(record.Colony, "colony", state, findings), findings);
        findings.Day("on", record.On, today);
        findings.Text("cause", record.Cause, 500);
    }

    internal static void Check(ColonySplit record, BookState state, DateOnly today, Findings findings)
    {
        var parent = RecordRules.Known(record.Parent, "parent", state, findings);
        findings.Day("on", record.On, today);
        RecordRules.LivesOn(parent, "on", record.On, findings);
        findings.Name("name", record.Name, needed: true);
        if (state.Colonies.ContainsKey(record.Colony))
            findings.Error("colony", record.Colony, RuleTexts.NewColonyKnown);
        if (parent is not null)
            NameIsFree(record.Name, record.Colony, parent.ApiaryOn(record.On), state, record.On, findings);
        findings.Range("framesOfBees", record.FramesOfBees, 0, InspectionRules.MostFrames, QuantityTexts.FramesOfBees);
        findings.Range("framesOfBrood", record.FramesOfBrood, 0, InspectionRules.MostFrames, QuantityTexts.FramesOfBrood);
    }

    internal static void Check(ColoniesUnited record, BookState state, DateOnly today, Findings findings)
    {
        EndsOnce(RecordRules.Known(record.Colony, "colony", state, findings), findings);
        var into = RecordRules.Known(record.Into, "into", state, findings);
        findings.Day("on", record.On, today);
        RecordRules.LivesOn(into, "into", record.On, findings);
        if (record.Colony == record.Into)
            findings.Error("into", record.Into, RuleTexts.UnitedWithItself);
    }

    private static void InBook(ApiaryId apiary, string field, BookState state, Findings findings)
    {
        if (!state.Apiaries.ContainsKey(apiary))
            findings.Error(field, apiary, RuleTexts.ApiaryUnknown);
    }

    private static void EndsOnce(Colony? colony, Findings findings)
    {
        if (colony?.End is { } end)
            findings.Error("colony", colony.Name, RuleTexts.FormatColonyEnded(colony.Name, Findings.Show(end.On)));
    }

    private static void NameIsFree(string name, ColonyId colony, ApiaryId apiary, BookState state, DateOnly day, Findings findings)
    {
        var taken = state.Colonies.Values.Any(other =>
            other.Id != colony && other.LivesOn(day) && other.ApiaryOn(day) == apiary
            && string.Equals(other.Name.Trim(), name.Trim(), StringComparison.OrdinalIgnoreCase));
        if (taken)
            findings.Error("name", name, RuleTexts.FormatColonyNameTaken(name.Trim()));
    }
}
