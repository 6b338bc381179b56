namespace Foundress.Cli.Output;

/// <summary>The outcome of an import as JSON.</summary>
internal sealed record ImportOutput(
    string File, bool Kept, int New, int Known, int Rejected, int NewApiaries, int NewColonies, IReadOnlyList<string> UnknownColumns, string? RejectFile);
