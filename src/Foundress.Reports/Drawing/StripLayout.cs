namespace Foundress.Reports.Drawing;

/// <summary>
/// Where the lanes of a strip lie, from the top: header, due dates, the plot, the months, counts on other scales
/// where there are any, the season's ribbon. Controls, where there are any, stand in rows under the due dates.
/// </summary>
/// <param name="Width">Width of the picture.</param>
/// <param name="Height">Height of the picture.</param>
/// <param name="Left">Left edge of the plot.</param>
/// <param name="Right">Right edge of the plot.</param>
/// <param name="Font">Size of the text.</param>
/// <param name="DueMiddle">Middle of the due lane.</param>
/// <param name="PlotTop">Top of the plot.</param>
/// <param name="PlotBottom">Bottom of the plot, where level 0 stands.</param>
/// <param name="RibbonTop">Top of the season's ribbon.</param>
/// <param name="RibbonBottom">Bottom of the season's ribbon.</param>
/// <param name="Mark">Half the size of a mark.</param>
/// <param name="ControlsTop">Top of the controls' rows, where there are any.</param>
internal sealed record StripLayout(
    double Width,
    double Height,
    double Left,
    double Right,
    double Font,
    double DueMiddle,
    double PlotTop,
    double PlotBottom,
    double RibbonTop,
    double RibbonBottom,
    double Mark,
    double ControlsTop = 0)
{
    // Above the highest level: room for clipped marks.
    private const double Headroom = 16;

    /// <summary>The scale of the plot's levels.</summary>
    public LevelScale Levels => new(PlotBottom, PlotTop + Headroom);

    /// <summary>Baseline of the month names.</summary>
    public double MonthLine => PlotBottom + Font + 3;

    /// <summary>Height of the lane for counts on other scales.</summary>
    private double Lane => Font + 8;

    /// <summary>Middle of the lane for counts on other scales, when there is one: between the months and the ribbon.</summary>
    public double OthersMiddle => RibbonTop - (Lane / 2);

    /// <summary>Height of a row of controls.</summary>
    public double ControlRow => Font + 8;

    /// <summary>The same layout with room for rows of controls.</summary>
    public StripLayout WithControls(int rows)
    {
        var more = rows * ControlRow;
        return this with
        {
            Height = Height + more,
            PlotTop = PlotTop + more,
            PlotBottom = PlotBottom + more,
            RibbonTop = RibbonTop + more,
            RibbonBottom = RibbonBottom + more,
            ControlsTop = PlotTop,
        };
    }

    /// <summary>The same layout with room for counts on other scales.</summary>
    public StripLayout WithOthers() => this with { Height = Height + Lane, RibbonTop = RibbonTop + Lane, RibbonBottom = RibbonBottom + Lane };

    /// <summary>The layout of a shape.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The shape is not known.</exception>
    public static StripLayout Of(DrawingShape shape) => shape switch
    {
        DrawingShape.Wide => new(1000, 250, 32, 994, 14, 31, 46, 206, 224, 248, 4.6),
        DrawingShape.Narrow => new(360, 244, 24, 356, 12, 27, 39, 203, 220, 242, 3.9),
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "A picture is wide or narrow."),
    };
}
