using Foundress.Book.Records;
using Foundress.Science.Sampling;

namespace Foundress.Cli.Output;

/// <summary>A chart for stopping early, as JSON.</summary>
internal sealed record ChartOutput(EarlyStop Rule, IReadOnlyList<SequentialLine> Lines, IReadOnlyList<ChartEnd> Ends);
