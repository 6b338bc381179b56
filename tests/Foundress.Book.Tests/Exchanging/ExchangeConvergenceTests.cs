using System.Globalization;
using CsCheck;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Microsoft.Extensions.Time.Testing;

namespace Foundress.Book.Tests.Exchanging;

/// <summary>Many devices, a bad line, wrong clocks and a server put back to an old backup: in the end all hold the same book, and nothing is missing.</summary>
public sealed class ExchangeConvergenceTests(ITestOutputHelper output)
{
    private const int Trials = 300;

    private static readonly DateTimeOffset Start = new(2026, 6, 1, 8, 0, 0, TimeSpan.Zero);

    private static readonly Gen<(int Kind, int Who, int What)[]> Scripts =
        Gen.Select(Gen.Int[0, 99], Gen.Int[0, 99], Gen.Int[0, 9_999]).Array[80, 250];

    [Fact]
    public async Task Exchange_AnyInterleavingLossRepeatsSkewAndRestores_AllHoldTheSame()
    {
        var counts = new long[9];
        await Gen.Select(Gen.Int[5, 8], Gen.Int[0, 100_000], Scripts).SampleAsync(
            async (devices, seed, script) =>
            {
                var trial = new Trial(devices, seed);
                foreach (var step in script)
                    await trial.StepAsync(step.Kind, step.Who, step.What);
                await trial.SettleAsync();
                trial.Check();
                trial.AddTo(counts);
            },
            iter: Trials);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{counts[0]} trials, {counts[1]} devices and second tabs, {counts[2]} entries written, {counts[3]} exchanges of which {counts[4]} broke off, {counts[5]} requests and {counts[6]} answers lost, {counts[7]} repeated late, {counts[8]} restores"));
        Assert.True(counts[4] > counts[0] && counts[5] > 0 && counts[6] > 0 && counts[7] > 0 && counts[8] > 0, "The trials met no trouble, so they prove nothing.");
    }

    private sealed class Trial
    {
        private readonly FakeTimeProvider _world = new(Start);
        private readonly Random _random;
        private readonly ModelServer _server;
        private readonly FaultyLink _link;
        private readonly List<FieldDevice> _devices = [];
        private readonly List<FieldDevice> _tabs = [];
        private readonly Dictionary<EntryId, string> _written = [];
        private readonly NumberedIds _ids;
        private readonly ApiaryId[] _apiaries;
        private readonly ColonyId[] _colonies;
        private readonly ControlId[] _controls;
        private int _restores;
        private int _exchanges;
        private int _broken;

        public Trial(int devices, int seed)
        {
            _random = new Random(seed);
            _server = new ModelServer(_world);
            _link = new FaultyLink(_server, _random) { Page = _random.Next(1, 40), Trouble = 12 };
            _ids = new NumberedIds(seed + 1);
            _apiaries = [.. Enumerable.Range(0, 2).Select(_ => new ApiaryId(_ids.Next()))];
            _colonies = [.. Enumerable.Range(0, 5).Select(_ => new ColonyId(_ids.Next()))];
            _controls = [.. Enumerable.Range(0, 2).Select(_ => new ControlId(_ids.Next()))];
            for (var n = 0; n < devices; n++)
            {
                // Most are up to a day off; one is years ahead and one years behind.
                var skew = n switch { 0 => TimeSpan.FromDays(800), 1 => TimeSpan.FromDays(-3_000), _ => TimeSpan.FromMinutes(_random.Next(-1440, 1441)) };
                _devices.Add(new FieldDevice($"phone {n}", new NumberedIds(1_000_000 + (100 * seed) + n), new SkewedTime(_world, skew), _link));
            }

            // A second tab on the store of two of them.
            foreach (var n in new[] { 0, 2 })
                _tabs.Add(new FieldDevice($"phone {n}", new NumberedIds(2_000_000 + (100 * seed) + n), _devices[n].Time, _link, _devices[n].Store));
            _link.Meanwhile = MeanwhileAsync;
        }

        private FieldDevice[] All => [.. _devices, .. _tabs];

        public async Task StepAsync(int kind, int who, int what)
        {
            _world.Advance(TimeSpan.FromSeconds(what % 400));
            var all = All;
            var device = all[who % all.Length];
            switch (kind)
            {
                case < 55:
                    await WriteAsync(device, what);
                    break;
                case < 80:
                    await ExchangeAsync(device);
                    break;
                case < 85:
                    device.Time.Skew += TimeSpan.FromMinutes((what % 4000) - 2000);
                    break;
                case < 89:
                    device.Restart();
                    break;
                case < 93:
                    await EndDuringExchangeAsync(device, what % 12);
                    break;
                case < 95:
                    _link.Deliver();
                    break;
                case < 98:
                    _server.BackUp();
                    break;
                default:
                    Restore(what);
                    break;
            }

            Assert.Subset(_server.Entries.Select(entry => entry.Id).ToHashSet(), _link.Acknowledged);
        }

        /// <summary>The line is good again, and everybody exchanges until nobody has anything new.</summary>
        public async Task SettleAsync()
        {
            _link.Trouble = 0;
            _link.Meanwhile = null;
            foreach (var device in All)
                device.Restart();
            for (var n = 0; n < 3; n++)
            {
                foreach (var device in All)
                    Assert.True(await device.ExchangeAsync());
            }

            _link.Deliver();
            foreach (var device in All)
                Assert.True(await device.ExchangeAsync());
        }

        public void Check()
        {
            var reference = new Ledger();
            reference.Add(_server.Entries);
            // All that was ever written, once, in the words it was written with.
            Assert.Equal(
                _written.OrderBy(pair => pair.Key.Value).Select(pair => (pair.Key, pair.Value)),
                reference.Entries.Select(entry => (entry.Id, entry.Payload)).OrderBy(pair => pair.Id.Value));
            var lines = reference.Entries.Select(EntryJson.Write).ToArray();
            var state = Snapshot.Of(reference.State);
            foreach (var device in All)
            {
                // A tab reads what another tab of its phone has put into their store; here it begins again for that.
                if (All.Count(other => other.Store == device.Store) > 1)
                    device.Restart();
                Assert.Empty(device.Store.Refused);
                Assert.Equal(lines, device.Entries.Select(EntryJson.Write));
                Assert.Equal(state, Snapshot.Of(device.Ledger.State));
                device.Restart();
                Assert.Equal(lines, device.Entries.Select(EntryJson.Write));
            }

            // No entry of the phone that is years ahead stands where nothing can ever come after it.
            var latest = _world.GetUtcNow().ToUnixTimeMilliseconds() + HybridClock.Tolerance;
            Assert.All(reference.Entries, entry => Assert.InRange(entry.Clock.Milliseconds, 0, latest));
        }

        public void AddTo(long[] counts)
        {
            var (requests, answers, late) = _link.Lost;
            long[] mine = [1, All.Length, _written.Count, _exchanges, _broken, requests, answers, late, _restores];
            for (var n = 0; n < mine.Length; n++)
                Interlocked.Add(ref counts[n], mine[n]);
        }

        private async Task ExchangeAsync(FieldDevice device)
        {
            _exchanges++;
            if (!await device.ExchangeAsync())
                _broken++;
        }

        // The program ends in the middle, before one of the calls to its store.
        private async Task EndDuringExchangeAsync(FieldDevice device, int calls)
        {
            device.Store.Before = () =>
            {
                if (calls-- == 0)
                    throw new ProgramEnded();
            };
            try
            {
                await ExchangeAsync(device);
            }
            catch (ProgramEnded)
            {
                _broken++;
            }

            foreach (var tab in All.Where(other => other.Store == device.Store))
                tab.Restart();
        }

        // While an answer is on its way another tab of the same phone may exchange, and the server may be put back.
        private async Task MeanwhileAsync()
        {
            var chance = _random.Next(100);
            if (chance < 2)
                Restore(_random.Next(1_000));
            if (chance >= 4)
                return;
            var meanwhile = _link.Meanwhile;
            _link.Meanwhile = null;
            await ExchangeAsync(_tabs[_random.Next(_tabs.Count)]);
            _link.Meanwhile = meanwhile;
        }

        private void Restore(int which)
        {
            _restores++;
            _server.Restore(which);
            _link.Acknowledged.Clear();
        }

        private async Task WriteAsync(FieldDevice device, int what)
        {
            var day = new DateOnly(2026, 6, 1).AddDays(what % 90);
            var colony = _colonies[what % _colonies.Length];
            var held = device.Ledger.Count == 0 ? null : device.Ledger.Entries.ElementAt(what % device.Ledger.Count);
            Records.Record record = (what % 13) switch
            {
                0 => new ApiaryRecord(_apiaries[what % 2], $"Place {what}"),
                1 => new ColonyRecord(colony, Name: $"{what}", Apiary: _apiaries[what % 2]),
                2 => new ColonyRecord(colony, Note: $"note {what}"),
                3 => new ColonyMoved(colony, _apiaries[what % 2], day),
                4 => new InspectionRecord(colony, day, FramesOfBees: what % 20),
                5 => new ControlRecord(_controls[what % 2], "thymol", day, [colony], day.AddDays(28)),
                6 => new ControlEnded(_controls[what % 2], day.AddDays(20), ControlEnding.StoppedEarly, null, $"hot {what}"),
                7 => new PolicyRecord(OwnAct: 1 + (what % 5)),
                8 => new ColonyDied(colony, day, $"cause {what}"),
                9 or 10 when held is not null => new Strike(held.Id, $"wrong {what}"),
                _ => new JarRecord(day, "alcohol-wash", [what % 30], JarBees.Counted(300), what % 4 == 0 ? null : colony),
            };
            var entry = await device.WriteAsync(record);
            _written[entry.Id] = entry.Payload;
        }
    }

    private sealed class ProgramEnded : Exception;
}
