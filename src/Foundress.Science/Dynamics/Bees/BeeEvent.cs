namespace Foundress.Science.Dynamics.Bees;

/// <summary>Something that changed a colony on a day. It works from the start of that day on.</summary>
public readonly record struct BeeEvent
{
    private BeeEvent(DateOnly on, BeeEventKind kind, double? bees = 0, double brood = 0, double? laysAfter = null, bool inShares = false) =>
        (On, Kind, Bees, Brood, LaysAfter, InShares) = (on, kind, bees, brood, laysAfter, inShares);

    /// <summary>The day.</summary>
    public DateOnly On { get; }

    /// <summary>What happened.</summary>
    public BeeEventKind Kind { get; }

    /// <summary>Adult bees that came or went, as a number or as a share of those there were; null for a swarm of unknown size.</summary>
    public double? Bees { get; }

    /// <summary>Brood that came or went: cells of every age, or a share of the brood there was.</summary>
    public double Brood { get; }

    /// <summary>Whether <see cref="Bees"/> and <see cref="Brood"/> are shares from 0 to 1 rather than numbers.</summary>
    public bool InShares { get; }

    /// <summary>Days from the beginning of a colony to its first eggs; null where it raises its own queen.</summary>
    public double? LaysAfter { get; }

    /// <summary>A colony began with a laying queen: a nucleus, a bought colony.</summary>
    /// <param name="on">The day.</param>
    /// <param name="bees">Adult bees, 0 to 1,000,000.</param>
    /// <param name="brood">Cells of brood of every age.</param>
    public static BeeEvent Began(DateOnly on, double bees, double brood) => new(on, BeeEventKind.Began, Number(bees, nameof(bees)), Number(brood, nameof(brood)), 0d);

    /// <summary>A package or swarm was hived: bees and a queen, no brood.</summary>
    /// <param name="on">The day.</param>
    /// <param name="bees">Adult bees, 0 to 1,000,000.</param>
    /// <param name="times">How long until she lays.</param>
    public static BeeEvent Hived(DateOnly on, double bees, QueenTimes times) => new(on, BeeEventKind.Began, Number(bees, nameof(bees)), 0d, times.AfterHiving);

    /// <summary>A colony was made from bees and brood of another and raises its own queen.</summary>
    /// <param name="on">The day.</param>
    /// <param name="bees">Adult bees, 0 to 1,000,000.</param>
    /// <param name="brood">Cells of brood of every age.</param>
    public static BeeEvent MadeWithoutQueen(DateOnly on, double bees, double brood) => new(on, BeeEventKind.Began, Number(bees, nameof(bees)), Number(brood, nameof(brood)));

    /// <summary>Something happened to the queen.</summary>
    /// <param name="on">The day.</param>
    /// <param name="kind">Lost, caged, released, or a new one laying.</param>
    /// <exception cref="ArgumentOutOfRangeException">The kind is not about the queen alone.</exception>
    public static BeeEvent Queen(DateOnly on, BeeEventKind kind) =>
        kind is BeeEventKind.QueenLost or BeeEventKind.QueenCaged or BeeEventKind.QueenReleased or BeeEventKind.NewQueenLaying
            ? new(on, kind)
            : throw new ArgumentOutOfRangeException(nameof(kind), kind, "This is not something that happens to a queen alone. Use lost, caged, released or new queen laying.");

    /// <summary>The colony swarmed.</summary>
    /// <param name="on">The day.</param>
    /// <param name="shareOfBees">Share of its bees that left, 0 to 1; null when not known.</param>
    public static BeeEvent Swarmed(DateOnly on, double? shareOfBees = null) =>
        new(on, BeeEventKind.Swarmed, shareOfBees is { } share ? Share(share, nameof(shareOfBees)) : null, inShares: true);

    /// <summary>A part of the colony was taken for another.</summary>
    /// <param name="on">The day.</param>
    /// <param name="shareOfBees">Share of its bees that went, 0 to 1.</param>
    /// <param name="shareOfBrood">Share of its brood that went, 0 to 1.</param>
    public static BeeEvent Divided(DateOnly on, double shareOfBees, double shareOfBrood) =>
        new(on, BeeEventKind.Divided, Share(shareOfBees, nameof(shareOfBees)), Share(shareOfBrood, nameof(shareOfBrood)), inShares: true);

    /// <summary>Bees and brood were taken for another colony, as a number; a tenth of what there was is left at least.</summary>
    /// <param name="on">The day.</param>
    /// <param name="bees">Adult bees that went, 0 to 1,000,000.</param>
    /// <param name="brood">Cells of brood of every age that went.</param>
    public static BeeEvent Gave(DateOnly on, double bees, double brood) => new(on, BeeEventKind.Divided, Number(bees, nameof(bees)), Number(brood, nameof(brood)));

    /// <summary>Bees of another colony were added.</summary>
    /// <param name="on">The day.</param>
    /// <param name="bees">Adult bees, 0 to 1,000,000.</param>
    /// <param name="brood">Cells of brood of every age.</param>
    public static BeeEvent Joined(DateOnly on, double bees, double brood) => new(on, BeeEventKind.Joined, Number(bees, nameof(bees)), Number(brood, nameof(brood)));

    /// <summary>Drone brood was cut out.</summary>
    /// <param name="on">The day.</param>
    /// <param name="share">Share of it, 0 to 1.</param>
    public static BeeEvent DroneBroodTaken(DateOnly on, double share) => new(on, BeeEventKind.DroneBroodTaken, 0d, Share(share, nameof(share)), inShares: true);

    /// <summary>Brood of every kind was taken away.</summary>
    /// <param name="on">The day.</param>
    /// <param name="share">Share of it, 0 to 1.</param>
    public static BeeEvent BroodTaken(DateOnly on, double share) => new(on, BeeEventKind.BroodTaken, 0d, Share(share, nameof(share)), inShares: true);

    private static double Share(double share, string name) =>
        share is >= 0 and <= 1 ? share : throw new ArgumentOutOfRangeException(name, share, "A share lies between 0 and 1.");

    private static double Number(double number, string name) =>
        number is >= 0 and <= 1e6 ? number : throw new ArgumentOutOfRangeException(name, number, "Give a number from 0 to 1,000,000.");
}
