using System.Globalization;
using Foundress.Book.Forecasts;
using Foundress.Book.Seasons;
using Foundress.Reports.Drawing;

namespace Foundress.Web.Pages;

/// <summary>A strip with its drawings, each made when it is first shown.</summary>
/// <param name="strip">The strip.</param>
/// <param name="id">Its id on the page.</param>
public sealed class DrawnStrip(SeasonStrip strip, string id)
{
    private string? _narrow;
    private string? _wide;
    private IReadOnlyList<StripRow>? _rows;

    /// <summary>The strip.</summary>
    public SeasonStrip Strip => strip;

    /// <summary>The same strip with a forecast.</summary>
    public DrawnStrip With(IReadOnlyList<FanPoint> fan) => new(strip with { Fan = fan }, id + "f");

    /// <summary>Its drawing for a phone.</summary>
    public string Narrow => _narrow ??= SeasonStripDrawing.Draw(strip, id + "n", DrawingShape.Narrow, CultureInfo.CurrentCulture);

    /// <summary>Its drawing for a laptop.</summary>
    public string Wide => _wide ??= SeasonStripDrawing.Draw(strip, id + "w", DrawingShape.Wide, CultureInfo.CurrentCulture);

    /// <summary>Its content as rows.</summary>
    public IReadOnlyList<StripRow> Rows => _rows ??= SeasonStripTable.Rows(strip, CultureInfo.CurrentCulture);
}
