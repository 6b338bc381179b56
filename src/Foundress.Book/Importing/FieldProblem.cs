namespace Foundress.Book.Importing;

/// <summary>What is wrong with one value.</summary>
/// <param name="Column">The column; empty when the row as a whole is meant.</param>
/// <param name="Value">The value as it stands in the file.</param>
/// <param name="Fix">What is wrong and how to put it right, as a sentence.</param>
public sealed record FieldProblem(string Column, string Value, string Fix)
{
    private const int ShownLength = 60;

    /// <summary>For example <c>bees '0': A jar holds at least one bee.</c></summary>
    public override string ToString()
    {
        if (Column.Length == 0)
            return Fix;
        var shown = Value.Length > ShownLength ? string.Concat(Value.AsSpan(0, ShownLength), "…") : Value;
        return shown.Length == 0 ? $"{Column}: {Fix}" : FieldTexts.FormatValueWrong(Column, shown, Fix);
    }
}
