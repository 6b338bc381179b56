using System.Globalization;
using Foundress.Book.Controls;
using Foundress.Book.Dues;
using Foundress.Book.Journal;
using Foundress.Book.Proving;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Web.Store;

namespace Foundress.Web.Pages.Controls;

/// <summary>Controls, their proofs and what is due, worked out from the open book and kept until the book or the day changes.</summary>
/// <param name="session">The open book.</param>
/// <param name="seasons">Reads the jars of the same book.</param>
public sealed class ControlShelf(BookSession session, SeasonShelf seasons)
{
    private readonly Dictionary<ControlId, ControlProof> _proofs = [];
    private readonly HashSet<ControlId> _asked = [];
    private BookState? _state;
    private DateOnly _today;
    private ControlList? _list;
    private ControlProofs? _reader;
    private IReadOnlyList<DueItem>? _dues;

    /// <summary>The controls the operation reckons with.</summary>
    public ControlList List => Fresh()._list!;

    /// <summary>What is due over all apiaries.</summary>
    public IReadOnlyList<DueItem> Dues => Fresh()._dues ??= new DueItems(session.State, KnowledgeBase.Load(), seasons.Reader).On(session.Today, seasons.Seasons);

    /// <summary>Whether a use worked.</summary>
    public ControlProof Proof(Control control)
    {
        Fresh();
        if (!_proofs.TryGetValue(control.Id, out var proof))
            _proofs[control.Id] = proof = _reader!.Of(control);
        return proof;
    }

    /// <summary>Whether the forecast could still take out of a proof what would have been without the control, and has not been asked.</summary>
    public bool WantsGrowth(Control control) =>
        Proof(control) is { Correction: Correction.None } proof && proof.Colonies.Any(colony => colony.Why is null) && !_asked.Contains(control.Id);

    /// <summary>Takes out of a proof what the forecast says would have been without the control; nothing changes where it can say nothing.</summary>
    public void Correct(Control control, GrowthForecast? growth)
    {
        Fresh();
        _asked.Add(control.Id);
        if (growth is not null)
            _proofs[control.Id] = new ControlProofs(_state!, KnowledgeBase.Load(), _today, CultureInfo.CurrentCulture, _ => growth).Of(control);
    }

    private ControlShelf Fresh()
    {
        if (_reader is not null && ReferenceEquals(_state, session.State) && _today == session.Today)
            return this;
        (_state, _today, _dues) = (session.State, session.Today, null);
        _proofs.Clear();
        _asked.Clear();
        _list = ControlList.Of(_state, KnowledgeBase.Load());
        _reader = new ControlProofs(_state, KnowledgeBase.Load(), _today, CultureInfo.CurrentCulture);
        return this;
    }
}
