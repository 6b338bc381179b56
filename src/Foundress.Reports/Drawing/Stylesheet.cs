namespace Foundress.Reports.Drawing;

/// <summary>The style sheets that colour pictures and reports.</summary>
/// <remarks>
/// <c>strip.css</c> takes its theme from <c>data-theme</c> (light, dark or sun) on any element around a picture; without one
/// it follows the reader's system. Print is always dark on white and readable in greyscale.
/// </remarks>
public static class Stylesheet
{
    /// <summary>The style sheet of the pictures, the text of <c>Drawing/strip.css</c>.</summary>
    public static string Strip { get; } = Read("strip.css");

    /// <summary>The style sheet of the HTML report's page.</summary>
    internal static string Report { get; } = Read("report.css");

    /// <summary>The style sheet of the register, the text of <c>Registering/register.css</c>.</summary>
    public static string Register { get; } = Read("register.css");

    /// <summary>The style sheet of the labels, the text of <c>Labels/labels.css</c>.</summary>
    public static string Labels { get; } = Read("labels.css");

    private static string Read(string name)
    {
        using var stream = typeof(Stylesheet).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The library was built without its style sheet '{name}'.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
