using System.Globalization;
using Foundress.Book.Journal;

namespace Foundress.Book.Exchanging;

/// <summary>
/// One round of "send what you lack, take what I lack" between a device and its server. It may be cut off anywhere, by the
/// network, the server or the end of the program, and the next round goes on: an entry is taken off the list only after
/// the server has said that it keeps it, and the position moves only after what came before it is on the device's disk.
/// </summary>
/// <param name="server">The server.</param>
/// <param name="store">What the device remembers.</param>
/// <param name="book">The open book.</param>
public sealed class ExchangeRound(IBookServer server, IExchangeStore store, IOpenBook book)
{
    /// <summary>Entries given or asked for at a time.</summary>
    public const int Batch = 500;

    /// <summary>A server's book that has so many entries more than the device is not taken before the keeper has said what to take.</summary>
    public const int LargeBook = 50_000;

    // The server takes bodies of 8 MB; a batch of unusually long records is made shorter.
    private const int GreatestBatchText = 2_000_000;

    private const string IncarnationKey = "incarnation";
    // Which life of the server was met before: that of operations which have kept none of their own.
    private const string EarlierKey = "incarnation-before";
    private const string ServerTimeKey = "server-time";

    private AboutReply? _about;

    /// <summary>How many entries the server has of an operation of which the keeper is to say first what this device takes; null otherwise.</summary>
    public long? Offered { get; private set; }

    /// <summary>The name under which a device remembers how far it has read an operation.</summary>
    public static string CursorKey(string operation) => "cursor:" + operation;

    /// <summary>Reminds the clock of the last time a server told, which it cannot be earlier than now.</summary>
    public static async Task RemindAsync(IExchangeStore store, HybridClock clock)
    {
        if (long.TryParse(await store.GetAsync(ServerTimeKey), NumberStyles.None, CultureInfo.InvariantCulture, out var milliseconds))
            clock.NotBefore(milliseconds);
    }

    /// <summary>Asks the server who it is.</summary>
    /// <exception cref="ExchangeException">It cannot be reached or does not answer as it should.</exception>
    public async Task<AboutReply> MeetAsync()
    {
        _about = await server.AboutAsync();
        if (_about.Now is { } now && now.ToUnixTimeMilliseconds() is var milliseconds and >= HybridClock.Earliest)
        {
            book.Clock.Hear(now, book.Entries.Select(entry => entry.Clock));
            await store.SetAsync(ServerTimeKey, milliseconds.ToString(CultureInfo.InvariantCulture));
        }

        var met = await store.GetAsync(IncarnationKey);
        if (_about.Incarnation is { } life && life != met)
        {
            if (met is not null)
                await store.SetAsync(EarlierKey, met);
            await store.SetAsync(IncarnationKey, life);
        }

        return _about;
    }

    /// <summary>
    /// Begins an operation anew if the server's book was restored or set up anew since the two exchanged it last: it may lack
    /// what it once had, so everything is given and asked for again. <see cref="MeetAsync"/> comes first.
    /// </summary>
    /// <returns>Whether it begins anew.</returns>
    public async Task<bool> BeginAsync(string operation)
    {
        if (_about is null)
            throw new InvalidOperationException("The server has not been asked who it is.");
        if (_about.Incarnation is not { } life)
            return false;
        var last = await store.GetAsync(LifeKey(operation)) ?? await store.GetAsync(EarlierKey);
        var anew = last is not null && last != life;
        if (anew)
            await ForgetProgressAsync(store, operation, book.Clock);
        if (last != life)
            await store.SetAsync(LifeKey(operation), life);
        return anew;
    }

    /// <summary>Gives what the server lacks and takes what the device lacks. <see cref="MeetAsync"/> comes first.</summary>
    /// <exception cref="ExchangeException">It was cut off; what was done until then is done.</exception>
    public async Task ExchangeAsync(string operation)
    {
        await BeginAsync(operation);
        ExchangeException? barred = null;
        try
        {
            // Of a reader nothing would be taken: what they recorded stays on the device, and they go on reading.
            if (_about!.ReadsOnly?.Contains(operation) != true)
                await GiveAsync(operation);
        }
        catch (ExchangeException error) when (error.IsForbidden)
        {
            barred = error;
        }

        await TakeAsync(operation);
        if (barred is not null)
            throw new ExchangeException(barred.Message, barred) { IsForbidden = true };
    }

    /// <summary>Forgets what was given and taken, so that the next round does all of it again.</summary>
    public static async Task ForgetProgressAsync(IExchangeStore store, string operation, HybridClock clock)
    {
        await store.UnsettleAsync(operation);
        await new TakenParts(store, operation).BeginAnewAsync(clock);
    }

    /// <summary>As many of the entries, from the first on, as go into one request; never none.</summary>
    public static IReadOnlyList<Entry> OneRequest(IReadOnlyList<Entry> entries)
    {
        var (count, text) = (0, 0);
        while (count < Math.Min(entries.Count, Batch) && (count == 0 || text + entries[count].Payload.Length <= GreatestBatchText))
            text += entries[count++].Payload.Length;
        return count == entries.Count ? entries : [.. entries.Take(count)];
    }

    private static string LifeKey(string operation) => "incarnation:" + operation;

    private async Task GiveAsync(string operation)
    {
        var repair = _about!.Now is { } now && now.ToUnixTimeMilliseconds() >= HybridClock.Earliest
            ? new ClockRepair(now, book.Clock.Offset)
            : null;
        var tried = new HashSet<EntryId>();
        while (await store.ReadPendingAsync(operation, Batch) is { Count: > 0 } pending)
        {
            // Once each: should the device not keep the correction, the server says what is wrong with the entry.
            if (repair?.Mend(pending.Where(entry => !tried.Contains(entry.Id))) is { Count: > 0 } mended)
            {
                tried.UnionWith(mended.Select(entry => entry.Id));
                await book.TakeInAsync(operation, mended, pending: true);
                continue;
            }

            var entries = OneRequest(pending);
            var reply = await server.PushAsync(operation, entries);
            await CheckLifeAsync(reply.Incarnation);
            await store.SettleAsync(operation, entries.Select(entry => (entry.Id, reply.Refused.GetValueOrDefault(entry.Id))));
        }
    }

    private async Task TakeAsync(string operation)
    {
        Offered = null;
        var parts = new TakenParts(store, operation);
        string? choice;
        do
        {
            choice = await parts.ChoiceAsync();
            if (choice is null && await parts.IsUntouchedAsync()
                && _about!.Entries?.GetValueOrDefault(operation) is { } there && there - book.Entries.Count() > LargeBook)
            {
                Offered = there;
                return;
            }

            IReadOnlyList<ApiaryId> chosen = TakenParts.Read(choice);
            if (chosen.Count == 0)
                await TakeAsync(operation, parts, null, choice);
            foreach (var apiary in chosen)
                await TakeAsync(operation, parts, apiary, choice);
        }
        while (await parts.ChoiceAsync() != choice);
    }

    private async Task TakeAsync(string operation, TakenParts parts, ApiaryId? part, string? choice)
    {
        var turn = await parts.TurnAsync();
        var (after, members) = await parts.PositionAsync(part, turn);
        // The keeper may choose something else meanwhile.
        while (await parts.ChoiceAsync() == choice)
        {
            var pulled = part is { } apiary ? await server.PullPartAsync(operation, apiary, after) : await server.PullAsync(operation, after);
            if (pulled is null)
                return;
            await CheckLifeAsync(pulled.Incarnation);
            var of = pulled.Members ?? string.Empty;
            if (after > 0 && of != members)
            {
                // A colony has come to the part, with entries older than the position.
                after = 0;
                continue;
            }

            await book.TakeInAsync(operation, pulled.Entries, pending: false);
            if (pulled.Next <= after && pulled.More)
                throw new ExchangeException(ExchangeTexts.FormatStaysAtPosition(after));
            (after, members) = (pulled.Next, of);
            await parts.KeepPositionAsync(part, turn, after, members);
            if (!pulled.More)
                return;
        }
    }

    // A backup may be put back between two requests, and another tab may already have met the new book: an answer of the
    // other life must neither take entries off the list nor move the position.
    private async Task CheckLifeAsync(string? incarnation)
    {
        if (incarnation is not null && await store.GetAsync(IncarnationKey) is { } met && met != incarnation)
            throw new ExchangeException(ExchangeTexts.OtherLife);
    }
}
