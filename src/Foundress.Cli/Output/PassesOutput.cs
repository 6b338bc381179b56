using Foundress.Book.Judging;
using Foundress.Science.Estimation;

namespace Foundress.Cli.Output;

/// <summary>What repeat passes over the same bees tell. Numbers are mites, but for the level; what there is no estimate of is null.</summary>
internal sealed record PassesOutput(
    double? Mites,
    double? StandardError,
    double? Lower,
    double? Upper,
    double? Confidence,
    double? RecoveryOfPass,
    double? RecoveryOfAll,
    double? LevelIfAllWereFound,
    RemovalRefusal? Refused,
    NextPassOutput? Next,
    string Finding,
    string? Advice)
{
    internal static PassesOutput? Of(PassesReading? reading)
    {
        if (reading is null)
            return null;
        var estimate = reading.Removal.Estimate;
        return new PassesOutput(
            estimate?.Mites, estimate?.StandardError, reading.Interval?.Lower, reading.Interval?.Upper, reading.Interval?.Confidence,
            estimate?.RecoveryOfPass, estimate?.RecoveryOfAll, reading.PerHundred, reading.Removal.Refusal,
            reading.Next is { } next ? new NextPassOutput(next.ExpectedMites, next.ExpectedLeft, next.Now.Width, next.After.Width, reading.AnotherIsWorthIt == true) : null,
            reading.Finding, reading.Advice);
    }
}
