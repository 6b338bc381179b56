using System.Globalization;
using Foundress.Book.Controls;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;

namespace Foundress.Book.Rules;

/// <summary>
/// Rules for uses of controls. What cannot have happened is an error; what should not have happened is doubted, and kept when
/// it did: the book records the truth.
/// </summary>
internal static class ControlRules
{
    /// <summary>More colonies would not fit into one entry; a large operation records by apiary (product choice).</summary>
    internal const int MostColonies = 1_000;

    /// <summary>A control that is over this many days before its planned end still ran as planned (product choice).</summary>
    private const int DaysEarly = 2;

    internal static void Check(ControlRecord record, BookState state, KnowledgeBase knowledge, DateOnly today, Findings findings)
    {
        var controls = ControlList.Of(state, knowledge);
        findings.Day("start", record.Start, today);
        if (record.PlannedEnd is { } end)
        {
            if (end < record.Start)
                findings.Error("plannedEnd", end, ControlRuleTexts.FormatEndBeforeStart(Findings.Show(end), Findings.Show(record.Start)));
            else if (end > record.Start.AddDays(400))
                findings.Error("plannedEnd", end, ControlRuleTexts.FormatEndYearLater(Findings.Show(end)));
        }

        CheckColonies(record, state, findings);
        if (record.Colonies.Count > 0)
            CheckTexts(record, state, findings);
        if (string.IsNullOrWhiteSpace(record.Agent))
        {
            findings.Error("agent", record.Agent, ControlRuleTexts.NoControlNamed);
            return;
        }

        findings.Text("agent", record.Agent, 80);
        if (controls.Find(record.Agent) is not { } agent)
        {
            findings.Doubt("agent", record.Agent, ControlRuleTexts.FormatControlNotKnown(record.Agent));
            return;
        }

        CheckDays(record, agent, findings);
        CheckAir(record, agent, findings);
        foreach (var id in record.Colonies.Distinct())
        {
            if (state.Colonies.TryGetValue(id, out var colony))
                ControlDoubts.Check(record, agent, colony, state, controls, findings);
        }
    }

    internal static void Check(ControlEnded record, BookState state, KnowledgeBase knowledge, DateOnly today, Findings findings)
    {
        findings.Day("on", record.On, today);
        findings.Text("reason", record.Reason, 500);
        findings.Text("note", record.Note, 2000);
        if (record.Ending != ControlEnding.AsPlanned && string.IsNullOrWhiteSpace(record.Reason))
            findings.Error("reason", record.Reason, ControlRuleTexts.EndReasonMissing);
        if (!state.Controls.TryGetValue(record.Control, out var control))
        {
            findings.Error("control", record.Control, ControlRuleTexts.UseUnknown);
            return;
        }

        var facts = control.Facts;
        if (record.On < facts.Start)
            findings.Error("on", record.On, ControlRuleTexts.FormatOverBeforeStart(Findings.Show(record.On), Findings.Show(facts.Start)));
        if (record.Colonies is { Count: 0 })
            findings.Error("colonies", 0, ControlRuleTexts.EndColoniesEmpty);
        foreach (var colony in (record.Colonies ?? []).Where(colony => !facts.Colonies.Contains(colony)))
            findings.Error("colonies", colony, ControlRuleTexts.FormatColonyWithoutControl(state.Colonies.TryGetValue(colony, out var known) ? known.Name : colony.ToString()));
        if ((record.Colonies ?? facts.Colonies).Any(colony => control.EndIn(colony) is not null))
            findings.Doubt("on", record.On, ControlRuleTexts.EndKnown);
        if (facts.PlannedEnd is null && record.Ending == ControlEnding.AsPlanned && ControlList.Of(state, knowledge).Find(facts.Agent) is { } agent
            && record.On >= facts.Start && record.On.DayNumber - facts.Start.DayNumber < (agent.Days.Low ?? agent.Days.Value) - 1)
        {
            findings.Doubt("on", record.On, ControlRuleTexts.FormatShortUse(record.On.DayNumber - facts.Start.DayNumber, agent.Title, Findings.Show(agent.Days.Low ?? agent.Days.Value)));
        }

        if (facts.PlannedEnd is { } planned && record.Ending == ControlEnding.AsPlanned && record.On >= facts.Start)
        {
            if (record.On < planned.AddDays(-DaysEarly))
                findings.Error("ending", record.On, ControlRuleTexts.FormatFarBeforePlannedEnd(Findings.Show(record.On), planned.DayNumber - record.On.DayNumber, Findings.Show(planned)));
            else if (record.On < planned)
                findings.Doubt("on", record.On, ControlRuleTexts.FormatBeforePlannedEnd(Findings.Show(planned)));
            else if (record.On > planned.AddDays(7))
                findings.Doubt("on", record.On, ControlRuleTexts.FormatLongAfterPlannedEnd(Findings.Show(planned)));
        }
    }

    private static void CheckColonies(ControlRecord record, BookState state, Findings findings)
    {
        if (record.Colonies.Count is 0 or > MostColonies)
            findings.Error("colonies", record.Colonies.Count, ControlRuleTexts.FormatColoniesNumber(MostColonies, record.Colonies.Count));
        if (record.Colonies.Distinct().Count() != record.Colonies.Count)
            findings.Error("colonies", record.Colonies.Count, ControlRuleTexts.ColonyTwice);
        foreach (var id in record.Colonies.Distinct())
            RecordRules.LivesOn(RecordRules.Known(id, "colonies", state, findings), "start", record.Start, findings);
    }

    // A quantity is in the words of whoever writes it; where it begins with a number, that is above 0.
    private static bool IsNoQuantity(string? words) =>
        words?.Trim().Replace('−', '-').Split(' ')[0].Replace(',', '.') is { } first
        && double.TryParse(first, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && !(number > 0 && double.IsFinite(number));

    private static void CheckTexts(ControlRecord record, BookState state, Findings findings)
    {
        findings.Text("product", record.Product, 200);
        findings.Text("quantity", record.Quantity, 200);
        if (IsNoQuantity(record.Quantity))
            findings.Error("quantity", record.Quantity, ControlRuleTexts.QuantityNotAboveZero);
        findings.Text("batch", record.Batch, 100);
        findings.Text("supplier", record.Supplier, 300);
        findings.Text("proofOfPurchase", record.ProofOfPurchase, 300);
        findings.Text("by", record.By, 200);
        findings.Text("prescriber", record.Prescriber, 300);
        findings.Text("reason", record.Reason, 500);
        findings.Text("weather", record.Weather, 200);
        findings.Text("note", record.Note, 2000);
        findings.Range("withdrawalDays", record.WithdrawalDays, 0, 3650, QuantityTexts.WithdrawalPeriod);
        findings.Range("airLow", record.AirLow, -30, 60, QuantityTexts.AirTemperature);
        findings.Range("airHigh", record.AirHigh, -30, 60, QuantityTexts.AirTemperature);
        if (record.AirLow > record.AirHigh)
            findings.Error("airLow", record.AirLow, ControlRuleTexts.FormatLowestAboveHighest(Findings.Show(record.AirLow.Value), Findings.Show(record.AirHigh!.Value)));
        foreach (var jar in (record.ReasonJars ?? []).Where(jar => state.Jars.All(known => known.Id != jar)))
            findings.Error("reasonJars", jar, ControlRuleTexts.ReasonJarUnknown);
    }

    private static void CheckDays(ControlRecord record, ControlAgent agent, Findings findings)
    {
        if (record.PlannedEnd is not { } end || end < record.Start)
            return;
        var days = end.DayNumber - record.Start.DayNumber;
        var (least, most) = (agent.Days.Low ?? agent.Days.Value, agent.Days.High ?? agent.Days.Value);
        if (most > 1 && (days < least - 1 || days > most))
            findings.Doubt("plannedEnd", end, ControlRuleTexts.FormatDaysUnusual(days, agent.Title, Findings.Show(least), Findings.Show(most)));
    }

    private static void CheckAir(ControlRecord record, ControlAgent agent, Findings findings)
    {
        foreach (var limit in agent.Temperatures)
        {
            var (field, given) = limit.Of switch
            {
                DayTemperature.Minimum => ("airLow", record.AirLow),
                DayTemperature.Maximum => ("airHigh", record.AirHigh),
                _ => ("airHigh", (record.AirLow + record.AirHigh) / 2),
            };
            if (given is { } air && (limit.IsLeast ? air < limit.Degrees.Value : air > limit.Degrees.Value))
                findings.Doubt(field, air, limit.IsLeast
                    ? ControlRuleTexts.FormatAirTooCold(Findings.Show(air), Findings.Show(limit.Degrees.Value), agent.Title, limit.Text)
                    : ControlRuleTexts.FormatAirTooWarm(Findings.Show(air), Findings.Show(limit.Degrees.Value), agent.Title, limit.Text));
        }
    }
}
