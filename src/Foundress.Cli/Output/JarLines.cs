namespace Foundress.Cli.Output;

/// <summary>The lines a jar was judged by.</summary>
internal sealed record JarLines(string Id, string Title, string Unit, double? Watch, double? Act, double? ChanceOverWatch, string Source);
