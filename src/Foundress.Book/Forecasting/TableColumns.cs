namespace Foundress.Book.Forecasting;

/// <summary>The columns of a kind of file.</summary>
/// <param name="Say">Says that a file of this kind needs the columns it is given.</param>
/// <param name="Required">Columns it must have.</param>
/// <param name="Optional">Columns it may have.</param>
public sealed record TableColumns(Func<string, string> Say, IReadOnlyList<string> Required, IReadOnlyList<string> Optional)
{
    /// <summary>Where apiaries stand.</summary>
    public static TableColumns Sites { get; } = new(TableTexts.FormatNeededForSites, ["apiary", "latitude", "longitude"], ["altitude"]);

    /// <summary>Jars to foretell.</summary>
    public static TableColumns Targets { get; } = new(TableTexts.FormatNeededForTargets, ["apiary", "colony", "date", "bees"], []);

    /// <summary>Inspections.</summary>
    public static TableColumns Inspections { get; } = new(TableTexts.FormatNeededForInspections, ["apiary", "colony", "date", "frames_of_bees", "frames_of_brood"], []);

    /// <summary>Controls.</summary>
    public static TableColumns Controls { get; } = new(TableTexts.FormatNeededForControls, ["apiary", "colony", "agent", "start", "end"], []);

    /// <summary>Which columns it needs, for messages.</summary>
    internal string Needed => Say(string.Join(", ", Required));
}
