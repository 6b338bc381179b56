using CsCheck;
using Foundress.Book.Journal;
using Microsoft.Extensions.Time.Testing;

namespace Foundress.Book.Tests.Journal;

public sealed class HybridTimeTests
{
    private static readonly Gen<HybridTime> Times =
        Gen.Select(Gen.Long[0, (1L << 48) - 1], Gen.Int[0, ushort.MaxValue], (ms, counter) => new HybridTime(ms, counter));

    [Fact]
    public void Text_AnyTime_RoundTripsAndSortsAsTheTime() =>
        Gen.Select(Times, Times).Sample((a, b) =>
        {
            Assert.True(HybridTime.TryParse(a.ToString(), out var back));
            Assert.Equal(a, back);
            Assert.Equal(Math.Sign(a.CompareTo(b)), Math.Sign(string.CompareOrdinal(a.ToString(), b.ToString())));
        });

    [Theory]
    [InlineData("")]
    [InlineData("0199a3c1f2b4")]
    [InlineData("0199a3c1f2b4-00000")]
    [InlineData("0199a3c1f2bx-0000")]
    [InlineData("-199a3c1f2b4-0000")]
    public void TryParse_OtherForms_AreRefused(string text) => Assert.False(HybridTime.TryParse(text, out _));

    [Fact]
    public void Tick_WallClockStandsStillOrGoesBack_StillRises()
    {
        var time = new FakeTimeProvider(DateTimeOffset.UnixEpoch.AddDays(20_000)) { AutoAdvanceAmount = TimeSpan.Zero };
        var clock = new HybridClock(time);
        var first = clock.Tick();
        var second = clock.Tick();
        Assert.True(second > first);
        time.AdjustTime(DateTimeOffset.UnixEpoch.AddDays(19_000));
        Assert.True(clock.Tick() > second);
    }

    [Fact]
    public void Witness_ReadingHalfADayAhead_IsFollowed()
    {
        var time = new FakeTimeProvider(DateTimeOffset.UnixEpoch.AddDays(20_000));
        var clock = new HybridClock(time);
        var ahead = new HybridTime(time.GetUtcNow().AddHours(12).ToUnixTimeMilliseconds(), 7);
        clock.Witness(ahead);
        Assert.True(clock.Tick() > ahead);
    }

    [Fact]
    public void Witness_ReadingAYearAhead_IsNotFollowed()
    {
        var time = new FakeTimeProvider(DateTimeOffset.UnixEpoch.AddDays(20_000));
        var clock = new HybridClock(time);
        clock.Witness(new HybridTime(time.GetUtcNow().AddYears(1).ToUnixTimeMilliseconds(), 0));
        Assert.Equal(time.GetUtcNow().ToUnixTimeMilliseconds(), clock.Tick().Milliseconds);
    }
}
