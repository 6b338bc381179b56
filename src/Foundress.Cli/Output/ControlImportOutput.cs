namespace Foundress.Cli.Output;

/// <summary>The outcome of an import of controls as JSON.</summary>
internal sealed record ControlImportOutput(string File, bool Kept, int New, int Known, int Rejected, IReadOnlyList<string> UnknownColumns, string? RejectFile);
