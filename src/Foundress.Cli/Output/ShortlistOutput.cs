using Foundress.Book.Breeding;

namespace Foundress.Cli.Output;

/// <summary>A breeding shortlist as JSON: growth of the natural logarithm of the level per day, chances from 0 to 1.</summary>
internal sealed record ShortlistOutput(
    DateOnly Since, bool? IsNoise, double? HitRate, double? Reliability, string Sentence, IReadOnlyList<ShortlistRow> Colonies, IReadOnlyList<string> WithoutJars)
{
    internal static ShortlistOutput Of(BreedingList list, DateOnly since) => new(
        since, list.Ranking?.IsNoise, list.Ranking?.HitRate, list.Ranking?.Reliability, list.Sentence,
        [.. list.Rows.Select(row => new ShortlistRow(row.Colony.Name, row.Growth.Mean, row.Growth.Interval(0.9).Lower, row.Growth.Interval(0.9).Upper, row.Growth.ChanceInBestFifth.Value, row.Growth.FromJars))],
        [.. list.LeftOut.Select(colony => colony.Name)]);
}
