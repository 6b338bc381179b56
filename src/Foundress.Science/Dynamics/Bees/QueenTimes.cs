namespace Foundress.Science.Dynamics.Bees;

/// <summary>How long laying stops after what happens to a queen. All figures are data, in days, 0 or more.</summary>
public sealed record QueenTimes
{
    /// <summary>From the loss of the queen to the first eggs of one raised from a larva.</summary>
    public required double Raised { get; init; }

    /// <summary>From the swarm to the first eggs of the young queen.</summary>
    public required double AfterSwarm { get; init; }

    /// <summary>From hiving a package or swarm to the first eggs.</summary>
    public required double AfterHiving { get; init; }

    /// <summary>From letting the queen out of a cage to her first eggs.</summary>
    public required double AfterRelease { get; init; }

    /// <summary>How long a queen is usually caged: taken where no release is in the book.</summary>
    public required double Caged { get; init; }

    /// <summary>From her first eggs until she lays at her full rate.</summary>
    public required double ToFull { get; init; }

    /// <summary>From the loss of a queen to the mating flights of the next: without drones then, none lays.</summary>
    public required double ToMating { get; init; }

    /// <summary>From the emergence of a drone until it can mate.</summary>
    public required double DroneRipening { get; init; }

    /// <summary>Share of the adult bees that leaves with a swarm, where the book does not say, 0 to 1.</summary>
    public required double SwarmShare { get; init; }

    /// <summary>Spread of the brood (standard deviation of its natural logarithm) added where laying again was taken from these figures, not from the book, 0 to 1.5.</summary>
    public required double UnseenSpread { get; init; }

    /// <summary>Refuses figures with which nothing can be reckoned.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A figure is out of its range; the message names it.</exception>
    public void Check()
    {
        BeeLives.Within(Raised, 0, 120, nameof(Raised));
        BeeLives.Within(AfterSwarm, 0, 120, nameof(AfterSwarm));
        BeeLives.Within(AfterHiving, 0, 120, nameof(AfterHiving));
        BeeLives.Within(AfterRelease, 0, 120, nameof(AfterRelease));
        BeeLives.Within(Caged, 0, 365, nameof(Caged));
        BeeLives.Within(ToFull, 0, 120, nameof(ToFull));
        BeeLives.Within(ToMating, 0, 120, nameof(ToMating));
        BeeLives.Within(DroneRipening, 0, 120, nameof(DroneRipening));
        BeeLives.Within(SwarmShare, 0, 1, nameof(SwarmShare));
        BeeLives.Within(UnseenSpread, 0, 1.5, nameof(UnseenSpread));
    }
}
