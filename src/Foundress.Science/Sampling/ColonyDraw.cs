using Foundress.Science.Numerics;

namespace Foundress.Science.Sampling;

/// <summary>
/// Draws colonies at random within each apiary. The result depends on the seed and the names only: not on the order in
/// which colonies or apiaries are given, and not on the other apiaries in the draw. Never "the first eight by the gate".
/// </summary>
public static class ColonyDraw
{
    /// <summary>A draw.</summary>
    /// <param name="strata">One for each apiary; at least one.</param>
    /// <param name="seed">Any number; print it beside the result.</param>
    /// <remarks>
    /// Each apiary's colonies are put in ordinal order of their names and shuffled (Durstenfeld 1964) by a generator seeded
    /// from the seed and the apiary's name. The first ones are chosen, the rest are the reserves in order, so taking more
    /// colonies later only moves reserves up.
    /// </remarks>
    /// <exception cref="ArgumentException">There is no apiary, a name is empty or occurs twice.</exception>
    /// <exception cref="ArgumentOutOfRangeException">More colonies are to be taken than there are, or fewer than none.</exception>
    public static Draw Draw(IReadOnlyList<Stratum> strata, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(strata);
        if (strata.Count == 0)
            throw new ArgumentException("A draw needs at least one apiary.", nameof(strata));

        Stratum[] ordered = [.. strata];
        Array.Sort(ordered, (one, other) => string.CompareOrdinal(one.Apiary, other.Apiary));
        CheckNames([.. ordered.Select(stratum => stratum.Apiary)], "apiary", nameof(strata));
        return new(seed, [.. ordered.Select(stratum => DrawOne(stratum, seed))]);
    }

    private static StratumDraw DrawOne(Stratum stratum, ulong seed)
    {
        string[] colonies = [.. stratum.Colonies];
        Array.Sort(colonies, string.CompareOrdinal);
        CheckNames(colonies, $"colony of apiary '{stratum.Apiary}'", nameof(stratum));
        if (stratum.Take < 0 || stratum.Take > colonies.Length)
        {
            throw new ArgumentOutOfRangeException(
                nameof(stratum), stratum.Take, $"Apiary '{stratum.Apiary}' has {colonies.Length} colonies: take between 0 and {colonies.Length}.");
        }

        SeededGenerator random = SeededGenerator.ForPart(seed, stratum.Apiary);
        for (int i = 0; i < colonies.Length - 1; i++)
        {
            int j = i + random.NextInt(colonies.Length - i);
            (colonies[i], colonies[j]) = (colonies[j], colonies[i]);
        }

        return new(stratum.Apiary, colonies[..stratum.Take], colonies[stratum.Take..]);
    }

    private static void CheckNames(string[] sorted, string what, string parameter)
    {
        for (int i = 0; i < sorted.Length; i++)
        {
            if (string.IsNullOrWhiteSpace(sorted[i]))
                throw new ArgumentException($"A name of an {what} is empty: give every one a name.", parameter);
            if (i > 0 && string.Equals(sorted[i], sorted[i - 1], StringComparison.Ordinal))
                throw new ArgumentException($"The name '{sorted[i]}' of an {what} occurs twice: a draw needs different names.", parameter);
        }
    }
}
