using System.Text.Json;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;

namespace Foundress.Book.Histories;

/// <summary>Which entries were overtaken by which: where two say different things of one field, the later one holds.</summary>
public static class Supersessions
{
    /// <summary>Finds them among entries, for example those of one colony.</summary>
    /// <param name="entries">The entries, in any order.</param>
    /// <param name="state">The book they stand in: what was struck neither overtakes nor is overtaken.</param>
    /// <returns>What no longer holds of an entry, by the entry's id. Entries that hold whole are not among them.</returns>
    public static IReadOnlyDictionary<EntryId, IReadOnlyList<Superseded>> Among(IEnumerable<Entry> entries, BookState state)
    {
        var found = new Dictionary<EntryId, List<Superseded>>();
        var holds = new Dictionary<(string Subject, string? Field), (Entry Entry, string Value)>();
        foreach (var entry in entries.Where(entry => !state.Struck.ContainsKey(entry.Id)).Order())
        {
            if (entry.Schema > RecordKinds.CurrentSchema || RecordJson.TryRead(entry.Kind, entry.Payload, out _) is not { } record)
                continue;
            foreach (var (subject, field, value) in Said(record, entry.Payload))
            {
                if (holds.TryGetValue((subject, field), out var before) && before.Value != value)
                {
                    if (!found.TryGetValue(before.Entry.Id, out var list))
                        found[before.Entry.Id] = list = [];
                    list.Add(new Superseded(field, field is null ? null : value, entry, before.Entry.Device != entry.Device));
                }

                holds[(subject, field)] = (entry, value);
            }
        }

        return found.ToDictionary(pair => pair.Key, pair => (IReadOnlyList<Superseded>)pair.Value);
    }

    // Records of which only the latest of a subject counts, and those whose fields count one by one.
    private static IEnumerable<(string Subject, string? Field, string Value)> Said(Record record, string payload) => record switch
    {
        ApiaryRecord apiary => Fields($"apiary {apiary.Apiary}", "apiary", payload),
        ColonyRecord colony => Fields($"colony {colony.Colony}", "colony", payload),
        AgentRecord agent => Fields($"agent {agent.Agent}", "agent", payload),
        PolicyRecord => Fields("policy", string.Empty, payload),
        ColonyDied died => [($"end of {died.Colony}", null, payload)],
        ColoniesUnited united => [($"end of {united.Colony}", null, payload)],
        ColonySplit split => [($"making of {split.Colony}", null, payload)],
        ControlRecord control => [($"control {control.Control}", null, payload)],
        NormalsRecord normals => [($"normals {normals.Apiary}", null, payload)],
        ApiaryDays days => [($"days {days.Apiary}", null, payload)],
        DueSnoozed snoozed => [($"due {snoozed.Due}", null, payload)],
        RoundRecord round => [($"round {round.Round}", null, payload)],
        RoundSkip skip => [($"skip {skip.Round} {skip.Colony}", null, payload)],
        RoundStop stop => [($"stop {stop.Round} {stop.Apiary}", null, payload)],
        JarPlaced placed => [($"place of {placed.Jar}", null, payload)],
        _ => [],
    };

    private static List<(string Subject, string? Field, string Value)> Fields(string subject, string id, string payload)
    {
        try
        {
            using var document = JsonDocument.Parse(payload);
            return [.. document.RootElement.EnumerateObject()
                .Where(field => field.Name != id && field.Value.ValueKind != JsonValueKind.Null)
                .Select(field => (subject, (string?)field.Name, field.Value.ToString()))];
        }
        catch (InvalidOperationException)
        {
            // A field of somebody's own whose name or text is half a surrogate pair: such a record overtakes nothing by name.
            return [];
        }
    }
}
