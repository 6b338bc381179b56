using Foundress.Book.Judging;
using Foundress.Book.Records;
using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Judging;

namespace Foundress.Cli.Output;

/// <summary>A jar's reading as JSON. Levels are mites per 100 bees on the method's own scale; what is not judged is null.</summary>
internal sealed record JarOutput(
    double Level,
    IntervalOutput Interval,
    double? Line,
    double? ChanceOverLine,
    Standing? Judgement,
    string? NotJudged,
    JarLines? Lines,
    IReadOnlyList<int> Passes,
    int Mites,
    BeesOutput Bees,
    string Method,
    string Scale,
    DateOnly Date,
    PosteriorOutput Posterior,
    IReadOnlyList<IntervalOutput> OtherIntervals,
    PassesOutput? Removal,
    IReadOnlyList<CorrectedOutput> IfCorrected,
    string Meaning,
    IReadOnlyList<string> Sharpen,
    IReadOnlyList<WorkingStep> Working,
    IReadOnlyList<string> Cautions)
{
    internal static JarOutput Of(JarReading reading)
    {
        var jar = reading.Facts;
        var judged = reading.NotJudged is null;
        return new JarOutput(
            reading.Level.Per100Bees, IntervalOutput.Of(reading.Interval),
            judged ? reading.Lines?.Deciding : null, reading.OverLine?.Value, reading.Standing, reading.NotJudged,
            reading.Lines is { } lines ? new JarLines(lines.PolicyId, lines.Title, lines.Unit, lines.Watch, lines.Act, reading.OverWatch?.Value, lines.Source) : null,
            jar.Passes, jar.Mites, new BeesOutput(jar.Bees.Count, jar.Bees.Basis, jar.Bees.LogSpread, jar.Bees.Measure, jar.Bees.Grams, jar.Bees.SampleBees, jar.Bees.SampleGrams),
            reading.Method.Id, reading.Method.ScaleId, jar.On,
            PosteriorOutput.Of(reading.Posterior, reading.Interval.Confidence), Others(jar, reading.Interval.Confidence),
            PassesOutput.Of(reading.Passes), [.. reading.Corrected.Select(CorrectedOutput.Of)], reading.Meaning, reading.Sharpen, reading.Working, reading.Cautions);
    }

    // For readers who treat each bee as having a mite or none; they need every bee counted and no more mites than bees.
    private static IReadOnlyList<IntervalOutput> Others(JarRecord jar, double confidence)
    {
        var bees = (int)jar.Bees.Count;
        if (jar.Bees.Basis != BeeBasis.Counted || jar.Mites > bees)
            return [];
        return
        [
            IntervalOutput.Of(CountIntervals.Wilson(jar.Mites, bees, confidence)),
            IntervalOutput.Of(CountIntervals.ClopperPearson(jar.Mites, bees, confidence)),
        ];
    }
}
