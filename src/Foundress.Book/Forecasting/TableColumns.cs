namespace Foundress.Book.Forecasting;

/// <summary>The columns of a kind of file.</summary>
/// <param name="What">What a row is, for messages, such as <c>site</c>.</param>
/// <param name="Required">Columns it must have.</param>
/// <param name="Optional">Columns it may have.</param>
public sealed record TableColumns(string What, IReadOnlyList<string> Required, IReadOnlyList<string> Optional)
{
    /// <summary>Where apiaries stand.</summary>
    public static TableColumns Sites { get; } = new("site", ["apiary", "latitude", "longitude"], ["altitude"]);

    /// <summary>Jars to foretell.</summary>
    public static TableColumns Targets { get; } = new("target", ["apiary", "colony", "date", "bees"], []);

    /// <summary>Inspections.</summary>
    public static TableColumns Inspections { get; } = new("inspection", ["apiary", "colony", "date", "frames_of_bees", "frames_of_brood"], []);

    /// <summary>Controls.</summary>
    public static TableColumns Controls { get; } = new("control", ["apiary", "colony", "agent", "start", "end"], []);
}
