namespace Foundress.Book.Records;

/// <summary>How a jar was worked. Dampness and short shaking undercount (common practice, no source).</summary>
/// <param name="Damp">Whether bees, sugar or air were damp.</param>
/// <param name="AgitationSeconds">How long the jar was shaken or swirled.</param>
/// <param name="SettlingSeconds">How long it stood before counting.</param>
/// <param name="AirCelsius">Air temperature.</param>
public sealed record JarConditions(
    bool? Damp = null,
    int? AgitationSeconds = null,
    int? SettlingSeconds = null,
    double? AirCelsius = null);
