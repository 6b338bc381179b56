using Foundress.Book.Journal;
using Foundress.Book.Records;
using Microsoft.Extensions.Time.Testing;

namespace Foundress.Book.Tests.Exchanging;

/// <summary>A phone whose clock is wrong: what it writes is neither lost nor wins for ever, and what it changes after having seen a change does win.</summary>
public sealed class WrongClockTests
{
    private static readonly ApiaryId Place = new(new Guid(7, 0, 0, new byte[8]));

    private readonly FakeTimeProvider _world = new(new DateTimeOffset(2026, 6, 1, 8, 0, 0, TimeSpan.Zero));
    private readonly ModelServer _server;
    private readonly FaultyLink _link;
    private int _devices;

    public WrongClockTests() => (_server, _link) = NewServer();

    [Theory]
    [InlineData(400)]
    [InlineData(20_000)]
    public async Task Write_PhoneFarAhead_IsKeptAndDoesNotWinForEver(int days)
    {
        var (wrong, right) = (Device(days), Device(0));
        var written = await wrong.WriteAsync(new ApiaryRecord(Place, "from the wrong clock"));
        _world.Advance(TimeSpan.FromHours(1));
        await ExchangeAsync(wrong, right);
        Assert.Equal("from the wrong clock", right.Ledger.State.Apiaries[Place].Name);
        await right.WriteAsync(new ApiaryRecord(Place, "changed later"));
        await ExchangeAsync(right, wrong);
        Assert.Equal("changed later", wrong.Ledger.State.Apiaries[Place].Name);
        // The clock was wrong by the same all the time, so the time of writing is known to the second.
        Assert.Equal(_world.GetUtcNow().AddHours(-1), wrong.Ledger.Find(written.Id)!.Clock.Instant);
    }

    [Fact]
    public async Task Write_PhoneFarAheadAfterItHasHeardTheServer_BearsTheServersTime()
    {
        var phone = Device(400);
        await phone.WriteAsync(new ApiaryRecord(Place, "before"));
        await ExchangeAsync(phone);
        var entry = await phone.WriteAsync(new ApiaryRecord(Place, "after"));
        Assert.Equal(_world.GetUtcNow(), entry.Clock.Instant);
        Assert.Equal("after", phone.Ledger.State.Apiaries[Place].Name);
    }

    [Fact]
    public async Task Write_ClockPutRightBeforeTheExchange_IsTakenToBeWrittenByThenInTheSameOrder()
    {
        var phone = Device(400);
        var first = await phone.WriteAsync(new ApiaryRecord(Place, "first"));
        var second = await phone.WriteAsync(new ApiaryRecord(Place, "second"));
        phone.Time.Skew = TimeSpan.Zero;
        phone.Restart();
        await ExchangeAsync(phone);
        Assert.Equal(["first", "second"], phone.Ledger.Entries.Select(entry => ((ApiaryRecord)RecordJson.TryRead(entry.Kind, entry.Payload, out _)!).Name));
        Assert.Equal([first.Id, second.Id], phone.Ledger.Entries.Select(entry => entry.Id));
        Assert.All(phone.Ledger.Entries, entry => Assert.Equal(_world.GetUtcNow(), entry.Clock.Instant));
    }

    [Fact]
    public async Task Write_CorrectedEntryHadGotAboutByAFile_AllEndWithTheCorrectedOne()
    {
        var (wrong, right) = (Device(400), Device(0));
        var written = await wrong.WriteAsync(new ApiaryRecord(Place, "by file and by server"));
        await right.TakeInAsync("home", [written], pending: true);
        await ExchangeAsync(wrong, right, wrong, right);
        Assert.Equal(wrong.Ledger.Entries, right.Ledger.Entries);
        Assert.Equal(_server.Entries, right.Ledger.Entries);
        right.Restart();
        Assert.Equal(_server.Entries, right.Ledger.Entries);
    }

    // Offline again and begun anew, it has only its store to know by that its clock lags.
    [Theory]
    [InlineData(-2)]
    [InlineData(-9_000)]
    public async Task Write_PhoneFarBehind_WinsOverWhatItHasSeen(int days)
    {
        var (wrong, right) = (Device(days), Device(0));
        await right.WriteAsync(new ApiaryRecord(Place, "seen"));
        await ExchangeAsync(right, wrong);
        wrong.Restart();
        await wrong.WriteAsync(new ApiaryRecord(Place, "changed"));
        await wrong.WriteAsync(new ApiaryRecord(Place, "and again"));
        await ExchangeAsync(wrong, right);
        Assert.Equal("and again", right.Ledger.State.Apiaries[Place].Name);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public async Task Write_ADayOff_NeedsNoCorrection(int days)
    {
        var phone = Device(days);
        var entry = await phone.WriteAsync(new ApiaryRecord(Place, "a day off"));
        await ExchangeAsync(phone);
        Assert.Equal([entry], _server.Entries);
    }

    [Fact]
    public async Task Write_ServersOwnClockIsOfTheLastCentury_IsNotFollowed()
    {
        _world.AdjustTime(new DateTimeOffset(1999, 12, 31, 23, 0, 0, TimeSpan.Zero));
        var today = new DateTimeOffset(2026, 6, 1, 8, 0, 0, TimeSpan.Zero);
        var phone = Device((today - _world.GetUtcNow()).Days + 1);
        var entry = await phone.WriteAsync(new ApiaryRecord(Place, "right"));
        await ExchangeAsync(phone);
        // The server of this model judges by its wrong clock; the phone keeps what was refused, as it was written.
        Assert.Equal([entry.Id], phone.Store.Refused);
        Assert.Equal([entry], phone.Entries);
        Assert.True((await phone.WriteAsync(new ApiaryRecord(Place, "later"))).Clock > entry.Clock);
        _world.AdjustTime(today);
        phone.Time.Skew = TimeSpan.Zero;
        phone.Restart();
        await ExchangeAsync(phone);
        Assert.Empty(phone.Store.Refused);
        Assert.Equal(2, _server.Entries.Count());
    }

    private static async Task ExchangeAsync(params FieldDevice[] devices)
    {
        foreach (var device in devices)
            Assert.True(await device.ExchangeAsync());
    }

    private (ModelServer, FaultyLink) NewServer()
    {
        var server = new ModelServer(_world);
        return (server, new FaultyLink(server, new Random(1)));
    }

    private FieldDevice Device(int daysOff)
    {
        var number = ++_devices;
        return new FieldDevice($"phone {number}", new NumberedIds(number), new SkewedTime(_world, TimeSpan.FromDays(daysOff)), _link);
    }
}
