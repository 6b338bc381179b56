using System.Text;

namespace Foundress.Storage.Postgres;

/// <summary>
/// Text as PostgreSQL can hold it. It takes every character but U+0000, which a name from a device may hold all the same;
/// that is written as two others here and read back as what it was.
/// </summary>
internal static class PostgresText
{
    // U+001A, "substitute": no keyboard gives it, so texts almost never hold it themselves.
    private const char Escape = '\u001A';
    private const char Null = '0';
    private const char Itself = '1';

    public static string Encode(string text)
    {
        if (text.AsSpan().IndexOfAny('\0', Escape) < 0)
            return text;
        var written = new StringBuilder(text.Length + 8);
        foreach (var one in text)
        {
            _ = one switch
            {
                '\0' => written.Append(Escape).Append(Null),
                Escape => written.Append(Escape).Append(Itself),
                _ => written.Append(one),
            };
        }

        return written.ToString();
    }

    public static string Decode(string text)
    {
        if (!text.Contains(Escape, StringComparison.Ordinal))
            return text;
        var read = new StringBuilder(text.Length);
        for (var n = 0; n < text.Length; n++)
        {
            if (text[n] == Escape && n + 1 < text.Length)
                read.Append(text[++n] == Null ? '\0' : Escape);
            else
                read.Append(text[n]);
        }

        return read.ToString();
    }
}
