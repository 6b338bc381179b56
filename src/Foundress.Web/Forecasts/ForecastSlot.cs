using Foundress.Book.Journal;
using Foundress.Web.Store;

namespace Foundress.Web.Forecasts;

/// <summary>What the shelf knows of one apiary's forecast.</summary>
internal sealed class ForecastSlot(ApiaryId apiary)
{
    internal ApiaryId Apiary => apiary;

    /// <summary>The forecast that is there, perhaps an earlier one.</summary>
    internal KeptCourse? Kept { get; set; }

    /// <summary>Whether the device was asked for one.</summary>
    internal bool Looked { get; set; }

    /// <summary>How many parts of pages show it.</summary>
    internal int Wishes { get; set; }

    /// <summary>Number of the page that wished for it last: what is on the screen comes first.</summary>
    internal int Page { get; set; }

    /// <summary>Its place among the wishes of all pages: on one page the first come first.</summary>
    internal int Place { get; set; }

    /// <summary>The key whose forecast the keeper stopped, or that failed: it is not begun again by itself.</summary>
    internal string? Barred { get; set; }

    internal string? Problem { get; set; }

    internal bool Starting { get; set; }

    internal int Done { get; set; }

    internal int Of { get; set; }
}
