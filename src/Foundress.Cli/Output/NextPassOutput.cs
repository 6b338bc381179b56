namespace Foundress.Cli.Output;

/// <summary>What another pass is expected to bring, in mites; a width is null where there is no upper limit.</summary>
internal sealed record NextPassOutput(double ExpectedMites, double ExpectedLeft, double? WidthNow, double? WidthAfter, bool WorthIt);
