namespace Foundress.Science.Dynamics.Bees;

/// <summary>What an event does to bees and brood at the start of a day.</summary>
internal readonly record struct BeeChange(
    int Day,
    double BeesLeft = 1d,
    double WorkerBroodLeft = 1d,
    double DroneBroodLeft = 1d,
    double BeesGone = 0d,
    double BroodGone = 0d,
    double BeesCome = 0d,
    double BroodCome = 0d,
    bool Begins = false)
{
    /// <summary>The share left at least when a number was taken: whoever counted frames left something behind.</summary>
    internal const double LeastLeft = 0.1;

    /// <summary>The changes that events make, in their order, counted in days from a first day.</summary>
    internal static BeeChange[] Of(IReadOnlyList<BeeEvent> ordered, DateOnly first, QueenTimes times)
    {
        var changes = new List<BeeChange>(ordered.Count);
        foreach (var happened in ordered)
        {
            int day = happened.On.DayNumber - first.DayNumber;
            switch (happened.Kind)
            {
                case BeeEventKind.Began:
                    changes.Add(new(day, 0d, 0d, 0d, BeesCome: happened.Bees ?? 0d, BroodCome: happened.Brood, Begins: true));
                    break;
                case BeeEventKind.Joined:
                    changes.Add(new(day, BeesCome: happened.Bees ?? 0d, BroodCome: happened.Brood));
                    break;
                case BeeEventKind.Swarmed:
                    changes.Add(new(day, 1d - (happened.Bees ?? times.SwarmShare)));
                    break;
                case BeeEventKind.Divided when happened.InShares:
                    changes.Add(new(day, 1d - (happened.Bees ?? 0d), 1d - happened.Brood, 1d - happened.Brood));
                    break;
                case BeeEventKind.Divided:
                    changes.Add(new(day, BeesGone: happened.Bees ?? 0d, BroodGone: happened.Brood));
                    break;
                case BeeEventKind.DroneBroodTaken:
                    changes.Add(new(day, DroneBroodLeft: 1d - happened.Brood));
                    break;
                case BeeEventKind.BroodTaken:
                    changes.Add(new(day, 1d, 1d - happened.Brood, 1d - happened.Brood));
                    break;
            }
        }

        return [.. changes];
    }
}
