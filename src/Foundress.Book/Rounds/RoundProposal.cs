namespace Foundress.Book.Rounds;

/// <summary>A round before it is drawn: how many colonies where, and why.</summary>
/// <param name="Apiaries">The apiaries, by name.</param>
/// <param name="Rule">The rule the numbers follow, in words, with its source.</param>
public sealed record RoundProposal(IReadOnlyList<ApiaryProposal> Apiaries, string Rule)
{
    /// <summary>How many jars the round needs.</summary>
    public int Jars => Apiaries.Sum(apiary => apiary.Take);
}
