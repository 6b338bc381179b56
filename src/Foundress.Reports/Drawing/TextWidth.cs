namespace Foundress.Reports.Drawing;

/// <summary>
/// Estimates how wide a text will be. The reader's font is not known, so this is a cautious guess for common sans-serif
/// fonts, good enough to leave a label out rather than let it run into another.
/// </summary>
internal static class TextWidth
{
    /// <summary>Estimated width in the same units as the font size.</summary>
    public static double Of(string text, double size)
    {
        var ems = 0d;
        foreach (var c in text)
        {
            ems += c switch
            {
                'i' or 'j' or 'l' or '.' or ',' or ':' or ';' or '\'' or '|' or '!' => 0.33,
                ' ' or 'f' or 't' or 'r' or '(' or ')' or '-' => 0.4,
                'm' or 'w' or 'M' or 'W' or '%' => 0.92,
                >= 'A' and <= 'Z' => 0.7,
                < '\u2E80' => 0.6,
                _ => 1.05,
            };
        }

        return ems * size;
    }

    /// <summary>The text cut to a width, with an ellipsis when something was cut.</summary>
    public static string Fit(string text, double size, double width)
    {
        if (Of(text, size) <= width)
            return text;
        var end = text.Length;
        while (end > 0 && Of(text[..end], size) + size > width)
            end--;
        if (end > 0 && char.IsHighSurrogate(text[end - 1]))
            end--;
        return string.Concat(text.AsSpan(0, end), "…");
    }
}
