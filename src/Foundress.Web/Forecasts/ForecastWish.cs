using Foundress.Book.Journal;
using Microsoft.AspNetCore.Components;

namespace Foundress.Web.Forecasts;

/// <summary>A part of a page that shows forecasts: it wishes for them while it is shown, and is drawn again as they come.</summary>
public abstract class ForecastWish : ComponentBase, IDisposable
{
    private IDisposable? _wish;
    private IReadOnlyList<ApiaryId> _wished = [];

    /// <summary>The forecasts.</summary>
    [Inject]
    public ForecastShelf Forecasts { get; set; } = default!;

    /// <inheritdoc/>
    protected override void OnInitialized() => Forecasts.Changed += Redraw;

    /// <inheritdoc/>
    public void Dispose()
    {
        Forecasts.Changed -= Redraw;
        _wish?.Dispose();
        Leave();
        GC.SuppressFinalize(this);
    }

    /// <summary>Says which apiaries are shown, the most urgent first.</summary>
    protected void Wish(IReadOnlyList<ApiaryId> apiaries)
    {
        if (_wished.SequenceEqual(apiaries))
            return;
        var before = _wish;
        (_wished, _wish) = (apiaries, Forecasts.Wish(apiaries));
        before?.Dispose();
    }

    /// <summary>The part is no longer shown.</summary>
    protected virtual void Leave()
    {
    }

    /// <summary>Whether the part shows the forecast of an apiary: it is not drawn again for others.</summary>
    protected virtual bool Shows(ApiaryId apiary) => _wished.Contains(apiary);

    private void Redraw(ApiaryId? apiary)
    {
        if (apiary is not { } one || Shows(one))
            _ = InvokeAsync(StateHasChanged);
    }
}
