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
                findings.Error("plannedEnd", end, $"The end ({Findings.Show(end)}) is before the start ({Findings.Show(record.Start)}). Swap them, or correct one.");
            else if (end > record.Start.AddDays(400))
                findings.Error("plannedEnd", end, $"The end ({Findings.Show(end)}) is more than a year after the start. Correct the year.");
        }

        CheckColonies(record, state, findings);
        if (record.Colonies.Count > 0)
            CheckTexts(record, state, findings);
        if (string.IsNullOrWhiteSpace(record.Agent))
        {
            findings.Error("agent", record.Agent, "No control is named. Choose one, or write what was used.");
            return;
        }

        findings.Text("agent", record.Agent, 80);
        if (controls.Find(record.Agent) is not { } agent)
        {
            findings.Doubt("agent", record.Agent, $"'{record.Agent}' is not among the known controls, so nothing is known of its rules. Choose one of the list, add it as your own, or keep it as it was.");
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
            findings.Error("reason", record.Reason, "No reason is given. Say in a few words why it did not run as planned.");
        if (!state.Controls.TryGetValue(record.Control, out var control))
        {
            findings.Error("control", record.Control, "This use of a control is not in the book, or was struck out.");
            return;
        }

        var facts = control.Facts;
        if (record.On < facts.Start)
            findings.Error("on", record.On, $"The end ({Findings.Show(record.On)}) is before the start ({Findings.Show(facts.Start)}). Give the day it was over.");
        if (record.Colonies is { Count: 0 })
            findings.Error("colonies", 0, "No colony is named. Name those it ended in, or leave them out when it ended in all.");
        foreach (var colony in (record.Colonies ?? []).Where(colony => !facts.Colonies.Contains(colony)))
            findings.Error("colonies", colony, $"Colony {(state.Colonies.TryGetValue(colony, out var known) ? known.Name : colony)} did not get this control. Leave it out.");
        if ((record.Colonies ?? facts.Colonies).Any(colony => control.EndIn(colony) is not null))
            findings.Doubt("on", record.On, "The book already says when this ended. Strike the earlier entry out, or keep this one as the correction.");
        if (facts.PlannedEnd is null && record.Ending == ControlEnding.AsPlanned && ControlList.Of(state, knowledge).Find(facts.Agent) is { } agent
            && record.On >= facts.Start && record.On.DayNumber - facts.Start.DayNumber < (agent.Days.Low ?? agent.Days.Value) - 1)
        {
            findings.Doubt("on", record.On, $"That is {record.On.DayNumber - facts.Start.DayNumber} days after its start; usual for {agent.Title} are {Findings.Show(agent.Days.Low ?? agent.Days.Value)} at least. Say that it was stopped early, with the reason, or check the day.");
        }

        if (facts.PlannedEnd is { } planned && record.Ending == ControlEnding.AsPlanned && record.On >= facts.Start)
        {
            if (record.On < planned.AddDays(-DaysEarly))
                findings.Error("ending", record.On, $"{Findings.Show(record.On)} is {planned.DayNumber - record.On.DayNumber} days before the planned end ({Findings.Show(planned)}), so it did not run as planned. Choose stopped early and say why, correct the day, or put the planned end right first.");
            else if (record.On < planned)
                findings.Doubt("on", record.On, $"That is before the planned end ({Findings.Show(planned)}). Say that it was stopped early, with the reason, or check the day.");
            else if (record.On > planned.AddDays(7))
                findings.Doubt("on", record.On, $"That is more than a week after the planned end ({Findings.Show(planned)}). What is left in too long breeds mites that withstand it.");
        }
    }

    private static void CheckColonies(ControlRecord record, BookState state, Findings findings)
    {
        if (record.Colonies.Count is 0 or > MostColonies)
            findings.Error("colonies", record.Colonies.Count, $"1 to {MostColonies} colonies are expected, not {record.Colonies.Count}. Name the colonies that got it; record each apiary on its own.");
        if (record.Colonies.Distinct().Count() != record.Colonies.Count)
            findings.Error("colonies", record.Colonies.Count, "A colony is named twice. Name each once.");
        foreach (var id in record.Colonies.Distinct())
            RecordRules.LivesOn(RecordRules.Known(id, "colonies", state, findings), "start", record.Start, findings);
    }

    private static void CheckTexts(ControlRecord record, BookState state, Findings findings)
    {
        findings.Text("product", record.Product, 200);
        findings.Text("quantity", record.Quantity, 200);
        findings.Text("batch", record.Batch, 100);
        findings.Text("supplier", record.Supplier, 300);
        findings.Text("proofOfPurchase", record.ProofOfPurchase, 300);
        findings.Text("by", record.By, 200);
        findings.Text("prescriber", record.Prescriber, 300);
        findings.Text("reason", record.Reason, 500);
        findings.Text("weather", record.Weather, 200);
        findings.Text("note", record.Note, 2000);
        findings.Range("withdrawalDays", record.WithdrawalDays, 0, 3650, "a withdrawal period in days");
        findings.Range("airLow", record.AirLow, -30, 60, "an air temperature in degrees Celsius");
        findings.Range("airHigh", record.AirHigh, -30, 60, "an air temperature in degrees Celsius");
        if (record.AirLow > record.AirHigh)
            findings.Error("airLow", record.AirLow, $"The lowest temperature ({Findings.Show(record.AirLow.Value)}) is above the highest ({Findings.Show(record.AirHigh!.Value)}). Swap them.");
        foreach (var jar in (record.ReasonJars ?? []).Where(jar => state.Jars.All(known => known.Id != jar)))
            findings.Error("reasonJars", jar, "This jar is not in the book, or was struck out. Name another, or give the reason in words.");
    }

    private static void CheckDays(ControlRecord record, ControlAgent agent, Findings findings)
    {
        if (record.PlannedEnd is not { } end || end < record.Start)
            return;
        var days = end.DayNumber - record.Start.DayNumber;
        var (least, most) = (agent.Days.Low ?? agent.Days.Value, agent.Days.High ?? agent.Days.Value);
        if (most > 1 && (days < least - 1 || days > most))
            findings.Doubt("plannedEnd", end, $"{days} days is not usual for {agent.Title} ({Findings.Show(least)} to {Findings.Show(most)} days). The label decides; check the end.");
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
                findings.Doubt(field, air, $"{Findings.Show(air)} °C is {(limit.IsLeast ? "colder" : "warmer")} than {Findings.Show(limit.Degrees.Value)} °C for {agent.Title}. {limit.Text}");
        }
    }
}
