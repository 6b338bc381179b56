using System.Diagnostics.Metrics;
using Foundress.Server.Running;
using Foundress.Storage;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;

namespace Foundress.Server.Tests.Running;

public class BackupDutyTests
{
    private static readonly TimeSpan Day = TimeSpan.FromDays(1);

    [Fact]
    public async Task Duty_ServerThatRunsForDays_MakesABackupADayAndGoesOnAfterAFailure()
    {
        using var folder = new TempData();
        var time = new FakeTimeProvider(new DateTimeOffset(2026, 7, 1, 9, 0, 0, TimeSpan.Zero));
        using var store = await BookStore.OpenAsync(folder.Path, new BookStoreOptions { Time = time });
        await store.AppendAsync("home", [Site.Entry(1), Site.Entry(2)]);
        using var services = new ServiceCollection().AddMetrics().BuildServiceProvider();
        var meters = new ServerMeters(services.GetRequiredService<IMeterFactory>(), store, time);
        using var duty = new BackupDuty(store, meters, time, NullLogger<BackupDuty>.Instance);
        await duty.StartAsync(default);
        try
        {
            await PassTimeAsync(time, () => store.Backups().Count == 1);
            await PassTimeAsync(time, () => store.Backups().Count == 2);
            var made = store.Backups();
            Assert.InRange(made[0].Made - made[1].Made, Day, Day + BackupDuty.Every + TimeSpan.FromSeconds(1));

            // A file where the folder of backups should be.
            Directory.Move(folder["backups"], folder["aside"]);
            await File.WriteAllTextAsync(folder["backups"], "");
            using var failures = new Failures(services.GetRequiredService<IMeterFactory>());
            await PassTimeAsync(time, () => failures.Count > 0);
            File.Delete(folder["backups"]);
            Directory.Move(folder["aside"], folder["backups"]);
            await PassTimeAsync(time, () => store.Backups().Count == 3);
        }
        finally
        {
            await duty.StopAsync(default);
        }
    }

    [Fact]
    public async Task Server_Running_HasTheDuty()
    {
        await using var site = new Site();
        await site.InitializeAsync();
        Assert.Single(site.Server.Services.GetServices<IHostedService>().OfType<BackupDuty>());
    }

    // The clock only goes on while something is waited for.
    private static async Task PassTimeAsync(FakeTimeProvider time, Func<bool> until)
    {
        for (var n = 0; n < 5_000 && !until(); n++)
        {
            time.Advance(BackupDuty.Every);
            await Task.Delay(10);
        }

        Assert.True(until());
    }

    private sealed class Failures : IDisposable
    {
        private readonly MeterListener _listener = new();
        private int _count;

        public Failures(IMeterFactory factory)
        {
            _listener.InstrumentPublished = (instrument, listener) =>
            {
                if (instrument.Name == "foundress.backup.duration" && instrument.Meter.Scope == factory)
                    listener.EnableMeasurementEvents(instrument);
            };
            _listener.SetMeasurementEventCallback<double>((_, _, tags, _) =>
            {
                if ((string?)tags[0].Value == "failed")
                    Interlocked.Increment(ref _count);
            });
            _listener.Start();
        }

        public int Count => Volatile.Read(ref _count);

        public void Dispose() => _listener.Dispose();
    }
}
