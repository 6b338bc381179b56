using System.Diagnostics;
using System.Globalization;
using Foundress.Book;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Tests;
using Foundress.Book.Tests.Exchanging;

namespace Foundress.Server.Tests.Faults;

/// <summary>The real server, killed at moments that differ from run to run while phones exchange with it.</summary>
public sealed class KilledServerTests(ITestOutputHelper output)
{
    private const int Phones = 3;
    private const int Exchanges = 1_000;
    private const int ExchangesForEachKill = 36;

    [Fact]
    public async Task Exchange_ServerKilledAgainAndAgain_LosesAndDoublesNothing()
    {
        using var folder = new TempData();
        using var line = new Line();
        var watch = Stopwatch.StartNew();
        var server = await BuiltServer.StartAsync(folder.Path);
        try
        {
            line.LeadTo(server.Address);
            var phones = Enumerable.Range(0, Phones).Select(n => new Phone(n, line)).ToArray();
            var kills = 0;
            while (phones.Sum(phone => phone.Tried) < Exchanges)
            {
                using var down = new CancellationTokenSource();
                var enough = phones.Sum(phone => phone.Tried) + (ExchangesForEachKill / 2) + Random.Shared.Next(ExchangesForEachKill);
                var running = phones.Select(phone => Task.Run(() => phone.RunAsync(down.Token))).ToArray();
                while (phones.Sum(phone => phone.Tried) < enough)
                    await Task.Delay(1);
                await Task.Delay(Random.Shared.Next(0, 12));
                // The phones are told only afterwards, so that the kill falls into what they are doing.
                server.Kill();
                await down.CancelAsync();
                await Task.WhenAll(running);
                kills++;
                server.Dispose();
                server = await BuiltServer.StartAsync(folder.Path);
                line.LeadTo(server.Address);
                var held = await line.AllAsync("home");
                Assert.Empty(line.Acknowledged.Except(held.Select(entry => entry.Id)));
                Assert.Distinct(held.Select(entry => entry.Id));
            }

            var broken = phones.Sum(phone => phone.Broken);
            for (var n = 0; n < 2; n++)
            {
                foreach (var phone in phones)
                    Assert.True(await phone.Device.ExchangeAsync());
            }

            var written = phones.SelectMany(phone => phone.Written).ToArray();
            var whole = new Ledger();
            whole.Add(await line.AllAsync("home"));
            Assert.Equal(written.OrderBy(entry => entry.Id.Value), whole.Entries.OrderBy(entry => entry.Id.Value));
            var state = Snapshot.Of(whole.State);
            foreach (var phone in phones)
            {
                Assert.Equal(whole.Entries, phone.Device.Entries);
                Assert.Equal(state, Snapshot.Of(phone.Device.Ledger.State));
            }

            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{phones.Sum(phone => phone.Tried)} exchanges, {kills} kills, {broken} exchanges broken off, {written.Length} entries written, {line.Acknowledged.Count} acknowledged, 0 missing, 0 doubled, {watch.Elapsed.TotalSeconds:0} s"));
            Assert.True(broken > 0, "No kill fell into an exchange, so this proved nothing.");
        }
        finally
        {
            server.Dispose();
        }
    }

    private sealed class Phone(int number, Line line)
    {
        private readonly ColonyId _colony = new(new Guid(number + 1, 0, 0, new byte[8]));
        private readonly List<Entry> _written = [];
        private int _tried;

        public FieldDevice Device { get; } = new($"phone {number}", new NumberedIds(number + 1), new SkewedTime(TimeProvider.System, TimeSpan.FromHours(number)), line);

        public IReadOnlyList<Entry> Written => _written;

        public int Tried => Volatile.Read(ref _tried);

        public int Broken { get; private set; }

        public async Task RunAsync(CancellationToken down)
        {
            while (!down.IsCancellationRequested)
            {
                for (var n = Random.Shared.Next(0, 4); n >= 0; n--)
                    _written.Add(await Device.WriteAsync(new InspectionRecord(_colony, new DateOnly(2026, 6, 1).AddDays(_written.Count % 100), FramesOfBees: n)));
                Interlocked.Increment(ref _tried);
                if (await Device.ExchangeAsync())
                    continue;
                Broken++;
                return;
            }
        }
    }
}
