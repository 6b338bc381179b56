namespace Foundress.Book.Importing;

/// <summary>Writes separated values (RFC 4180): rows end with CR LF, a field is quoted where it must be.</summary>
/// <param name="text">Where to; the caller disposes of it.</param>
/// <param name="separator">What stands between fields.</param>
public sealed class CsvWriter(TextWriter text, char separator)
{
    /// <summary>Writes one row.</summary>
    public void Write(IEnumerable<string> fields)
    {
        var first = true;
        foreach (var field in fields)
        {
            if (!first)
                text.Write(separator);
            first = false;
            if (!NeedsQuotes(field))
            {
                text.Write(field);
                continue;
            }

            text.Write('"');
            text.Write(field.Replace("\"", "\"\"", StringComparison.Ordinal));
            text.Write('"');
        }

        text.Write("\r\n");
    }

    private bool NeedsQuotes(string field) =>
        field.Contains(separator) || field.AsSpan().IndexOfAny('"', '\r', '\n') >= 0 || field.StartsWith(' ') || field.EndsWith(' ');
}
