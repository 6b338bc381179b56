using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;

namespace Foundress.Book.Rules;

/// <summary>
/// What a record must satisfy before it is kept. The same rules hold on the phone, for imports and on the server's command
/// line. Entries that arrive from another device are not checked again: they are already facts of the book.
/// </summary>
public static class RecordRules
{
    /// <summary>Finds what is wrong with a record that is about to be written.</summary>
    /// <param name="record">The record.</param>
    /// <param name="state">What the book says now.</param>
    /// <param name="knowledge">The known methods, lines and measures.</param>
    /// <param name="today">The writer's own day.</param>
    /// <returns>All problems, gravest first; empty when the record is in order.</returns>
    public static IReadOnlyList<Problem> Check(Record record, BookState state, KnowledgeBase knowledge, DateOnly today)
    {
        var findings = new Findings();
        switch (record)
        {
            case ApiaryRecord apiary:
                SiteRules.Check(apiary, state, knowledge, findings);
                break;
            case ColonyRecord colony:
                ColonyRules.Check(colony, state, today, findings);
                break;
            case ColonyMoved moved:
                ColonyRules.Check(moved, state, today, findings);
                break;
            case ColonyDied died:
                ColonyRules.Check(died, state, today, findings);
                break;
            case ColonySplit split:
                ColonyRules.Check(split, state, today, findings);
                break;
            case ColoniesUnited united:
                ColonyRules.Check(united, state, today, findings);
                break;
            case InspectionRecord inspection:
                InspectionRules.Check(inspection, state, today, findings);
                break;
            case QueenRecord queen:
                HiveRules.Check(queen, state, today, findings);
                break;
            case ColonyBegan began:
                HiveRules.Check(began, state, today, findings);
                break;
            case BroodRemoved removed:
                HiveRules.Check(removed, state, today, findings);
                break;
            case RoundRecord round:
                RoundRules.Check(round, state, knowledge, today, findings);
                break;
            case RoundStop stop:
                RoundRules.Check(stop, state, today, findings);
                break;
            case RoundSkip skip:
                RoundRules.Check(skip, state, today, findings);
                break;
            case JarRecord jar:
                JarRules.Check(jar, state, knowledge, today, findings);
                break;
            case JarPlaced placed:
                JarRules.Check(placed, state, findings);
                break;
            case ControlRecord control:
                ControlRules.Check(control, state, knowledge, today, findings);
                break;
            case ControlEnded ended:
                ControlRules.Check(ended, state, knowledge, today, findings);
                break;
            case AgentRecord agent:
                AgentRules.Check(agent, state, knowledge, findings);
                break;
            case ControlPlanRecord plan:
                ControlPlanRules.Check(plan, state, today, findings);
                break;
            case NormalsRecord normals:
                NormalsRules.Check(normals, state, findings);
                break;
            case MiteFallRecord fall:
                OtherCountRules.Check(fall, state, today, findings);
                break;
            case OpenedBroodRecord opened:
                OtherCountRules.Check(opened, state, today, findings);
                break;
            case PolicyRecord policy:
                PolicyRules.Check(policy, state, knowledge, findings);
                break;
            case ApiaryDays days:
                DueRules.Check(days, state, today, findings);
                break;
            case DueSnoozed snoozed:
                DueRules.Check(snoozed, today, findings);
                break;
            case Strike:
                // Strikes name an entry, which the state does not hold: see CheckStrike.
                break;
            default:
                throw new ArgumentException($"There are no rules for {record.GetType().Name}.", nameof(record));
        }

        return [.. findings.All.OrderByDescending(problem => problem.Gravity)];
    }

    /// <summary>Finds what is wrong with a strike that is about to be written.</summary>
    /// <param name="strike">The strike.</param>
    /// <param name="ledger">The book.</param>
    public static IReadOnlyList<Problem> CheckStrike(Strike strike, Ledger ledger)
    {
        var findings = new Findings();
        if (string.IsNullOrWhiteSpace(strike.Reason))
            findings.Error("reason", strike.Reason, RuleTexts.StrikeReasonEmpty);
        findings.Text("reason", strike.Reason, 500);
        if (!ledger.Contains(strike.Entry))
            findings.Error("entry", strike.Entry, RuleTexts.EntryUnknown);
        else if (ledger.State.Struck.ContainsKey(strike.Entry))
            findings.Error("entry", strike.Entry, RuleTexts.EntryStruck);
        return findings.All;
    }

    internal static Colony? Known(ColonyId id, string field, BookState state, Findings findings)
    {
        if (state.Colonies.TryGetValue(id, out var colony))
            return colony;
        findings.Error(field, id, RuleTexts.ColonyUnknown);
        return null;
    }

    internal static void LivesOn(Colony? colony, string field, DateOnly day, Findings findings)
    {
        if (colony?.End is { } end && end.On < day)
        {
            findings.Doubt(field, day, end.Fate == ColonyFate.Died
                ? RuleTexts.FormatColonyDiedBefore(colony.Name, Findings.Show(end.On), Findings.Show(day))
                : RuleTexts.FormatColonyUnitedBefore(colony.Name, Findings.Show(end.On), Findings.Show(day)));
        }
    }
}
