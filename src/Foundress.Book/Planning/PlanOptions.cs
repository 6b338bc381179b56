using Foundress.Book.Journal;

namespace Foundress.Book.Planning;

/// <summary>How plans of controls are searched.</summary>
public sealed record PlanOptions
{
    /// <summary>Days looked ahead, 56 to 366: 182 by default.</summary>
    public int Ahead { get; init; } = 182;

    /// <summary>Days from one possible start to the next, 1 to 28: a week by default.</summary>
    public int Step { get; init; } = 7;

    /// <summary>Most controls in a plan, 0 to 3.</summary>
    public int Controls { get; init; } = 3;

    /// <summary>The chance of standing over the line that is borne, 0.01 to 0.5; null for the keeper's own, or the usual one.</summary>
    public double? Tolerance { get; init; }

    /// <summary>The colonies that would be controlled; null for all that live in the apiary.</summary>
    public IReadOnlyList<ColonyId>? Colonies { get; init; }

    /// <summary>The day supers come off; null for what the book says.</summary>
    public DateOnly? HarvestOn { get; init; }

    /// <summary>The day supers go on next; null for what the book says.</summary>
    public DateOnly? SupersDue { get; init; }

    /// <summary>What the keeper says of the colonies on the day of the search; null for what the book says.</summary>
    public SaidOfColonies? Said { get; init; }

    /// <summary>Possible courses for each colony with which the plans shown are worked out, 64 to 20,000.</summary>
    public int Particles { get; init; } = 500;

    /// <summary>Possible courses for each colony while searching, 16 to <see cref="Particles"/>.</summary>
    public int SearchParticles { get; init; } = 32;

    /// <summary>Most colonies looked at while searching, 1 or more: those most likely over the line, and one from their middle. All are looked at in the end.</summary>
    public int SearchColonies { get; init; } = 6;

    /// <summary>Most plans of two and of three controls worked out while searching, 8 or more.</summary>
    public int Runs { get; init; } = 160;

    /// <summary>Days of the record that are used, 30 to 1,000.</summary>
    public int RecordDays { get; init; } = 500;

    /// <summary>Seed of everything drawn: the same book, day and seed give the same plans on every device.</summary>
    public ulong Seed { get; init; } = 1;

    internal PlanOptions Checked()
    {
        Check(Ahead, 56, 366, nameof(Ahead), "A search looks 56 to 366 days ahead.");
        Check(Step, 1, 28, nameof(Step), "Possible starts lie 1 to 28 days apart.");
        Check(Controls, 0, 3, nameof(Controls), "A plan holds at most 3 controls.");
        Check(Particles, 64, 20_000, nameof(Particles), "A search works with 64 to 20,000 particles.");
        Check(SearchParticles, 16, Particles, nameof(SearchParticles), $"While searching 16 to {Particles} particles are used.");
        Check(SearchColonies, 1, int.MaxValue, nameof(SearchColonies), "At least one colony is looked at while searching.");
        Check(Runs, 8, int.MaxValue, nameof(Runs), "At least 8 plans are worked out.");
        Check(RecordDays, 30, 1000, nameof(RecordDays), "A search uses 30 to 1,000 days of the record.");
        if (Tolerance is { } tolerance && tolerance is not (>= 0.01 and <= 0.5))
            throw new ArgumentOutOfRangeException(nameof(Tolerance), tolerance, "The chance that is borne lies between 0.01 and 0.5.");
        return this;
    }

    private static void Check(int value, int low, int high, string name, string message)
    {
        if (value < low || value > high)
            throw new ArgumentOutOfRangeException(name, value, message);
    }
}
