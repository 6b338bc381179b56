using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using System.Net;
using Foundress.Server.Running;
using Microsoft.Extensions.DependencyInjection;
using OpenTelemetry.Metrics;
using OpenTelemetry.Trace;

namespace Foundress.Server.Tests.Running;

public class MeterTests
{
    private static readonly string[] Words = ["accepted", "known", "refused", "done", "failed", "send", "take"];

    [Fact]
    public async Task Meters_ExchangesAndBackups_AreCountedAndNameNobody()
    {
        await using var site = new Site();
        await site.InitializeAsync();
        var factory = site.Server.Services.GetRequiredService<IMeterFactory>();
        var seen = new ConcurrentQueue<(string Name, double Value, string Tags)>();
        using var listener = new MeterListener();
        listener.InstrumentPublished = (instrument, l) =>
        {
            if (instrument.Meter.Name == ServerMeters.Name && instrument.Meter.Scope == factory)
                l.EnableMeasurementEvents(instrument);
        };
        void Take(Instrument instrument, double value, ReadOnlySpan<KeyValuePair<string, object?>> tags)
        {
            foreach (var tag in tags)
            {
                Assert.Contains(tag.Key, KnownTagsOnly.Known);
                Assert.Contains(Assert.IsType<string>(tag.Value), Words);
            }

            seen.Enqueue((instrument.Name, value, string.Join(' ', tags.ToArray().Select(tag => tag.Value))));
        }

        listener.SetMeasurementEventCallback<long>((instrument, value, tags, _) => Take(instrument, value, tags));
        listener.SetMeasurementEventCallback<double>((instrument, value, tags, _) => Take(instrument, value, tags));
        listener.Start();
        double Sum(string name, string tags) => seen.Where(one => one.Name == name && one.Tags == tags).Sum(one => one.Value);
        int Times(string name, string tags) => seen.Count(one => one.Name == name && one.Tags == tags);

        listener.RecordObservableInstruments();
        Assert.Equal(0, Times("foundress.backup.age", ""));
        var size = Sum("foundress.book.size", "");
        Assert.True(size > 10_000, $"{size} bytes");

        await site.SendAsync("Zebedee's bees", Site.Entry(1, "Zebedee's bees"), Site.Entry(2, "Zebedee's bees"), Site.Entry(3, "Zebedee's bees"));
        await site.SendAsync("Zebedee's bees", Site.Entry(3, "Zebedee's bees"), Site.Entry(4, "Zebedee's bees"), Site.Entry(5, "of another"));
        await site.TakeAllAsync("Zebedee's bees");
        Assert.Equal(HttpStatusCode.BadRequest, (await site.Caller.PostAsync(Site.Entries("home"), Site.Json("{"))).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await site.Caller.GetAsync(Site.Entries("home") + "?after=Zebedee")).StatusCode);
        Assert.Equal(HttpStatusCode.Created, (await site.Caller.PostAsync("api/v1/backups", null)).StatusCode);
        await site.Caller.GetAsync("api/v1/backups");

        Assert.Equal(4, Sum("foundress.entries", "accepted"));
        Assert.Equal(1, Sum("foundress.entries", "known"));
        Assert.Equal(1, Sum("foundress.entries", "refused"));
        Assert.Equal(2, Times("foundress.exchange.duration", "send done"));
        Assert.Equal(1, Times("foundress.exchange.duration", "send refused"));
        Assert.Equal(1, Times("foundress.exchange.duration", "take done"));
        Assert.Equal(1, Times("foundress.exchange.duration", "take refused"));
        Assert.Equal(1, Times("foundress.backup.duration", "done"));
        listener.RecordObservableInstruments();
        Assert.Equal(1, Times("foundress.backup.age", ""));
        Assert.InRange(Sum("foundress.backup.age", ""), -1, 3_600);
    }

    [Fact]
    public async Task Telemetry_NotAskedFor_IsNotThere()
    {
        await using var site = new Site();
        await site.InitializeAsync();
        Assert.Null(site.Server.Services.GetService<MeterProvider>());
        Assert.Null(site.Server.Services.GetService<TracerProvider>());
    }
}
