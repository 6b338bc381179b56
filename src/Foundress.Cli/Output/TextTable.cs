namespace Foundress.Cli.Output;

/// <summary>Columns of numbers under heads of any length: each as wide as its head or its widest cell, set to the right.</summary>
internal static class TextTable
{
    internal static void Write(TextWriter text, int indent, int gap, IReadOnlyList<string> heads, IEnumerable<IReadOnlyList<string>> rows)
    {
        IReadOnlyList<string>[] all = [heads, .. rows];
        int[] widths = [.. heads.Select((_, column) => all.Max(row => row[column].Length))];
        foreach (var row in all)
            text.WriteLine(new string(' ', indent) + string.Join(new string(' ', gap), row.Select((cell, column) => cell.PadLeft(widths[column]))));
    }
}
