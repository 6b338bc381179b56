using Foundress.Book.Rounds;
using Foundress.Science.Sampling;

namespace Foundress.Cli.Output;

/// <summary>What numbers of jars buy in one apiary, as JSON: errors and chances from 0 to 1, levels in mites per 100 bees.</summary>
internal sealed record PlanDesign(
    double Line, double Harmless, double Harmful, double Shape, string ShapeBasis, int ColoniesOver, int? ForPrecision, int? ForDetection, string Sentence, IReadOnlyList<PlanDesignRow> Rows)
{
    internal static PlanDesign Of(RoundDesign design) => new(
        design.Question.Line.Per100Bees, design.Question.Harmless.Per100Bees, design.Question.Harmful.Per100Bees,
        design.Spread.Shape, design.Spread.Basis, design.Question.ColoniesOver, design.ForPrecision?.Take, design.ForDetection?.Take, design.Sentence,
        [.. design.Rows.Select(Row)]);

    private static PlanDesignRow Row(DesignRow row) =>
        new(row.Plan.Sample.Take, row.RelativeError, row.FindsOne.Value, row.WaitsTooLong.Value, row.ActsInVain.Value);
}
