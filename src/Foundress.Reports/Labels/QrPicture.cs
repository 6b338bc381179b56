using System.Collections;
using System.Globalization;
using System.Text;
using QRCoder;

namespace Foundress.Reports.Labels;

/// <summary>Draws a QR code (ISO/IEC 18004) as SVG: error correction M, four modules of quiet zone, one path.</summary>
public static class QrPicture
{
    /// <summary>Longest address taken, in characters: beyond it the modules get too small for a label.</summary>
    public const int GreatestText = 300;

    /// <summary>The code as an SVG element that scales with its place.</summary>
    /// <param name="text">What it says, 1 to 300 characters.</param>
    /// <exception cref="ArgumentException">The text is empty or too long.</exception>
    public static string Draw(string text)
    {
        if (string.IsNullOrEmpty(text) || text.Length > GreatestText)
            throw new ArgumentException($"A label's address has 1 to {GreatestText} characters, not {text?.Length ?? 0}. Shorten it.", nameof(text));
        using var code = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var modules = code.ModuleMatrix;
        var path = new StringBuilder();
        for (var y = 0; y < modules.Count; y++)
            Row(path, modules[y], y);
        var size = modules.Count.ToString(CultureInfo.InvariantCulture);
        // The matrix has its quiet zone already.
        return $"<svg class=\"qr\" xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {size} {size}\" shape-rendering=\"crispEdges\" aria-hidden=\"true\"><rect width=\"{size}\" height=\"{size}\" fill=\"#fff\"/><path fill=\"#000\" d=\"{path}\"/></svg>";
    }

    private static void Row(StringBuilder path, BitArray row, int y)
    {
        for (var x = 0; x < row.Count; x++)
        {
            if (!row[x])
                continue;
            var from = x;
            while (x < row.Count && row[x])
                x++;
            path.Append(CultureInfo.InvariantCulture, $"M{from} {y}h{x - from}v1h-{x - from}z");
        }
    }
}
