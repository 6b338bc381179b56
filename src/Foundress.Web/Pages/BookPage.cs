using Foundress.Web.Shell;
using Foundress.Web.Store;
using Microsoft.AspNetCore.Components;

namespace Foundress.Web.Pages;

/// <summary>A page that shows the open book, and is drawn again when it changes.</summary>
public abstract class BookPage : ComponentBase, IDisposable
{
    /// <summary>The open book.</summary>
    [Inject]
    public BookSession Session { get; set; } = default!;

    /// <summary>What can be taken back.</summary>
    [Inject]
    public UndoList Undo { get; set; } = default!;

    /// <inheritdoc/>
    protected override void OnInitialized() => Session.Changed += Redraw;

    /// <inheritdoc/>
    public void Dispose()
    {
        Session.Changed -= Redraw;
        Leave();
        GC.SuppressFinalize(this);
    }

    /// <summary>The page is left.</summary>
    protected virtual void Leave()
    {
    }

    private void Redraw() => _ = InvokeAsync(StateHasChanged);
}
