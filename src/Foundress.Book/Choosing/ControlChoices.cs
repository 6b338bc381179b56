using Foundress.Book.Controls;
using Foundress.Book.Wording;
using Foundress.Knowledge;

namespace Foundress.Book.Choosing;

/// <summary>Which controls are workable in a situation, and why each of the others is not.</summary>
/// <remarks>It informs and never prescribes: the label, local law and licensed practice decide.</remarks>
public static class ControlChoices
{
    /// <summary>Every control that is offered: workable ones first, then those with something not known, then those ruled out; gentlest first.</summary>
    /// <param name="situation">The situation.</param>
    /// <param name="controls">The operation's controls.</param>
    public static IReadOnlyList<ControlOffer> For(Situation situation, ControlList controls) =>
        [.. controls.All
            .Where(agent => agent.IsOffered)
            .Select(agent => For(agent, situation, controls))
            .OrderBy(offer => offer.Workability)
            .ThenBy(offer => offer.Agent.HazardRank.Value)
            .ThenBy(offer => offer.Agent.LabourRank.Value)];

    /// <summary>One control.</summary>
    public static ControlOffer For(ControlAgent agent, Situation situation, ControlList controls)
    {
        var days = (int)agent.Days.Value;
        var end = agent.UsualEnd(situation.Start);
        var reasons = new Reasons();
        if (controls.IsRefused(agent.Id))
            reasons.Against(Ground.Refused, ChoosingTexts.Refused);
        SuperReasons.Find(agent, situation, end, reasons);
        WeatherReasons.Find(agent, situation, Math.Max(days, 1), reasons);
        ColonyReasons.Find(agent, situation, end, reasons);
        HistoryReasons.Find(agent, situation, controls, reasons);
        CheckGear(agent, situation, controls, reasons);
        CheckOrganic(agent, situation, reasons);
        return new(
            agent, situation.Start, end, reasons.AgainstIt, reasons.MissingFirst,
            [.. agent.Cautions.Select(caution => caution.Text), .. reasons.Notes, .. agent.Risks.Select(risk => risk.Text)]);
    }

    /// <summary>The first day on which a control is workable, or at least not ruled out.</summary>
    /// <param name="agent">The control.</param>
    /// <param name="at">The situation on a day.</param>
    /// <param name="controls">The operation's controls.</param>
    /// <param name="from">First day looked at.</param>
    /// <param name="days">Days looked at, 1 or more.</param>
    /// <returns>Null when it is ruled out on all of them.</returns>
    public static DateOnly? FirstDay(ControlAgent agent, Func<DateOnly, Situation> at, ControlList controls, DateOnly from, int days)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(days, 1);
        for (var i = 0; i < days; i++)
        {
            if (For(agent, at(from.AddDays(i)), controls).Workability != Workability.RuledOut)
                return from.AddDays(i);
        }

        return null;
    }

    private static void CheckGear(ControlAgent agent, Situation situation, ControlList controls, Reasons reasons)
    {
        var needed = controls.GearOf(agent);
        if (needed.Count == 0)
            return;
        var list = Say.List([.. needed.Select(gear => gear.Text)], 8);
        if (situation.Gear is not { } has)
        {
            reasons.Note(ChoosingTexts.FormatYouNeed(list));
            return;
        }

        var lacking = needed.Where(gear => !has.Contains(gear.Id)).Select(gear => gear.Text).ToArray();
        if (lacking.Length > 0)
            reasons.Against(Ground.Gear, ChoosingTexts.FormatGearLacking(Say.List(lacking, 8)));
        else
            reasons.Note(ChoosingTexts.FormatUseGear(list));
    }

    private static void CheckOrganic(ControlAgent agent, Situation situation, Reasons reasons)
    {
        if (situation.CertifiedOrganic != true)
            return;
        if (agent.Organic.Use == OrganicUse.NotAllowed)
            reasons.Against(Ground.Organic, $"{ChoosingTexts.CertifiedOrganic} {agent.Organic.Text}", agent.Organic.Source.Text);
        else if (agent.Organic.Use == OrganicUse.AskCertifier)
            reasons.Missing(Ground.Organic, $"{ChoosingTexts.AskCertifier} {agent.Organic.Text}", agent.Organic.Source.Text);
    }
}
