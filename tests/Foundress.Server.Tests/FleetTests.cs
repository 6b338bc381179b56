using System.Diagnostics;
using System.Globalization;
using System.Net;
using Foundress.Book;
using Foundress.Book.Forecasts;
using Foundress.Book.Forecasts.Exchange;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Knowledge;
using Foundress.PostgresForTests;
using Foundress.Server.Tests.Faults;
using Foundress.ServerForTests;
using Foundress.Storage;
using Foundress.Storage.Work;

namespace Foundress.Server.Tests;

/// <summary>Forecasts of a fleet, shared by several servers on one PostgreSQL database.</summary>
public sealed class FleetTests
{
    private const int Apiaries = 24;

    // Three processes; one is killed in the middle. Nothing is lost, nothing is there twice, and every forecast is the one
    // that the same book gives anywhere.
    [Fact]
    public async Task Forecasts_ThreeProcessesOneKilled_EachIsThereOnceAndRight()
    {
        Assert.SkipWhen(PostgresPrograms.Missing is not null, PostgresPrograms.Missing ?? "");
        var cluster = await PostgresCluster.Shared;
        var database = await cluster.BookAsync();
        using var data = new TempData();
        // The servers' clocks are this computer's, told in a place where it is noon: the day does not change meanwhile.
        var (zone, today) = Noon();
        var entries = Fleet(today);
        using (var store = await BookStore.OpenAsync(data.Path, new BookStoreOptions { Database = database, BackupAtStart = false }))
            await store.AppendAsync("home", entries);
        var setting = cluster.Setting(database.Database);
        ServerProcess[] servers = [];
        try
        {
            servers = await Task.WhenAll(Enumerable.Range(0, 3).Select(n => BuiltServer.StartAsync(Path.Combine(data.Path, $"{n}"), new Dictionary<string, string> { ["TZ"] = zone }, "--database", setting, "--forecasts")));
            using var store = await BookStore.OpenAsync(data.Path, new BookStoreOptions { Database = database, BackupAtStart = false });
            var queue = store.Work!;
            await UntilAsync(async () => (await queue.CountAsync()).GetValueOrDefault(WorkState.Done) >= 3);
            servers[0].Kill();
            // Whatever it had in hand comes back to the others when its minute is over.
            await cluster.ExecuteAsync(database.Database, "UPDATE work SET leased_until = clock_timestamp() WHERE state = 'leased'");
            await UntilAsync(async () => (await queue.CountAsync()).GetValueOrDefault(WorkState.Done) == Apiaries);

            Assert.Equal(new Dictionary<WorkState, long> { [WorkState.Done] = Apiaries }, await queue.CountAsync());
            Assert.Equal((long)Apiaries, await cluster.ExecuteAsync(database.Database, "SELECT count(DISTINCT apiary) FROM work WHERE result IS NOT NULL"));
            var workers = (long)(await cluster.ExecuteAsync(database.Database, "SELECT count(DISTINCT worker) FROM work"))!;
            Assert.InRange(workers, 2, 3);

            using var caller = new HttpClient { BaseAddress = servers[1].Address };
            var whole = new Ledger();
            whole.Add(entries);
            foreach (var apiary in whole.State.ApiariesByName.Take(2))
            {
                var answer = await caller.GetAsync($"api/v1/operations/home/apiaries/{apiary.Id}/forecast");
                Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
                var expected = new ApiaryForecaster(whole.State, KnowledgeBase.Load(), CultureInfo.InvariantCulture).Of(apiary, today);
                Assert.Equal(ForecastJson.Write(expected), await answer.Content.ReadAsStringAsync());
            }

            // A jar makes one apiary's forecast old; it is asked for, and the others stay.
            var first = whole.State.ApiariesByName[0];
            var jar = Entry(900_000, new JarRecord(today, "alcohol-wash", [40], JarBees.Counted(300), whole.State.ColoniesIn(first.Id, today)[0].Id));
            (await caller.PostAsync(Site.Entries("home"), Site.Json(jar))).EnsureSuccessStatusCode();
            Assert.Equal(HttpStatusCode.Accepted, (await caller.GetAsync($"api/v1/operations/home/apiaries/{first.Id}/forecast")).StatusCode);
            await UntilAsync(async () => (await caller.GetAsync($"api/v1/operations/home/apiaries/{first.Id}/forecast")).StatusCode == HttpStatusCode.OK);
            Assert.Equal(Apiaries + 1L, (await queue.CountAsync())[WorkState.Done]);
        }
        finally
        {
            Array.ForEach(servers, server => server.Dispose());
            await cluster.DropAsync(database);
        }
    }

    [Fact]
    public async Task Forecast_BookInAFile_SaysThatPhonesWorkOutTheirOwn()
    {
        await using var site = new Site(onPostgres: false);
        await site.InitializeAsync();
        var apiary = Guid.NewGuid();
        await Problem.IsAsync(HttpStatusCode.NotFound, "the book lies in a file", await site.Caller.GetAsync($"api/v1/operations/home/apiaries/{apiary}/forecast"));
    }

    private static (string Zone, DateOnly Today) Noon()
    {
        var now = DateTimeOffset.UtcNow;
        var hours = 12 - now.Hour;
        // Their signs are the other way round: Etc/GMT+3 is three hours behind.
        var zone = hours == 0 ? "Etc/GMT" : string.Create(CultureInfo.InvariantCulture, $"Etc/GMT{(hours < 0 ? '+' : '-')}{Math.Abs(hours)}");
        Assert.SkipUnless(TimeZoneInfo.TryFindSystemTimeZoneById(zone, out var found), $"This system does not know the zone {zone}.");
        return (zone, DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, found!).DateTime));
    }

    private static async Task UntilAsync(Func<Task<bool>> done)
    {
        var from = Stopwatch.GetTimestamp();
        while (!await done())
        {
            Assert.True(Stopwatch.GetElapsedTime(from) < TimeSpan.FromMinutes(3), "Nothing came of it in three minutes.");
            await Task.Delay(200);
        }
    }

    private static Entry[] Fleet(DateOnly today)
    {
        var entries = new List<Entry>();
        var number = 1;
        for (var a = 0; a < Apiaries; a++)
        {
            var apiary = new ApiaryId(new Guid(1_000 + a, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, 2));
            Write(new ApiaryRecord(apiary, $"Yard {a:00}", 50));
            for (var c = 0; c < 4; c++)
            {
                var colony = new ColonyId(new Guid((100 * a) + c, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, 3));
                Write(new ColonyRecord(colony, $"{c + 1}", apiary, today.AddDays(-200)));
                for (var jar = 0; jar < 4; jar++)
                    Write(new JarRecord(today.AddDays(-120 + (30 * jar)), "alcohol-wash", [(a + c + jar) % 9], JarBees.Counted(300), colony));
            }
        }

        return [.. entries];

        void Write(Foundress.Book.Records.Record record) => entries.Add(Entry(number++, record));
    }

    private static Entry Entry(int number, Foundress.Book.Records.Record record) => new(
        new EntryId(new Guid(number, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, 1)), "home", "keeper", "phone",
        new HybridTime(DateTimeOffset.UtcNow.AddDays(-1).ToUnixTimeMilliseconds() + number, 0), RecordKinds.Of(record), RecordKinds.CurrentSchema, RecordJson.Write(record));
}
