using System.Text;

namespace Foundress.Reports.Drawing;

/// <summary>Makes any text safe inside XML and HTML, in elements and in quoted attributes.</summary>
internal static class Markup
{
    /// <summary>The text escaped.</summary>
    public static string Escape(string text)
    {
        var result = new StringBuilder(text.Length + 8);
        Escape(result, text);
        return result.ToString();
    }

    /// <summary>Appends the text escaped. Characters that XML cannot carry become U+FFFD.</summary>
    public static void Escape(StringBuilder result, string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            switch (c)
            {
                case '&':
                    result.Append("&amp;");
                    break;
                case '<':
                    result.Append("&lt;");
                    break;
                case '>':
                    result.Append("&gt;");
                    break;
                case '"':
                    result.Append("&quot;");
                    break;
                case '\'':
                    result.Append("&#39;");
                    break;
                case '\r' or '\n' or '\t':
                    result.Append(' ');
                    break;
                default:
                    if (char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
                        result.Append(c).Append(text[++i]);
                    else if (c < ' ' || char.IsSurrogate(c) || c is '\uFFFE' or '\uFFFF')
                        result.Append('\uFFFD');
                    else
                        result.Append(c);
                    break;
            }
        }
    }
}
