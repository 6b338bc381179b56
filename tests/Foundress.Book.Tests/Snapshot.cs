using System.Text;
using Foundress.Book.State;

namespace Foundress.Book.Tests;

/// <summary>A state as text, so that two states can be compared whole.</summary>
internal static class Snapshot
{
    public static string Of(BookState state)
    {
        var text = new StringBuilder();
        foreach (var apiary in state.Apiaries.Values.OrderBy(a => a.Id.Value))
            text.AppendLine($"{apiary} {string.Join(' ', state.EntriesOf(apiary.Id).Select(e => e.Id))}");
        foreach (var colony in state.Colonies.Values.OrderBy(c => c.Id.Value))
        {
            text.AppendLine($"{colony.Id} {colony.Name} {string.Join(' ', colony.Stays)} {colony.End} {colony.SplitFrom} {colony.Note}");
            text.AppendLine(string.Join(' ', state.EntriesOf(colony.Id).Select(e => e.Id)));
            text.AppendLine(string.Join(' ', state.InspectionsOf(colony.Id).Select(i => i.Facts)));
            text.AppendLine(string.Join(' ', state.HappeningsOf(colony.Id).Select(h => $"{h.Entry.Id} {h.Facts}")));
            text.AppendLine(string.Join(' ', state.FallsOf(colony.Id).Select(f => f.Entry.Payload)));
            text.AppendLine(string.Join(' ', state.BroodOf(colony.Id).Select(b => b.Entry.Payload)));
        }

        foreach (var jar in state.Jars)
            text.AppendLine($"{jar.Id} {jar.Colony} {jar.Entry.Payload}");
        foreach (var (id, round) in state.Rounds.OrderBy(r => r.Key.Value))
            text.AppendLine($"{id} {round.Entry.Payload} {string.Join(' ', round.Open)}");
        foreach (var control in state.Controls.Values.OrderBy(c => c.Id.Value))
            text.AppendLine($"{control.Id} {control.Entry.Payload} {string.Join(' ', control.Ends.Select(e => e.Entry.Payload))}");
        foreach (var colony in state.Colonies.Keys.OrderBy(c => c.Value))
            text.AppendLine(string.Join(' ', state.CoursesOf(colony).Select(c => $"{c.Control.Id} {c.Start} {c.End} {c.Ending}")));
        foreach (var (id, agent) in state.OwnAgents.OrderBy(a => a.Key, StringComparer.Ordinal))
            text.AppendLine($"{id} {agent}");
        foreach (var (id, normals) in state.Normals.OrderBy(n => n.Key.Value))
            text.AppendLine($"{id} {string.Join(' ', normals.Highs)} {string.Join(' ', normals.Lows)}");
        foreach (var plan in state.ControlPlans)
            text.AppendLine($"{plan.Entry.Id} {plan.Entry.Payload}");
        foreach (var (id, days) in state.Days.OrderBy(d => d.Key.Value))
            text.AppendLine($"{id} {days}");
        foreach (var (key, snooze) in state.PutOff.OrderBy(p => p.Key, StringComparer.Ordinal))
            text.AppendLine($"{key} {snooze}");
        text.AppendLine(state.Policy.ToString());
        foreach (var (id, struck) in state.Struck.OrderBy(s => s.Key.Value))
            text.AppendLine($"{id} {struck}");
        foreach (var unreadable in state.Unreadable)
            text.AppendLine($"{unreadable.Entry.Id} {unreadable.Problem}");
        return text.ToString();
    }
}
