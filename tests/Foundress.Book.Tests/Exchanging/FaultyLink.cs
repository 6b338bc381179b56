using Foundress.Book.Exchanging;
using Foundress.Book.Journal;

namespace Foundress.Book.Tests.Exchanging;

/// <summary>
/// A bad line to the server: requests and answers get lost, what was sent arrives a second time and late, and things happen
/// between a request and its answer.
/// </summary>
/// <param name="server">The server.</param>
/// <param name="random">Decides; seeded by the trial.</param>
internal sealed class FaultyLink(ModelServer server, Random random) : IBookServer
{
    private readonly List<IReadOnlyList<Entry>> _late = [];

    /// <summary>How many of a hundred calls meet trouble of each sort; 0 for a good line.</summary>
    public int Trouble { get; set; }

    /// <summary>The most entries the server gives at a time.</summary>
    public int Page { get; set; } = ExchangeRound.Batch;

    /// <summary>What may happen while a request is on its way.</summary>
    public Func<Task>? Meanwhile { get; set; }

    /// <summary>Ids that a device was told are kept, since the last restore.</summary>
    public HashSet<EntryId> Acknowledged { get; } = [];

    public (int Requests, int Answers, int Late) Lost { get; private set; }

    public Task<AboutReply> AboutAsync() => CallAsync(server.About);

    public async Task<PushReply> PushAsync(string operation, IReadOnlyList<Entry> entries)
    {
        if (random.Next(100) < Trouble)
            _late.Add(entries);
        var reply = await CallAsync(() => server.Push(entries));
        if (reply.Incarnation == server.Incarnation)
            Acknowledged.UnionWith(entries.Select(entry => entry.Id).Where(id => !reply.Refused.ContainsKey(id)));
        return reply;
    }

    public Task<PulledEntries> PullAsync(string operation, long after) => CallAsync(() => server.Pull(after, Page));

    public Task<PulledEntries?> PullPartAsync(string operation, ApiaryId apiary, long after) => CallAsync(() => server.PullPart(apiary, after, Page));

    /// <summary>What was on its way all the time arrives now, again and in another order.</summary>
    public void Deliver()
    {
        foreach (var entries in _late.AsEnumerable().Reverse())
            server.Push(entries);
        Lost = Lost with { Late = Lost.Late + _late.Count };
        _late.Clear();
    }

    private async Task<T> CallAsync<T>(Func<T> call)
    {
        if (random.Next(100) < Trouble)
        {
            Lost = Lost with { Requests = Lost.Requests + 1 };
            throw new ExchangeException("the request was lost");
        }

        var answer = call();
        if (Meanwhile is not null)
            await Meanwhile();
        if (random.Next(100) < Trouble)
        {
            Lost = Lost with { Answers = Lost.Answers + 1 };
            throw new ExchangeException("the answer was lost");
        }

        return answer;
    }
}
