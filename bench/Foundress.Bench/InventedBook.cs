using System.Globalization;
using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Bench;

/// <summary>A large invented book: apiaries of thirty colonies, then jars and inspections round and round.</summary>
internal static class InventedBook
{
    private const int Colonies = 1_500;
    private const int ColoniesAnApiary = 30;

    public static Entry[] Entries(int count)
    {
        var time = new SteppingTime();
        var scribe = new Scribe("home", "keeper", "bench", new HybridClock(time), new TimeOrderedIds(time));
        var start = new DateOnly(2020, 4, 1);
        var records = new List<Record>(count);
        var colonies = new ColonyId[Colonies];
        ApiaryId apiary = default;
        for (var n = 0; n < Colonies; n++)
        {
            if (n % ColoniesAnApiary == 0)
            {
                apiary = new ApiaryId(scribe.Ids.Next());
                records.Add(new ApiaryRecord(apiary, string.Create(CultureInfo.InvariantCulture, $"Apiary {n / ColoniesAnApiary}"), 47.1, 8.2));
            }

            colonies[n] = new ColonyId(scribe.Ids.Next());
            records.Add(new ColonyRecord(colonies[n], string.Create(CultureInfo.InvariantCulture, $"{n + 1}"), apiary, start));
        }

        for (var n = 0; records.Count < count; n++)
        {
            var on = start.AddDays(n / 40);
            records.Add(n % 3 == 0
                ? new InspectionRecord(colonies[n % Colonies], on, FramesOfBees: 8, FramesOfBrood: 5)
                : new JarRecord(on, "wash", [n % 17, n % 3], JarBees.Counted(280 + (n % 50)), colonies[n % Colonies]));
        }

        return [.. records.Take(count).Select(scribe.Write)];
    }

    private sealed class SteppingTime : TimeProvider
    {
        private DateTimeOffset _now = new(2020, 4, 1, 8, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => _now = _now.AddSeconds(30);
    }
}
