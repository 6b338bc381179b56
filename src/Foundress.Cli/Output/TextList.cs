namespace Foundress.Cli.Output;

/// <summary>A list under its head, for people; nothing where the list is empty.</summary>
internal static class TextList
{
    internal static void Write(TextWriter text, string head, IReadOnlyList<string> items)
    {
        if (items.Count == 0)
            return;
        text.WriteLine("\n" + head);
        foreach (var item in items)
            text.WriteLine("  - " + item);
    }
}
