namespace Foundress.Cli.Output;

/// <summary>What was drawn in one apiary.</summary>
internal sealed record DrawApiary(string Apiary, IReadOnlyList<string> Chosen, IReadOnlyList<string> Reserves);
