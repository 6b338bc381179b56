namespace Foundress.Book.Records;

/// <summary>What an entry of the journal says. One sealed type a kind; see <see cref="RecordKinds"/>.</summary>
public abstract record Record;
