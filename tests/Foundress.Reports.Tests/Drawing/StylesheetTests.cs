using System.Globalization;
using Foundress.Reports.Drawing;

namespace Foundress.Reports.Tests.Drawing;

/// <summary>Contrast after WCAG 2.2 (W3C Recommendation): relative luminance and ratio, 4.5 for text and 3 for graphics; 7 in sun.</summary>
public sealed class StylesheetTests
{
    private static readonly string[] Texts = ["ink", "quiet"];
    private static readonly string[] Graphics = ["below", "unclear", "above", "other", "line", "base", "ribbon-edge"];
    private static readonly string[] Tints = ["ground", "ahead", "zone", "ribbon"];

    public static TheoryData<string, double, double> Themes => new()
    {
        { "[data-theme=\"light\"] {", 4.5, 3 },
        { ":root:not([data-theme]) {", 4.5, 3 },
        { "[data-theme=\"dark\"] {", 4.5, 3 },
        { "[data-theme=\"sun\"] {", 7, 7 },
        { "  [data-theme] {", 7, 4.5 },
    };

    [Theory]
    [MemberData(nameof(Themes))]
    public void Strip_EachTheme_HasEnoughContrast(string selector, double text, double graphics)
    {
        var tokens = Tokens(selector);
        foreach (var tint in Tints)
        {
            foreach (var name in Texts)
                Assert.True(Ratio(tokens[name], tokens[tint]) >= text, $"{name} on {tint}: {Ratio(tokens[name], tokens[tint]):0.00}");
        }

        foreach (var name in Graphics)
        {
            // Marks stand on the ground, on the days ahead and on the zone between the lines.
            foreach (var tint in Tints[..3])
            {
                var least = tint == "ground" ? graphics : Math.Min(graphics, 3);
                Assert.True(Ratio(tokens[name], tokens[tint]) >= least, $"{name} on {tint}: {Ratio(tokens[name], tokens[tint]):0.00}");
            }
        }
    }

    [Fact]
    public void Strip_DarkBySystemAndByChoice_AreTheSame() =>
        Assert.Equal(Tokens(":root:not([data-theme]) {"), Tokens("[data-theme=\"dark\"] {"));

    [Fact]
    public void Ratio_BlackOnWhite_IsTwentyOne() => Assert.Equal(21, Ratio("#000000", "#ffffff"), 6);

    [Fact]
    public void Strip_EveryClassThatIsDrawn_HasAStyle()
    {
        var svg = SeasonStripDrawing.Draw(Support.Invented.Orchard(), "s", DrawingShape.Wide, CultureInfo.InvariantCulture);
        var painted = Support.SvgReader.Parse(svg).Descendants()
            .Where(element => element.Name.LocalName is "path" or "line" or "rect" or "circle" or "text")
            .SelectMany(element => ((string)element.Attribute("class")!).Split(' ')).Distinct();
        Assert.All(painted, name => Assert.Contains("." + name, Stylesheet.Strip, StringComparison.Ordinal));
    }

    private static Dictionary<string, string> Tokens(string selector)
    {
        var css = Stylesheet.Strip;
        var start = css.IndexOf(selector, StringComparison.Ordinal);
        Assert.True(start >= 0, $"No block '{selector}'.");
        var tokens = new Dictionary<string, string>();
        foreach (var line in css[(start + selector.Length)..css.IndexOf('}', start)].Split('\n'))
        {
            var parts = line.Trim().TrimEnd(';').Split(':');
            if (parts.Length == 2 && parts[0].StartsWith("--fd-", StringComparison.Ordinal))
                tokens[parts[0][5..]] = parts[1].Trim();
        }

        return tokens;
    }

    private static double Ratio(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string colour)
    {
        double Channel(int at)
        {
            var value = int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255d;
            return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
        }

        return 0.2126 * Channel(1) + 0.7152 * Channel(3) + 0.0722 * Channel(5);
    }
}
