namespace Foundress.Book.Importing;

/// <summary>The columns of a CSV file of controls. Documented in <c>docs/csv.md</c>.</summary>
public static class ControlColumns
{
    /// <summary>Name of the apiary.</summary>
    public const string Apiary = "apiary";

    /// <summary>Numbers or names of the colonies, with semicolons between them, or <c>all</c>.</summary>
    public const string Colony = "colony";

    /// <summary>What was used: id, title or another known name of a control.</summary>
    public const string Agent = "agent";

    /// <summary>First day, yyyy-MM-dd.</summary>
    public const string Start = "start";

    /// <summary>Last day, yyyy-MM-dd.</summary>
    public const string End = "end";

    /// <summary>How it ended: <c>as planned</c>, <c>stopped early</c> or <c>partial</c>.</summary>
    public const string Ending = "ending";

    /// <summary>Columns every file must have.</summary>
    public static IReadOnlyList<string> Required { get; } = [Apiary, Colony, Agent, Start];

    /// <summary>Columns a file may have.</summary>
    public static IReadOnlyList<string> Optional { get; } =
        [End, Ending, "product", "quantity", "batch", "supplier", "proof_of_purchase", "given_by", "prescriber", "withdrawal_days", "reason", "weather", "note"];
}
