using Foundress.Book.Records;
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

    /// <summary>Ends the name of a form whose fields hold measures: a number typed in one system of units must not come back in the other.</summary>
    protected string InUnits => Session.State.Policy.Units == UnitSystem.UsCustomary ? ":us" : string.Empty;

    /// <summary>Whether the page was left; what was being loaded for it is then of no use.</summary>
    protected bool HasLeft { get; private set; }

    /// <inheritdoc/>
    protected override void OnInitialized() => Session.Changed += Redraw;

    /// <inheritdoc/>
    public void Dispose()
    {
        Session.Changed -= Redraw;
        HasLeft = true;
        Leave();
        GC.SuppressFinalize(this);
    }

    /// <summary>The page is left.</summary>
    protected virtual void Leave()
    {
    }

    private void Redraw() => _ = InvokeAsync(StateHasChanged);
}
