using System.Globalization;
using CsCheck;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Tests.Parts;
using Microsoft.Extensions.Time.Testing;

namespace Foundress.Book.Tests.Exchanging;

/// <summary>
/// Phones that take only some apiaries, change their mind and make room, over a bad line and from a server that is put back
/// to old backups: what each holds says of its apiaries what the whole book says, and what it wrote is always given.
/// </summary>
public sealed class PartExchangeTests(ITestOutputHelper output)
{
    private const int Trials = 200;

    private static readonly Gen<(int Kind, int Who, int What)[]> Scripts =
        Gen.Select(Gen.Int[0, 99], Gen.Int[0, 99], Gen.Int[0, 9_999]).Array[60, 180];

    [Fact]
    public async Task Exchange_PhonesThatTakeSomeApiaries_SayOfThemWhatTheWholeBookSays()
    {
        var counts = new long[8];
        await Gen.Select(Gen.Int[0, 100_000], Scripts).SampleAsync(
            async (seed, script) =>
            {
                var trial = new Trial(seed);
                foreach (var step in script)
                    await trial.StepAsync(step.Kind, step.Who, step.What);
                await trial.SettleAsync();
                await trial.CheckAsync(counts);
            },
            iter: Trials);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{counts[0]} trials, {counts[1]} entries, {counts[2]} choices, {counts[3]} times room was made, {counts[4]} restores, {counts[5]} exchanges broke off; {counts[6]} apiaries compared on phones that held {counts[7]} entries less than the whole"));
        Assert.True(counts.All(count => count > counts[0] / 4), "The trials met no trouble, so they prove nothing.");
    }

    private sealed class Trial
    {
        private static readonly DateOnly Today = new(2026, 9, 20);

        private readonly FakeTimeProvider _world = new(new DateTimeOffset(2026, 6, 1, 8, 0, 0, TimeSpan.Zero));
        private readonly Random _random;
        private readonly ModelServer _server;
        private readonly FaultyLink _link;
        private readonly FieldDevice[] _devices;
        private readonly NumberedIds _ids;
        private readonly ApiaryId[] _apiaries;
        private readonly List<ColonyId> _colonies;
        private readonly List<ControlId> _controls = [];
        private readonly RoundId[] _rounds;
        private readonly Dictionary<EntryId, string> _written = [];
        private readonly bool _restoring;
        private long _choices;
        private long _rooms;
        private long _restores;
        private long _broken;
        private long _compared;
        private long _less;

        public Trial(int seed)
        {
            _random = new Random(seed);
            // Who makes room relies on the server: both in one trial would lose what neither holds.
            _restoring = seed % 2 == 0;
            _server = new ModelServer(_world);
            _link = new FaultyLink(_server, _random) { Page = _random.Next(1, 30), Trouble = 10 };
            _ids = new NumberedIds(seed + 1);
            _apiaries = [.. Enumerable.Range(0, 4).Select(_ => new ApiaryId(_ids.Next()))];
            _colonies = [.. Enumerable.Range(0, 24).Select(_ => new ColonyId(_ids.Next()))];
            _rounds = [.. Enumerable.Range(0, 2).Select(_ => new RoundId(_ids.Next()))];
            // The second tab of a phone shares its store.
            var phones = Enumerable.Range(0, 4).Select(n => Device(n, null)).ToList();
            _devices = [.. phones, Device(4, phones[1].Store)];

            FieldDevice Device(int n, MemoryStore? store) => new(
                $"phone {n}", new NumberedIds(1_000_000 + (100 * seed) + n), new SkewedTime(_world, TimeSpan.FromMinutes(_random.Next(-600, 601))), _link, store);
        }

        public async Task StepAsync(int kind, int who, int what)
        {
            _world.Advance(TimeSpan.FromSeconds(1 + (what % 400)));
            // The first device always takes the whole book.
            var device = _devices[who % _devices.Length];
            switch (kind)
            {
                case < 50:
                    await WriteAsync(device, what);
                    break;
                case < 80:
                    await ExchangeAsync(device);
                    break;
                case < 90 when device != _devices[0]:
                    _choices++;
                    await device.ChooseAsync([.. _apiaries.Where((_, n) => ((what >> n) & 1) == 1)]);
                    break;
                case < 94:
                    device.Restart();
                    break;
                case < 97 when !_restoring && device.Chosen().Count > 0:
                    _rooms++;
                    await device.ForgetCopiedAsync();
                    break;
                case < 98:
                    _server.BackUp();
                    break;
                case 99 when _restoring:
                    _restores++;
                    _server.Restore(what);
                    break;
                default:
                    break;
            }
        }

        public async Task SettleAsync()
        {
            _link.Trouble = 0;
            for (var n = 0; n < 3; n++)
            {
                foreach (var device in _devices)
                {
                    device.Restart();
                    Assert.True(await device.ExchangeAsync());
                }
            }

            _link.Deliver();
            foreach (var device in _devices)
                Assert.True(await device.ExchangeAsync());
        }

        public async Task CheckAsync(long[] counts)
        {
            var whole = new Ledger();
            whole.Add(_server.Entries);
            Assert.Equal(
                _written.OrderBy(pair => pair.Key.Value).Select(pair => (pair.Key, pair.Value)),
                whole.Entries.Select(entry => (entry.Id, entry.Payload)).OrderBy(pair => pair.Id.Value));
            var everything = Lines(whole.Entries);
            Assert.Equal(everything, Lines(_devices[0].Entries));
            foreach (var device in _devices)
            {
                device.Restart();
                var chosen = device.Chosen();
                if (chosen.Count == 0)
                    Assert.Equal(everything, Lines(device.Entries));
                foreach (var apiary in chosen.Where(whole.State.Apiaries.ContainsKey))
                {
                    Assert.Subset(Lines(device.Entries), Lines(_server.Parts.Of(apiary).Select(_server.At)));
                    Assert.Equal(ApiarySaid.Of(whole, apiary, Today), ApiarySaid.Of(device.Ledger, apiary, Today));
                    _compared++;
                }

                if (chosen.Count > 0)
                    Assert.Subset(chosen.ToHashSet(), device.Ledger.State.ApiariesByName.Select(apiary => apiary.Id).ToHashSet());
                Assert.All(device.Ledger.State.Rounds.Values.SelectMany(round => round.Plan.Draws), draw => Assert.True(chosen.Count == 0 || chosen.Contains(draw.Apiary)));
                _less += whole.Count - device.Ledger.Count;
            }

            // Whoever goes back to the whole book gets the rest.
            foreach (var device in _devices)
            {
                await device.ChooseAsync();
                Assert.True(await device.ExchangeAsync());
                device.Restart();
                Assert.Equal(everything, Lines(device.Entries));
            }

            long[] mine = [1, _written.Count, _choices, _rooms, _restores, _broken, _compared, _less];
            for (var n = 0; n < mine.Length; n++)
                Interlocked.Add(ref counts[n], mine[n]);
        }

        private static HashSet<string> Lines(IEnumerable<Entry> entries) => [.. entries.Select(EntryJson.Write)];

        private async Task ExchangeAsync(FieldDevice device)
        {
            if (!await device.ExchangeAsync())
                _broken++;
        }

        private async Task WriteAsync(FieldDevice device, int what)
        {
            var day = new DateOnly(2026, 4, 1).AddDays(what % 160);
            var place = what % _colonies.Count;
            var colony = _colonies[place];
            // Seldom one of another apiary: else every part would soon be the whole.
            var other = _colonies[what % 5 == 0 ? what / 7 % _colonies.Count : (place + _apiaries.Length) % _colonies.Count];
            var apiary = _apiaries[what % 7 == 0 ? what / 3 % _apiaries.Length : place % _apiaries.Length];
            var held = device.Ledger.Count == 0 ? null : device.Ledger.Entries.ElementAt(what % device.Ledger.Count);
            Records.Record record;
            switch (what / 24 % 19)
            {
                case 0 or 1:
                    record = new ApiaryRecord(apiary, $"Place {what}", 50);
                    break;
                case 2 or 3 or 4:
                    record = new ColonyRecord(colony, $"{what}", apiary, new DateOnly(2026, 3, 1));
                    break;
                case 5 when what % 2 == 0:
                    record = new ColonyMoved(colony, apiary, day);
                    break;
                case 6:
                    var child = new ColonyId(_ids.Next());
                    _colonies.Add(child);
                    record = new ColonySplit(colony, child, $"s{what}", day);
                    break;
                case 7 when what % 2 == 0:
                    record = new ColoniesUnited(colony, other, day);
                    break;
                case 8:
                    _controls.Add(new ControlId(_ids.Next()));
                    record = new ControlRecord(_controls[^1], "formic-acid-long", day, [colony, other], day.AddDays(14));
                    break;
                case 9 when _controls.Count > 0:
                    record = new ControlEnded(_controls[what % _controls.Count], day.AddDays(9));
                    break;
                case 10 or 11 when held is not null:
                    record = new Strike(held.Id, $"wrong {what}");
                    break;
                case 12:
                    record = new RoundRecord(
                        _rounds[what % 2], day, "level", "alcohol-wash", "equal", "1",
                        [new ApiaryDraw(apiary, [colony], []), new ApiaryDraw(_apiaries[0], [other], [])]);
                    break;
                case 13:
                    record = new PolicyRecord(OwnAct: 1 + (what % 5));
                    break;
                default:
                    record = new JarRecord(day, "alcohol-wash", [what % 30], JarBees.Counted(300), colony, what % 3 == 0 ? _rounds[what % 2] : null);
                    break;
            }

            var entry = await device.WriteAsync(record);
            _written[entry.Id] = entry.Payload;
        }
    }
}
