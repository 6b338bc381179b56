using Foundress.Book.Journal;
using Foundress.Book.Judging;
using Foundress.Book.Records;
using Foundress.Book.Reporting;
using Foundress.Book.Seasons;
using Foundress.Knowledge;
using Foundress.Science.Estimation;
using Foundress.Science.Judging;

namespace Foundress.Reports.Tests.Support;

/// <summary>Invented strips and reports. The intervals are only plausible: what is drawn is tested here, not how it is computed.</summary>
internal static class Invented
{
    public static DateOnly Day(int year, int month, int day) => new(year, month, day);

    public static EntryId JarId(int number) => new(new Guid(number, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10));

    public static JarMark Jar(int number, string colony, DateOnly on, int mites, double bees, double watch = 2, double act = 3, string method = "alcohol wash", bool judged = true)
    {
        var level = 100 * mites / bees;
        var lower = mites == 0 ? 0 : 100 * Math.Pow(Math.Max(0, Math.Sqrt(mites) - 0.98), 2) / bees;
        var upper = 100 * Math.Pow(Math.Sqrt(mites + 1) + 0.98, 2) / bees;
        var standing = level - 1.2 * (level - lower) / 2 > act ? Standing.Above : upper < watch + (act - watch) * 0.9 ? Standing.Below : Standing.Unclear;
        return new(JarId(number), new ColonyId(new Guid(1000 + number % 50, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10)), colony, on, level, lower, upper, judged ? standing : null, mites, bees, method);
    }

    /// <summary>A northern apiary of twelve colonies late in the summer, with a clipped outlier and an overdue round.</summary>
    public static SeasonStrip Orchard()
    {
        (DateOnly On, int[] Mites)[] rounds =
        [
            (Day(2026, 4, 18), [0, 1, 0, 2, 3, 1, 0, 4]),
            (Day(2026, 6, 6), [1, 3, 2, 4, 7, 2, 1, 5]),
            (Day(2026, 7, 12), [4, 6, 5, 9, 16, 3, 2, 8]),
            (Day(2026, 7, 13), [7]),
            (Day(2026, 8, 22), [9, 15, 12, 22, 108, 6, 5, 19, 31, 11, 74, 8]),
        ];
        var jars = new List<JarMark>();
        var number = 0;
        foreach (var (on, mites) in rounds)
        {
            for (var i = 0; i < mites.Length; i++)
                jars.Add(Jar(++number, $"Hive {i * (mites.Length > 8 ? 1 : 3) % 13 + 1}", on, mites[i], 290 + 7 * (i % 9), act: on.Month >= 7 ? 3 : 2, watch: on.Month >= 7 ? 2 : 1));
        }

        jars.Add(Jar(++number, "Hive 4", Day(2026, 5, 20), 5, 300, method: "sugar shake", judged: false));
        return new(
            "Orchard edge", Day(2026, 1, 1), Day(2026, 12, 31), Day(2026, 8, 26),
            "Five of twelve colonies stand above the line of 3 per 100: choose a control now, and count again within a week after it ends.",
            [
                new(SeasonPhase.DormantBroodless, Day(2026, 1, 1), Day(2026, 1, 24).AddDays(1)),
                new(SeasonPhase.DormantWithBrood, Day(2026, 1, 25), Day(2026, 3, 14).AddDays(1)),
                new(SeasonPhase.Increase, Day(2026, 3, 15), Day(2026, 5, 31).AddDays(1)),
                new(SeasonPhase.Peak, Day(2026, 6, 1), Day(2026, 7, 31).AddDays(1)),
                new(SeasonPhase.Decrease, Day(2026, 8, 1), Day(2026, 10, 31).AddDays(1)),
                new(SeasonPhase.DormantBroodless, Day(2026, 11, 1), Day(2026, 12, 31).AddDays(1)),
            ],
            [
                new(Day(2026, 1, 1), Day(2026, 6, 30), 1, 2),
                new(Day(2026, 7, 1), Day(2026, 12, 31), 2, 3),
            ],
            jars,
            [
                new(Day(2026, 4, 20), Day(2026, 4, 10), Day(2026, 4, 30), "spring round", true, false),
                new(Day(2026, 6, 5), Day(2026, 5, 28), Day(2026, 6, 14), "round before the peak", true, false),
                new(Day(2026, 7, 12), Day(2026, 7, 5), Day(2026, 7, 20), "round after the peak", true, false),
                new(Day(2026, 8, 12), Day(2026, 8, 5), Day(2026, 8, 19), "late-summer round", false, true),
                new(Day(2026, 9, 20), Day(2026, 9, 12), Day(2026, 9, 30), "round after control", false, false),
                new(Day(2026, 11, 20), Day(2026, 11, 10), Day(2026, 11, 30), "winter check", false, false),
            ]);
    }

    /// <summary>A southern apiary from July to June, with names that must be escaped and a jar of no mites.</summary>
    public static SeasonStrip Southern() => new(
        "Ridge <b>\"&'</b>", Day(2025, 7, 1), Day(2026, 6, 30), Day(2026, 1, 15),
        "Nothing is above the line; the next round is due on 2026-02-10.",
        [
            new(SeasonPhase.DormantWithBrood, Day(2025, 7, 1), Day(2025, 8, 20).AddDays(1)),
            new(SeasonPhase.Increase, Day(2025, 8, 21), Day(2025, 11, 30).AddDays(1)),
            new(SeasonPhase.Peak, Day(2025, 12, 1), Day(2026, 1, 31).AddDays(1)),
            new(SeasonPhase.Decrease, Day(2026, 2, 1), Day(2026, 4, 30).AddDays(1)),
            new(SeasonPhase.DormantWithBrood, Day(2026, 5, 1), Day(2026, 6, 30).AddDays(1)),
        ],
        [new(Day(2025, 9, 1), Day(2026, 5, 31), null, 2.5)],
        [
            Jar(101, "A&B", Day(2025, 10, 3), 0, 300, 2.5, 2.5),
            Jar(102, "<script>alert(1)</script>", Day(2025, 10, 3), 2, 320, 2.5, 2.5),
            Jar(103, "A&B", Day(2026, 1, 9), 5, 310, 2.5, 2.5),
        ],
        [
            new(Day(2025, 10, 5), Day(2025, 9, 25), Day(2025, 10, 15), "spring round", true, false),
            new(Day(2026, 2, 10), Day(2026, 2, 1), Day(2026, 2, 20), "round after the peak", false, false),
        ]);

    /// <summary>A mite fall, a void one and opened drone brood of the orchard, read as they are.</summary>
    public static IReadOnlyList<OtherMark> Others()
    {
        var knowledge = KnowledgeBase.Load();
        var reader = new OtherCountReader(knowledge, JudgingPolicy.Of(new PolicyRecord(FallLines: "osnabrueck-fall"), knowledge), System.Globalization.CultureInfo.InvariantCulture);
        OtherReading[] readings =
        [
            reader.Read(new OpenedBroodRecord(default, Day(2026, 6, 10), BroodKind.Drone, 100, 12, 15), null),
            reader.Read(new MiteFallRecord(default, Day(2026, 7, 14), 90, 5, 0.5), null),
            reader.Read(new MiteFallRecord(default, Day(2026, 10, 20), 0, 4, Collapsing: true), null),
        ];
        return [.. readings.Select((reading, i) => new OtherMark(JarId(500 + i), new ColonyId(new Guid(2000, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10)), "Hive 1", reading))];
    }

    /// <summary>A report of both apiaries.</summary>
    public static SeasonReport Report() => new(
        "Example bees", Day(2025, 7, 1), Day(2026, 12, 31), true, 0.95,
        "2 and 3 mites per 100 bees from July, 1 and 2 before (common practice, no source).",
        [Apiary(Orchard(), 11), Apiary(Southern(), 2)],
        [
            "Interval of one jar: exact Poisson (Garwood 1936).",
            "Judgement: chance that the level is above the line, from Jeffreys' prior; above from 0.9, below under 0.1.",
        ]);

    private static ApiaryReport Apiary(SeasonStrip strip, int living)
    {
        var days = new SortedDictionary<DateOnly, List<JarMark>>();
        var colonies = new Dictionary<string, List<JarMark>>();
        foreach (var jar in strip.Jars)
        {
            (days.TryGetValue(jar.On, out var day) ? day : days[jar.On] = []).Add(jar);
            (colonies.TryGetValue(jar.ColonyName, out var colony) ? colony : colonies[jar.ColonyName] = []).Add(jar);
        }

        return new(
            strip.Apiary, living, strip,
            [.. days.Select(day => Total(day.Key, day.Value))],
            [.. colonies.Select(colony => new ColonyReport(colony.Value[0].Colony, colony.Key, colony.Key == "Hive 13" ? "died 2026-07-30" : null, [.. colony.Value.OrderBy(jar => jar.On)])
            {
                Others = colony.Key == "Hive 1" ? Others() : [],
            })]);
    }

    private static DayTotal Total(DateOnly on, List<JarMark> jars)
    {
        var mites = jars.Sum(jar => jar.Mites);
        var bees = jars.Sum(jar => jar.Bees);
        var level = 100 * mites / bees;
        return new(on, jars[0].Method, jars.Count, mites, bees, level,
            jars.Count > 1 ? level * 0.6 : null, jars.Count > 1 ? level * 1.5 + 0.2 : null,
            jars.Count(jar => jar.Standing == Standing.Above), jars.Count(jar => jar.Standing == Standing.Unclear), jars.Count(jar => jar.Standing == Standing.Below));
    }
}
