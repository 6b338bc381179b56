namespace Foundress.Cli.Output;

/// <summary>The outcome of writing or taking in a file of a whole book, as JSON.</summary>
internal sealed record BookFileOutput(string File, string Operation, int Entries, int? New, int? Known, int LeftOut, string? Sha256);
