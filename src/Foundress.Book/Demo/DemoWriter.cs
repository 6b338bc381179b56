using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rounds;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Numerics;

namespace Foundress.Book.Demo;

/// <summary>Invents two seasons of beekeeping, day by day, and writes down what the keeper would have.</summary>
internal sealed class DemoWriter
{
    private const string Scoop = "half-cup-us";

    private static readonly (string Name, double Latitude, double Longitude, string Prefix, int Colonies)[] Places =
    [
        ("Mill orchard", 51.2, 4.6, "M", 18),
        ("Heather bank", 51.4, 5.1, "H", 15),
        ("South meadow", 50.9, 4.9, "S", 12),
    ];

    // Month and day of each round, and what the keeper calls it.
    private static readonly (int Month, int Day, string Purpose)[] Rounds =
    [
        (3, 8, "first jars of the year"),
        (5, 26, "before the peak"),
        (8, 3, "after the peak"),
        (8, 30, "after the August control"),
        (9, 16, "while the winter bees are reared"),
        (10, 26, "before winter"),
    ];

    private readonly KnowledgeBase _knowledge;
    private readonly DateOnly _today;
    private readonly SeededGenerator _chance;
    private readonly SeededGenerator _aside;
    private readonly DemoControls _controls;
    private readonly FixedTime _time = new();
    private readonly Ledger _ledger = new();
    private readonly Scribe _keeper;
    private readonly Scribe _helper;
    private readonly Dictionary<ApiaryId, List<DemoHive>> _hives = [];
    private DateOnly _day;
    private int _minute;

    internal DemoWriter(KnowledgeBase knowledge, ulong seed, DateOnly today)
    {
        (_knowledge, _today, _chance, _aside) = (knowledge, today, new SeededGenerator(seed), new SeededGenerator(~seed));
        var ids = new DemoIds(seed);
        _controls = new DemoControls(seed, ids);
        var clock = new HybridClock(_time);
        _keeper = new Scribe(Operations.Demo, "Keeper (invented)", "demo-laptop", clock, ids);
        _helper = new Scribe(Operations.Demo, "Helper (invented)", "demo-phone", clock, ids);
    }

    internal IReadOnlyList<Entry> Write()
    {
        var second = _today.Month >= 3 ? _today.Year : _today.Year - 1;
        Found(new DateOnly(second - 1, 3, 1));
        Season(second - 1);
        Winter(new DateOnly(second, 3, 5));
        Season(second);
        LateStrips(new DateOnly(second, 10, 29));
        return [.. _ledger.Entries];
    }

    private void Found(DateOnly day)
    {
        GoTo(day);
        Keep(_keeper, new PolicyRecord(OperationName: "Demo bees (invented)", JarMeasure: Scoop, Jurisdiction: Jurisdiction.EuropeanUnion, Gear: DemoControls.Gear, FallLines: "osnabrueck-fall", DroneLines: "uk-drone-brood"));
        foreach (var place in Places)
        {
            var apiary = new ApiaryId(_keeper.Ids.Next());
            Keep(_keeper, new ApiaryRecord(apiary, place.Name, place.Latitude, place.Longitude));
            Keep(_keeper, DemoControls.Normals(apiary));
            var hives = _hives[apiary] = [];
            // Apiaries differ, and so do the colonies in one: lognormal around the apiary's own level.
            var usual = 0.35 * Math.Exp(0.3 * _chance.NextNormal());
            for (var number = 1; number <= place.Colonies; number++)
            {
                var hive = new DemoHive(
                    new ColonyId(_keeper.Ids.Next()), $"{place.Prefix}{number}",
                    usual * Math.Exp(0.55 * _chance.NextNormal()), Math.Exp(0.25 * _chance.NextNormal())) { AsOf = day };
                hives.Add(hive);
                Keep(_keeper, new ColonyRecord(hive.Id, hive.Name, apiary, day));
            }
        }
    }

    private void Season(int year)
    {
        if (GoTo(new DateOnly(year, 3, 6)))
        {
            foreach (var apiary in _hives.Keys)
                Keep(_keeper, new ApiaryDays(apiary, new DateOnly(year, 4, 25), new DateOnly(year, 7, 25)));
        }

        foreach (var (month, day, purpose) in Rounds)
        {
            if (month == 5)
            {
                Inspect(new DateOnly(year, 4, 12), supers: false);
                Split(new DateOnly(year, 5, 12));
            }

            if (month == 8 && day < 20)
                Inspect(new DateOnly(year, 6, 28), supers: true);
            if (month == 8 && day > 20)
                Control(new DateOnly(year, 8, 8));
            Round(new DateOnly(year, month, day), purpose);
            if (month == 9)
                StripsOut(year);
            if (month == 5)
                OpenBrood(new DateOnly(year, 6, 12));
            if (month is 5 or 9)
                Boards(month == 5 ? new DateOnly(year, 7, 14) : new DateOnly(year, 10, 20));
        }
    }

    // A few boards under colonies of the last apiary: about one fallen mite a day for each 0.3 per 100 bees (invented).
    private void Boards(DateOnly day)
    {
        if (!GoTo(day))
            return;
        foreach (var hive in Living(_hives.Values.Last()).Take(5))
        {
            hive.MoveTo(day);
            var days = 3 + (int)(3 * _aside.NextDouble());
            var share = _aside.NextDouble() < 0.3 ? 0.33 : (double?)null;
            var ants = _aside.NextDouble() < 0.15 ? true : (bool?)null;
            Keep(_helper, new MiteFallRecord(
                hive.Id, day, _aside.NextPoisson(hive.Level * 3 * days * (share ?? 1) * (ants == true ? 0.5 : 1)), days, share, Scavengers: ants));
        }
    }

    private void OpenBrood(DateOnly day)
    {
        if (!GoTo(day))
            return;
        foreach (var hive in Living(_hives.Values.First()).Take(4))
        {
            hive.MoveTo(day);
            var cells = 60 + (int)(60 * _aside.NextDouble());
            var infested = Math.Min(cells, _aside.NextPoisson(cells * Math.Min(0.6, 0.05 * hive.Level)));
            Keep(_helper, new OpenedBroodRecord(hive.Id, day, BroodKind.Drone, cells, infested, infested + _aside.NextPoisson(0.2 * infested)));
        }
    }

    // In the first season the control failed in one apiary; jars of the same colonies after it tell.
    private void Control(DateOnly day)
    {
        if (!GoTo(day))
            return;
        var first = true;
        foreach (var (apiary, hives) in _hives)
        {
            var late = first && day.Year < _today.Year;
            Keep(_keeper, _controls.August(apiary, day, late, [.. Living(hives)], _ledger.State));
            first = false;
            foreach (var hive in Living(hives))
            {
                hive.MoveTo(day);
                hive.Control(late ? 0.35 + (0.2 * _chance.NextDouble()) : 0.85 + (0.12 * _chance.NextDouble()));
                if (_chance.NextDouble() < 0.3)
                    Keep(_keeper, new InspectionRecord(hive.Id, day, SupersOn: false, Note: "Supers off, control put in (invented)."));
            }
        }

        if (!GoTo(day.AddDays(DemoControls.PadDays)))
            return;
        foreach (var end in _controls.Ends(day.AddDays(DemoControls.PadDays)))
            Keep(_helper, end);
        if (GoTo(day.AddDays(DemoControls.PadDays + 2)))
            JarsAfter(_day);
    }

    private void StripsOut(int year)
    {
        var day = new DateOnly(year, 8, 8).AddDays(DemoControls.StripDays);
        if (!_controls.HasOpen || !GoTo(day))
            return;
        foreach (var end in _controls.Ends(day))
            Keep(_helper, end);
        if (GoTo(day.AddDays(2)))
            JarsAfter(_day);
    }

    // The colonies that had a jar before get one after; the invented levels are those of that day.
    private void JarsAfter(DateOnly day)
    {
        foreach (var use in _controls.Ended(day.AddDays(-2)))
        {
            foreach (var hive in _hives.Values.SelectMany(Living).Where(hive => use.Contains(hive.Id)))
            {
                hive.MoveTo(day);
                Keep(_helper, _controls.JarAfter(hive, day));
            }
        }
    }

    // In the autumn of the second season one apiary got strips that nobody has taken out yet.
    private void LateStrips(DateOnly day)
    {
        if (!GoTo(day))
            return;
        Keep(_keeper, _controls.LateStrips(day, [.. Living(_hives.Values.Last()).Take(3)]));
    }

    private void Inspect(DateOnly day, bool supers)
    {
        if (!GoTo(day))
            return;
        foreach (var hive in _hives.Values.SelectMany(Living))
        {
            if (_chance.NextDouble() > 0.6)
                continue;
            var frames = Math.Round(2 * (supers ? 14 : 7) * Math.Exp(0.2 * _chance.NextNormal())) / 2;
            Keep(_keeper, new InspectionRecord(
                hive.Id, day, Math.Min(24, frames), Math.Min(14, Math.Round(frames) / 2), _chance.NextDouble() < 0.6, supers));
        }
    }

    private void Split(DateOnly day)
    {
        if (!GoTo(day))
            return;
        foreach (var hives in _hives.Values)
        {
            var mother = Living(hives).First();
            mother.MoveTo(day);
            var child = new DemoHive(new ColonyId(_keeper.Ids.Next()), $"{mother.Name}-{day.Year % 100}", mother.Level * 0.8, 0.9) { AsOf = day };
            hives.Add(child);
            Keep(_keeper, new ColonySplit(mother.Id, child.Id, child.Name, day, 4, 2.5));
        }
    }

    private void Winter(DateOnly day)
    {
        var christmas = new DateOnly(day.Year - 1, 12, 27);
        if (GoTo(christmas))
        {
            foreach (var hives in _hives.Values)
                Keep(_keeper, _controls.Winter(christmas, [.. Living(hives)]));
        }

        if (!GoTo(day))
            return;
        foreach (var hives in _hives.Values)
        {
            foreach (var hive in Living(hives).ToList())
            {
                // More mites in autumn, more dead in spring: direction as in Guzman-Novoa et al. 2010; the numbers are invented.
                if (_chance.NextDouble() < Math.Min(0.7, 0.05 + (0.05 * hive.Level)))
                {
                    hive.Lives = false;
                    Keep(_keeper, new ColonyDied(hive.Id, day, "dead after winter"));
                }

                hive.MoveTo(day);
                hive.Control(0.9);
            }
        }
    }

    private void Round(DateOnly day, string purpose)
    {
        foreach (var (apiary, hives) in _hives)
        {
            if (!GoTo(day))
                return;
            var proposal = new RoundPlanner(_ledger.State, _knowledge).Propose([apiary], day);
            var plan = RoundPlanner.Draw(proposal, new RoundId(_keeper.Ids.Next()), day, "alcohol-wash", purpose, _chance.NextUInt64() >> 20);
            Keep(_keeper, plan);
            var left = new Queue<ColonyId>(plan.Draws[0].Chosen);
            var reserves = new Queue<ColonyId>(plan.Draws[0].Reserves);
            while (left.TryDequeue(out var colony))
            {
                if (_chance.NextDouble() < 0.06 && reserves.TryDequeue(out var reserve))
                {
                    Keep(_helper, new RoundSkip(plan.Round, colony, "queen not found", day));
                    left.Enqueue(reserve);
                    continue;
                }

                Sample(hives.Single(hive => hive.Id == colony), day, plan.Round);
            }

            day = day.AddDays(1);
        }
    }

    private void Sample(DemoHive hive, DateOnly day, RoundId round)
    {
        hive.MoveTo(day);
        var bees = Math.Clamp((int)Math.Round(315 * Math.Exp(0.13 * _chance.NextNormal())), 150, 520);
        var mites = _chance.NextPoisson(bees * hive.Level / 100);
        var assumed = _chance.NextDouble() < 0.12;
        IReadOnlyList<int> passes = [mites];
        if (mites >= 8 && _chance.NextDouble() < 0.3)
        {
            var second = _chance.NextPoisson(mites * 0.08);
            passes = [Math.Max(0, mites - second), Math.Min(mites, second)];
        }

        var scoop = _knowledge.JarMeasures[Scoop];
        var jar = new JarRecord(
            day, "alcohol-wash", passes,
            assumed ? new JarBees(BeeBasis.Assumed, scoop.UsualBees.Value, scoop.LogSpread.Value, scoop.Id)
            : _aside.NextDouble() < 0.06 ? Weighed(bees)
            : JarBees.Counted(bees, scoop.Id),
            hive.Id, round, new JarConditions(AgitationSeconds: 60));
        var entry = Keep(_helper, jar);
        if (_chance.NextDouble() < 0.015)
        {
            Keep(_keeper, new Strike(entry.Id, "written down for the wrong colony"));
            Keep(_keeper, jar with { Note = "written again after the strike" });
        }
    }

    // A hundred of the jar's bees counted and weighed, on a scale that shows whole grams.
    private JarBees Weighed(int bees)
    {
        var each = 0.1 * Math.Exp(0.1 * _aside.NextNormal());
        return JarBees.Weighed(Math.Round(bees * each), new WeighedSample(100, Math.Round(100 * each), fromJar: true), _knowledge.Weighing.ToWeighing());
    }

    private bool GoTo(DateOnly day)
    {
        if (day > _today)
            return false;
        (_day, _minute) = (day, 0);
        return true;
    }

    private Entry Keep(Scribe scribe, Record record)
    {
        _time.PutAt(_day, _minute++);
        var entry = scribe.Write(record);
        _ledger.Add([entry]);
        return entry;
    }

    private static IEnumerable<DemoHive> Living(List<DemoHive> hives) => hives.Where(hive => hive.Lives);
}
