using System.Globalization;
using System.Xml.Linq;

namespace Foundress.Reports.Tests.Support;

/// <summary>Reads a picture back with an XML parser that knows nothing of how it was written.</summary>
internal static class SvgReader
{
    private static readonly string[] Places = ["x", "y", "x1", "y1", "x2", "y2", "cx", "cy"];

    public static XElement Parse(string svg) => XDocument.Parse(svg).Root!;

    public static IEnumerable<XElement> OfClass(this XElement root, string name) =>
        root.Descendants().Where(element => (" " + (string?)element.Attribute("class") + " ").Contains($" {name} ", StringComparison.Ordinal));

    /// <summary>What a strict page would refuse or a picture must not hold.</summary>
    public static void AssertSafe(XElement root)
    {
        foreach (var element in root.DescendantsAndSelf())
        {
            Assert.DoesNotContain(element.Name.LocalName, (string[])["style", "script", "foreignObject", "image", "use"]);
            foreach (var attribute in element.Attributes())
            {
                Assert.NotEqual("style", attribute.Name.LocalName);
                Assert.False(attribute.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase), attribute.ToString());
            }
        }

        var ids = root.DescendantsAndSelf().Select(element => (string?)element.Attribute("id")).Where(id => id is not null).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
        Assert.Equal("img", (string?)root.Attribute("role"));
        Assert.Contains((string?)root.Attribute("aria-labelledby"), ids);
        Assert.Contains((string?)root.Attribute("aria-describedby"), ids);
    }

    /// <summary>Every coordinate lies within the picture.</summary>
    public static void AssertInside(XElement root)
    {
        var box = ((string)root.Attribute("viewBox")!).Split(' ').Select(Number).ToArray();
        foreach (var element in root.Descendants().Where(element => element.Ancestors().All(above => above.Name.LocalName != "pattern")))
        {
            foreach (var name in Places)
            {
                if ((string?)element.Attribute(name) is { } value)
                    AssertWithin(Number(value), name.Contains('x') ? box[2] : box[3], element);
            }

            if (element.Name.LocalName == "rect")
            {
                AssertWithin(Number((string)element.Attribute("x")!) + Number((string)element.Attribute("width")!), box[2], element);
                AssertWithin(Number((string)element.Attribute("y")!) + Number((string)element.Attribute("height")!), box[3], element);
            }

            if ((string?)element.Attribute("d") is { } path)
            {
                foreach (var (x, y) in PathPoints(path))
                {
                    AssertWithin(x, box[2], element);
                    AssertWithin(y, box[3], element);
                }
            }
        }
    }

    private static IEnumerable<(double X, double Y)> PathPoints(string path)
    {
        foreach (var part in path.Replace("M", "|", StringComparison.Ordinal).Replace("L", "|", StringComparison.Ordinal).Replace("A", "|", StringComparison.Ordinal).Replace("Z", "", StringComparison.Ordinal)
            .Split('|', StringSplitOptions.RemoveEmptyEntries))
        {
            var numbers = part.Split(' ').Select(Number).ToArray();
            yield return (numbers[^2], numbers[^1]);
        }
    }

    public static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static void AssertWithin(double value, double most, XElement element) =>
        Assert.True(value >= -0.1 && value <= most + 0.1, $"{value} lies outside 0 to {most}: {element}");
}
