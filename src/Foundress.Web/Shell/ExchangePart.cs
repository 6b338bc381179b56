using Foundress.Web.Sync;
using Microsoft.AspNetCore.Components;

namespace Foundress.Web.Shell;

/// <summary>A part of the screen that says how things stand with the server, drawn again whenever that changes.</summary>
public abstract class ExchangePart : ComponentBase, IDisposable
{
    /// <summary>The exchange with the server.</summary>
    [Inject] protected Exchange Exchange { get; set; } = null!;

    /// <inheritdoc/>
    public void Dispose()
    {
        Exchange.Changed -= Redraw;
        GC.SuppressFinalize(this);
    }

    /// <inheritdoc/>
    protected override void OnInitialized() => Exchange.Changed += Redraw;

    private void Redraw() => _ = InvokeAsync(StateHasChanged);
}
