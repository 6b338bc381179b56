using Foundress.Book.Records;
using Foundress.Science.Sampling;

namespace Foundress.Cli.Output;

/// <summary>A chart for stopping early, as JSON; for each number of jars also the mites from which the mean is known to the precision.</summary>
internal sealed record ChartOutput(EarlyStop Rule, IReadOnlyList<SequentialLine> Lines, IReadOnlyList<ChartEnd> Ends, double Precision, IReadOnlyList<int?> PreciseFrom);
