namespace Foundress.Book.Importing;

/// <summary>The columns of a CSV file of jars. Documented in <c>docs/csv.md</c>.</summary>
public static class JarColumns
{
    /// <summary>Name of the apiary.</summary>
    public const string Apiary = "apiary";

    /// <summary>Number or name of the colony within its apiary.</summary>
    public const string Colony = "colony";

    /// <summary>Day the bees were taken, yyyy-MM-dd.</summary>
    public const string Date = "date";

    /// <summary>Id of the counting method.</summary>
    public const string Method = "method";

    /// <summary>Mites counted in all passes together.</summary>
    public const string Mites = "mites";

    /// <summary>Bees in the jar.</summary>
    public const string Bees = "bees";

    /// <summary>How the number of bees is known.</summary>
    public const string BeesBasis = "bees_basis";

    /// <summary>Mites in each pass over the same bees.</summary>
    public const string Passes = "passes";

    /// <summary>Id of the measure the bees were taken with.</summary>
    public const string Measure = "measure";

    /// <summary>Anything else.</summary>
    public const string Note = "note";

    /// <summary>Where a rejected row stood. Written in reject files, passed over when one is imported again.</summary>
    public const string Row = "row";

    /// <summary>Why a row was rejected. Written in reject files, passed over when one is imported again.</summary>
    public const string Problem = "problem";

    /// <summary>Columns every file must have.</summary>
    public static IReadOnlyList<string> Required { get; } = [Apiary, Colony, Date, Method, Mites, Bees];

    /// <summary>Columns a file may have.</summary>
    public static IReadOnlyList<string> Optional { get; } = [BeesBasis, Passes, Measure, Note];

    /// <summary>The form a header is compared in: trimmed, lower case, blanks and hyphens as underscores.</summary>
    public static string Normal(string header) => header.Trim().ToLowerInvariant().Replace(' ', '_').Replace('-', '_');
}
