using Foundress.Book.Records;

namespace Foundress.Book.Journal;

/// <summary>Writes records down as entries of one operation, in one author's name, on one device.</summary>
/// <param name="operation">The operation the entries belong to.</param>
/// <param name="author">Who writes.</param>
/// <param name="device">The device's own id.</param>
/// <param name="clock">The device's clock.</param>
/// <param name="ids">Where ids of entries come from.</param>
public sealed class Scribe(string operation, string author, string device, HybridClock clock, IIdSource ids)
{
    /// <summary>The operation the entries belong to.</summary>
    public string Operation => operation;

    /// <summary>Where new ids come from, for apiaries, colonies and rounds too.</summary>
    public IIdSource Ids => ids;

    /// <summary>Writes a record down now.</summary>
    public Entry Write(Record record) => Write(record, new EntryId(ids.Next()));

    /// <summary>Writes a record down now under an id that is already known, for example one made from an imported row.</summary>
    public Entry Write(Record record, EntryId id) =>
        new(id, operation, author, device, clock.Tick(), RecordKinds.Of(record), RecordKinds.CurrentSchema, RecordJson.Write(record));
}
