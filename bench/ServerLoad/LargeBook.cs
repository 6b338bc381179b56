using System.Globalization;
using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace ServerLoad;

/// <summary>An invented operation of many apiaries of twenty colonies, with jars, inspections and controls over some seasons up to today.</summary>
internal sealed class LargeBook
{
    private const int ColoniesAnApiary = 20;

    private readonly SteppingTime _time = new();
    private readonly Scribe _scribe;
    private readonly Random _random = new(5);
    private readonly List<ApiaryId> _apiaries = [];
    private readonly List<ColonyId> _colonies = [];
    private readonly DateOnly _today;

    public LargeBook(DateOnly today)
    {
        _today = today;
        _scribe = new Scribe("home", "keeper", "bench", new HybridClock(_time), new TimeOrderedIds(_time));
    }

    public IReadOnlyList<ApiaryId> Apiaries => _apiaries;

    public IReadOnlyList<ColonyId> Colonies => _colonies;

    /// <summary>The entries, in the order they are written.</summary>
    public IEnumerable<Entry> Entries(int colonies, int count)
    {
        var first = _today.AddYears(-4);
        var made = 0;
        for (var n = 0; n < colonies; n++)
        {
            if (n % ColoniesAnApiary == 0)
            {
                _apiaries.Add(new ApiaryId(_scribe.Ids.Next()));
                made++;
                yield return _scribe.Write(new ApiaryRecord(_apiaries[^1], string.Create(CultureInfo.InvariantCulture, $"Apiary {n / ColoniesAnApiary}"), 47 + (_random.NextDouble() * 4), 8));
            }

            _colonies.Add(new ColonyId(_scribe.Ids.Next()));
            made++;
            yield return _scribe.Write(new ColonyRecord(_colonies[^1], string.Create(CultureInfo.InvariantCulture, $"{n + 1}"), _apiaries[^1], first));
        }

        var days = _today.DayNumber - first.DayNumber;
        var rest = count - made;
        for (var n = 0; n < rest; n++)
        {
            var on = first.AddDays((int)((long)n * days / rest));
            var colony = _colonies[n % _colonies.Count];
            // Each colony gets now and then a control; between them two jars to one inspection.
            yield return _scribe.Write((n / _colonies.Count) % 25 == 24
                ? new ControlRecord(new ControlId(_scribe.Ids.Next()), "oxalic-acid-trickle", on, [colony], on, WithdrawalDays: 0, Reason: "broodless")
                : n % 3 == 0
                    ? new InspectionRecord(colony, on, FramesOfBees: 8, FramesOfBrood: 5, SupersOn: false)
                    : Jar(colony, on));
        }
    }

    /// <summary>A jar of today.</summary>
    public Entry Jar() => _scribe.Write(Jar(_colonies[_random.Next(_colonies.Count)], _today));

    private JarRecord Jar(ColonyId colony, DateOnly on) => new(on, "alcohol-wash", [_random.Next(_random.Next(14) + 1)], JarBees.Counted(280 + _random.Next(50)), colony);

    // Four years of writing for the whole book.
    private sealed class SteppingTime : TimeProvider
    {
        private DateTimeOffset _now = DateTimeOffset.UtcNow.AddYears(-4);

        public override DateTimeOffset GetUtcNow() => _now = _now.AddSeconds(60);
    }
}
