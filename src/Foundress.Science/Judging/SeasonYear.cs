namespace Foundress.Science.Judging;

/// <summary>The colonies' year at a site: one phase for each calendar month. Immutable; equal when all twelve phases are.</summary>
public sealed class SeasonYear : IEquatable<SeasonYear>
{
    private const int Months = 12;

    private readonly SeasonPhase[] _phases;

    /// <summary>A year as it runs at the site, January first.</summary>
    /// <param name="phases">Twelve phases, January to December.</param>
    /// <exception cref="ArgumentException">There are not twelve, or one is not a phase.</exception>
    public SeasonYear(IReadOnlyList<SeasonPhase> phases)
    {
        ArgumentNullException.ThrowIfNull(phases);
        if (phases.Count != Months)
            throw new ArgumentException($"A season year has twelve phases, one for each month from January; {phases.Count} were given.", nameof(phases));
        for (int month = 0; month < Months; month++)
        {
            if (!Enum.IsDefined(phases[month]))
                throw new ArgumentException($"Month {month + 1} has {(int)phases[month]}, which is not a season phase.", nameof(phases));
        }

        _phases = [.. phases];
    }

    /// <summary>The phases, January to December.</summary>
    public IReadOnlyList<SeasonPhase> Phases => _phases;

    /// <summary>The year of a site in a hemisphere, from the phases written down for a northern one: the south runs six months apart.</summary>
    /// <param name="northern">Twelve phases, January to December, of a northern site.</param>
    /// <param name="hemisphere">Where the site lies.</param>
    /// <exception cref="ArgumentException">There are not twelve phases.</exception>
    public static SeasonYear For(IReadOnlyList<SeasonPhase> northern, Hemisphere hemisphere) => new SeasonYear(northern).ForHemisphere(hemisphere);

    /// <summary>This year taken as a northern one and moved to a hemisphere: unchanged in the north, six months apart in the south.</summary>
    public SeasonYear ForHemisphere(Hemisphere hemisphere) => hemisphere == Hemisphere.South ? Shifted(6) : this;

    /// <summary>The same year some months later: what was January's phase comes <paramref name="months"/> after January.</summary>
    public SeasonYear Shifted(int months)
    {
        var phases = new SeasonPhase[Months];
        for (int month = 0; month < Months; month++)
            phases[(((month + months) % Months) + Months) % Months] = _phases[month];
        return new(phases);
    }

    /// <summary>The phase on a day.</summary>
    public SeasonPhase PhaseOn(DateOnly day) => _phases[day.Month - 1];

    /// <summary>The phases of a window as stretches of days without a gap, cut at both ends of the window.</summary>
    /// <param name="from">First day.</param>
    /// <param name="until">First day after the window.</param>
    /// <exception cref="ArgumentOutOfRangeException">The window is empty.</exception>
    public IReadOnlyList<PhaseSpan> Spans(DateOnly from, DateOnly until)
    {
        if (until <= from)
            throw new ArgumentOutOfRangeException(nameof(until), until, $"A window must end after it begins ({from:yyyy-MM-dd}).");

        var spans = new List<PhaseSpan>();
        for (DateOnly start = from; start < until;)
        {
            SeasonPhase phase = PhaseOn(start);
            DateOnly end = start;
            do
            {
                // The last month of the calendar has no first day after it.
                end = end is { Year: 9999, Month: 12 } ? until : NextMonth(end);
            }
            while (end < until && PhaseOn(end) == phase);

            if (end > until)
                end = until;
            spans.Add(new(phase, start, end));
            start = end;
        }

        return spans;
    }

    /// <inheritdoc/>
    public bool Equals(SeasonYear? other) => other is not null && _phases.AsSpan().SequenceEqual(other._phases);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as SeasonYear);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        HashCode hash = default;
        foreach (SeasonPhase phase in _phases)
            hash.Add(phase);
        return hash.ToHashCode();
    }

    private static DateOnly NextMonth(DateOnly day) => new DateOnly(day.Year, day.Month, 1).AddMonths(1);
}
