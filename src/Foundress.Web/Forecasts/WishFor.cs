using Foundress.Book.Journal;
using Microsoft.AspNetCore.Components;

namespace Foundress.Web.Forecasts;

/// <summary>Wishes for the forecasts of all apiaries of a page in one go, so that they come in the page's order. Shows nothing.</summary>
public sealed class WishFor : ForecastWish
{
    /// <summary>The apiaries, the most urgent first.</summary>
    [Parameter, EditorRequired]
    public IReadOnlyList<ApiaryId> Apiaries { get; set; } = [];

    /// <inheritdoc/>
    protected override void OnParametersSet() => Wish(Apiaries);

    /// <inheritdoc/>
    protected override bool ShouldRender() => false;
}
