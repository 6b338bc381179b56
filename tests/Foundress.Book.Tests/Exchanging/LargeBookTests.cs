using Foundress.Book.Exchanging;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Microsoft.Extensions.Time.Testing;

namespace Foundress.Book.Tests.Exchanging;

/// <summary>A server's book too large to be taken without a word.</summary>
public sealed class LargeBookTests
{
    private readonly FakeTimeProvider _world = new(new DateTimeOffset(2026, 6, 1, 8, 0, 0, TimeSpan.Zero));
    private readonly ModelServer _server;
    private readonly FaultyLink _link;
    private readonly NumberedIds _ids = new(1);
    private int _devices;

    public LargeBookTests()
    {
        _server = new ModelServer(_world);
        _link = new FaultyLink(_server, new Random(1));
    }

    [Fact]
    public async Task Exchange_FirstMeetingWithALargeBook_WaitsForTheKeepersWordAndGivesItsOwn()
    {
        await FilledAsync();
        // One of them it holds itself.
        _server.Told = ExchangeRound.LargeBook + 2;
        var phone = Device();
        var own = await phone.WriteAsync(new PolicyRecord(OwnAct: 3));
        Assert.True(await phone.ExchangeAsync());
        Assert.Equal(_server.Told, phone.Offered);
        Assert.Equal([own.Id], phone.Entries.Select(entry => entry.Id));
        Assert.Contains(own, _server.Entries);

        await phone.ChooseAsync();
        Assert.True(await phone.ExchangeAsync());
        Assert.Null(phone.Offered);
        Assert.Equal(_server.Entries.Count(), phone.Entries.Count());
    }

    [Fact]
    public async Task Exchange_BookAtTheLimit_IsTaken()
    {
        await FilledAsync();
        _server.Told = ExchangeRound.LargeBook;
        var phone = Device();
        Assert.True(await phone.ExchangeAsync());
        Assert.Null(phone.Offered);
        Assert.Equal(_server.Entries.Count(), phone.Entries.Count());
    }

    // A device that holds the whole goes on as before, also when the server was put back to a backup and all is read again.
    [Fact]
    public async Task Exchange_DeviceThatHasTakenTheBookBefore_IsNotAsked()
    {
        var filler = await FilledAsync();
        var phone = Device();
        Assert.True(await phone.ExchangeAsync());
        _server.Told = ExchangeRound.LargeBook * 2;
        _server.BackUp();
        _server.Restore(0);
        await filler.WriteAsync(new PolicyRecord(OwnAct: 2));
        Assert.True(await filler.ExchangeAsync());
        Assert.True(await phone.ExchangeAsync());
        Assert.Null(phone.Offered);
        Assert.Equal(2, phone.Ledger.State.Policy.OwnAct);
    }

    [Fact]
    public async Task Exchange_ApiaryTheServerDoesNotKnow_LeavesTheOthers()
    {
        var filler = await FilledAsync();
        var near = filler.Ledger.State.ApiariesByName[0].Id;
        var phone = Device();
        await phone.ChooseAsync(new ApiaryId(_ids.Next()), near);
        Assert.True(await phone.ExchangeAsync());
        Assert.Equal(["1"], phone.Ledger.State.ColoniesIn(near, new DateOnly(2026, 6, 1)).Select(colony => colony.Name));
        Assert.Equal([near], phone.Ledger.State.ApiariesByName.Select(apiary => apiary.Id));
    }

    // Nothing is dropped that the server does not have.
    [Fact]
    public async Task ForgetCopied_OwnEntriesNotGivenYet_AreKept()
    {
        await FilledAsync();
        var phone = Device();
        Assert.True(await phone.ExchangeAsync());
        var near = phone.Ledger.State.ApiariesByName[0].Id;
        await phone.ChooseAsync(near);
        var own = await phone.WriteAsync(new ApiaryRecord(new ApiaryId(_ids.Next()), "Fresh"));
        await phone.ForgetCopiedAsync();
        Assert.Equal([own.Id], phone.Entries.Select(entry => entry.Id));
        Assert.True(await phone.ExchangeAsync());
        Assert.Contains(own, _server.Entries);
        Assert.True(phone.Entries.Count() < _server.Entries.Count());
        await phone.ChooseAsync();
        Assert.True(await phone.ExchangeAsync());
        Assert.Equal(_server.Entries.Count(), phone.Entries.Count());
    }

    private async Task<FieldDevice> FilledAsync()
    {
        var filler = Device();
        foreach (var name in new[] { "Near", "Far" })
        {
            var apiary = new ApiaryId(_ids.Next());
            await filler.WriteAsync(new ApiaryRecord(apiary, name));
            await filler.WriteAsync(new ColonyRecord(new ColonyId(_ids.Next()), "1", apiary, new DateOnly(2026, 3, 1)));
        }

        Assert.True(await filler.ExchangeAsync());
        return filler;
    }

    private FieldDevice Device() => new($"phone {++_devices}", new NumberedIds(1_000 * _devices), new SkewedTime(_world, TimeSpan.Zero), _link);
}
