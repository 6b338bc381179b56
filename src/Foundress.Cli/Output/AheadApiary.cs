using Foundress.Book.Forecasts;

namespace Foundress.Cli.Output;

/// <summary>Where an apiary is heading, as JSON.</summary>
internal sealed record AheadApiary(string Apiary, ApiaryCourse Course);
