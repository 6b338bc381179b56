using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;
using Foundress.Book.Journal;
using Foundress.Storage;
using Microsoft.Extensions.Time.Testing;

namespace Foundress.Server.Tests;

/// <summary>Entries of a device whose clock is wrong, and a server whose own is.</summary>
public sealed class ClockTests : IAsyncDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 6, 1, 8, 0, 0, TimeSpan.Zero);

    private readonly FakeTimeProvider _time = new(Now);
    private readonly Site _site;

    public ClockTests() => _site = new Site(onPostgres: false, new BookStoreOptions { Time = _time });

    public ValueTask DisposeAsync() => _site.DisposeAsync();

    [Theory]
    [InlineData(0, true)]
    [InlineData(-9_000, true)]
    [InlineData(24, true)]
    [InlineData(25, false)]
    [InlineData(200_000, false)]
    public async Task Send_WrittenAt_IsTakenUpToADayAhead(int hours, bool taken)
    {
        await _site.InitializeAsync();
        var answer = await _site.SendAsync("home", Written(1, Now.AddHours(hours)));
        Assert.Equal(taken ? 1 : 0, answer.GetProperty("accepted").GetInt32());
        if (taken)
            return;
        var refused = Assert.Single(answer.GetProperty("refused").EnumerateArray());
        Assert.StartsWith("clock: ", refused.GetProperty("reason").GetString(), StringComparison.Ordinal);
        Assert.Contains("1 Jun 2026", refused.GetProperty("reason").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Send_ServersClockFellBackAYear_GoesByTheLastEntryTakenIn()
    {
        await _site.InitializeAsync();
        await _site.SendAsync("home", Written(1, Now));
        _time.AdjustTime(Now.AddYears(-1));
        Assert.Equal(1, (await _site.SendAsync("home", Written(2, Now.AddHours(3)))).GetProperty("accepted").GetInt32());
        var about = await _site.Caller.GetFromJsonAsync<JsonElement>("api/v1/about");
        Assert.Equal(Now, about.GetProperty("now").GetDateTimeOffset());
    }

    [Fact]
    public async Task Send_ServersClockIsOlderThanTheProgram_JudgesNoClock()
    {
        _time.AdjustTime(DateTimeOffset.Parse("1970-01-02T00:00:00Z", CultureInfo.InvariantCulture));
        await _site.InitializeAsync();
        Assert.Equal(1, (await _site.SendAsync("home", Written(1, Now))).GetProperty("accepted").GetInt32());
    }

    private static Entry Written(int number, DateTimeOffset at) =>
        Site.Entry(number) with { Clock = new HybridTime(at.ToUnixTimeMilliseconds(), 0) };
}
