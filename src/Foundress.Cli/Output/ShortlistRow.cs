namespace Foundress.Cli.Output;

/// <summary>One colony of a breeding shortlist; the interval holds 90 %.</summary>
internal sealed record ShortlistRow(string Colony, double GrowthPerDay, double Lower, double Upper, double InSlowestFifth, bool FromItsJars);
