using Foundress.Book;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;

namespace Foundress.PlanSearchBench;

/// <summary>An invented apiary at 48° north with jars of early summer, inspections, usual temperatures and a keeper's settings.</summary>
internal static class InventedApiary
{
    private static readonly double[] Highs = [3, 5, 10, 15, 20, 23, 25, 25, 20, 14, 8, 4];
    private static readonly double[] Lows = [-3, -2, 1, 4, 9, 12, 14, 14, 10, 6, 2, -1];

    internal static DateOnly Today { get; } = new(2026, 7, 20);

    internal static (BookState Book, Apiary Apiary) Of(int colonies, bool inspected)
    {
        var time = TimeProvider.System;
        var scribe = new Scribe("home", "keeper", "bench", new HybridClock(time), new NumberedIds());
        var ledger = new Ledger();
        void Write(Record record) => ledger.Add([scribe.Write(record)]);
        var apiary = new ApiaryId(scribe.Ids.Next());
        Write(new ApiaryRecord(apiary, "Invented", 48, 9));
        Write(new NormalsRecord(apiary, Highs, Lows));
        Write(new PolicyRecord(Jurisdiction: Jurisdiction.EuropeanUnion));
        for (var n = 0; n < colonies; n++)
        {
            var colony = new ColonyId(scribe.Ids.Next());
            Write(new ColonyRecord(colony, $"{n + 1}", apiary, new DateOnly(2026, 3, 15)));
            if (n % 4 != 3)
            {
                Write(new JarRecord(new DateOnly(2026, 5, 20), "alcohol-wash", [n % 3], JarBees.Counted(300), colony));
                Write(new JarRecord(Today.AddDays(-6), "alcohol-wash", [2 + (n * 5 % 9)], JarBees.Counted(300), colony));
            }

            if (!inspected)
                continue;
            Write(new InspectionRecord(colony, new DateOnly(2026, 5, 20), FramesOfBees: 12 + (n % 5), FramesOfBrood: 6 + (n % 3), SupersOn: true));
            Write(new InspectionRecord(colony, Today.AddDays(-6), FramesOfBees: 16 + (n % 5), FramesOfBrood: 7 + (n % 3), SupersOn: false));
        }

        return (ledger.State, ledger.State.Apiaries[apiary]);
    }

    private sealed class NumberedIds : IIdSource
    {
        private int _next;

        public Guid Next() => NamedIds.Of("plan search", (++_next).ToString(System.Globalization.CultureInfo.InvariantCulture));
    }
}
