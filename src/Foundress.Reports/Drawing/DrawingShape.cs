namespace Foundress.Reports.Drawing;

/// <summary>For which paper or screen a picture is drawn.</summary>
public enum DrawingShape
{
    /// <summary>For a laptop or print: 1000 units wide, text 13 to 14 units.</summary>
    Wide,

    /// <summary>For a phone: 360 units wide, text at least 12 units, so that it is readable at 360 CSS pixels.</summary>
    Narrow,
}
