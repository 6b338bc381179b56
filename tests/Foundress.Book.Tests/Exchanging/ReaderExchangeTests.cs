using Foundress.Book.Exchanging;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Microsoft.Extensions.Time.Testing;

namespace Foundress.Book.Tests.Exchanging;

/// <summary>A phone whose person may read the book and not record in it goes on reading, whatever it has recorded.</summary>
public sealed class ReaderExchangeTests
{
    private static readonly ApiaryId Place = new(new Guid(7, 0, 0, new byte[8]));
    private static readonly ApiaryId Later = new(new Guid(8, 0, 0, new byte[8]));

    private readonly FakeTimeProvider _world = new(new DateTimeOffset(2026, 6, 1, 8, 0, 0, TimeSpan.Zero));

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Exchange_ReaderWhoRecorded_TakesWhatOthersRecordAndKeepsTheirOwn(bool serverSays)
    {
        var server = new ModelServer(_world);
        var ids = new TimeOrderedIds(_world);
        var keeper = new FieldDevice("keeper", ids, new SkewedTime(_world, TimeSpan.Zero), new FaultyLink(server, new Random(1)));
        var door = new Door(new FaultyLink(server, new Random(2)), serverSays);
        var reader = new FieldDevice("reader", ids, new SkewedTime(_world, TimeSpan.Zero), door);
        await keeper.WriteAsync(new ApiaryRecord(Place, "the keeper's"));
        await keeper.ExchangeAsync();
        await reader.WriteAsync(new ApiaryRecord(Later, "the reader's"));
        _world.Advance(TimeSpan.FromHours(1));
        await reader.ExchangeAsync();
        await keeper.WriteAsync(new ApiaryRecord(Place, "changed"));
        await keeper.ExchangeAsync();
        await reader.ExchangeAsync();

        Assert.Equal("changed", reader.Ledger.State.Apiaries[Place].Name);
        Assert.Equal("the reader's", reader.Ledger.State.Apiaries[Later].Name);
        Assert.False(keeper.Ledger.State.Apiaries.ContainsKey(Later));
        Assert.Equal(serverSays ? 0 : 2, door.Knocks);

        // Made a helper, the reader's own goes up at last.
        door.Open = true;
        await reader.ExchangeAsync();
        await keeper.ExchangeAsync();
        Assert.Equal("the reader's", keeper.Ledger.State.Apiaries[Later].Name);
    }

    [Fact]
    public async Task Exchange_ServerRestoredWhileAnotherBookWasOpen_GivesTheFirstBookAgain()
    {
        var server = new ModelServer(_world);
        var link = new FaultyLink(server, new Random(1));
        var phone = new FieldDevice("phone", new TimeOrderedIds(_world), new SkewedTime(_world, TimeSpan.Zero), link);
        await phone.ExchangeAsync();
        server.BackUp();
        await phone.WriteAsync(new ApiaryRecord(Place, "written after the backup"));
        await phone.ExchangeAsync();
        server.Restore(0);
        Assert.Empty(server.Entries);

        // The restored server is met while another operation is the open one; this one is opened again later.
        await new ExchangeRound(link, phone.Store, phone).MeetAsync();
        await phone.ExchangeAsync();
        Assert.Single(server.Entries);
    }

    /// <summary>A server that lets this device read, and record only once the door is open.</summary>
    private sealed class Door(FaultyLink link, bool says) : IBookServer
    {
        public bool Open { get; set; }

        public int Knocks { get; private set; }

        public async Task<AboutReply> AboutAsync() => await link.AboutAsync() with { ReadsOnly = !says ? null : Open ? [] : ["home"] };

        public Task<PushReply> PushAsync(string operation, IReadOnlyList<Entry> entries)
        {
            if (Open)
                return link.PushAsync(operation, entries);
            Knocks++;
            throw new ExchangeException("not for readers") { IsForbidden = true };
        }

        public Task<PulledEntries> PullAsync(string operation, long after) => link.PullAsync(operation, after);

        public Task<PulledEntries?> PullPartAsync(string operation, ApiaryId apiary, long after) => link.PullPartAsync(operation, apiary, after);
    }
}
