using System.Diagnostics.Metrics;
using Foundress.Server.Exchange;
using Foundress.Storage;

namespace Foundress.Server.Running;

/// <summary>
/// What the server measures of its own work. Tags say what became of something, from short fixed lists: never a name, nor
/// an id of a person, a place, a device or an operation.
/// </summary>
internal sealed class ServerMeters
{
    /// <summary>The meter's name.</summary>
    public const string Name = "Foundress";

    private static readonly InstrumentAdvice<double> Seconds =
        new() { HistogramBucketBoundaries = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30, 60] };

    private readonly Counter<long> _entries;
    private readonly Histogram<double> _exchanges;
    private readonly Histogram<double> _backups;

    public ServerMeters(IMeterFactory factory, BookStore store, TimeProvider time)
    {
        var meter = factory.Create(Name);
        _entries = meter.CreateCounter<long>("foundress.entries", "{entry}", "Entries that devices sent, by what became of them.");
        _exchanges = meter.CreateHistogram("foundress.exchange.duration", "s", "How long exchanges of entries took.", advice: Seconds);
        _backups = meter.CreateHistogram("foundress.backup.duration", "s", "How long backups took.", advice: Seconds);
        meter.CreateObservableGauge("foundress.backup.age", () => Age(store, time), "s", "How old the newest backup is; nothing while there is none.");
        meter.CreateObservableGauge("foundress.book.size", () => Size(store), "By", "How large the book's file is, with its latest changes.");
    }

    /// <summary>Entries that were sent.</summary>
    public void Sent(ExchangeAnswer answer)
    {
        Count(answer.Accepted, "accepted");
        Count(answer.Known, "known");
        Count(answer.Refused.Count, "refused");
    }

    /// <summary>An exchange that is over.</summary>
    public void Exchanged(bool sent, WorkEnd end, TimeSpan took) =>
        _exchanges.Record(took.TotalSeconds, new("direction", sent ? "send" : "take"), new("outcome", Word(end)));

    /// <summary>A backup that is over.</summary>
    public void BackedUp(WorkEnd end, TimeSpan took) => _backups.Record(took.TotalSeconds, new KeyValuePair<string, object?>("outcome", Word(end)));

    private void Count(long number, string outcome)
    {
        if (number > 0)
            _entries.Add(number, new KeyValuePair<string, object?>("outcome", outcome));
    }

    private static string Word(WorkEnd end) => end switch
    {
        WorkEnd.Done => "done",
        WorkEnd.Refused => "refused",
        _ => "failed",
    };

    private static IEnumerable<Measurement<double>> Age(BookStore store, TimeProvider time) =>
        store.Backups() is [var newest, ..] ? [new((time.GetUtcNow() - newest.Made).TotalSeconds)] : [];

    // A book in another database has no file here, and that database's own measurements tell its size.
    private static IEnumerable<Measurement<long>> Size(BookStore store)
    {
        var file = new FileInfo(store.Folder.Database);
        if (!file.Exists)
            return [];
        var changes = new FileInfo(store.Folder.Database + "-wal");
        return [new(file.Length + (changes.Exists ? changes.Length : 0))];
    }
}
