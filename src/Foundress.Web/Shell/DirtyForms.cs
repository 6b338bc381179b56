namespace Foundress.Web.Shell;

/// <summary>Which forms hold something that is not in the book yet: the page is never loaded again under them.</summary>
public sealed class DirtyForms
{
    private readonly HashSet<object> _forms = [];

    /// <summary>Told when the first form has become dirty, and when the last one has become clean.</summary>
    public event Action? Changed;

    /// <summary>Whether any form holds something.</summary>
    public bool Any => _forms.Count > 0;

    /// <summary>Notes that a form holds something that is not in the book yet.</summary>
    public void Add(object form)
    {
        if (_forms.Add(form) && _forms.Count == 1)
            Changed?.Invoke();
    }

    /// <summary>Notes that a form was kept, emptied or left.</summary>
    public void Remove(object form)
    {
        if (_forms.Remove(form) && !Any)
            Changed?.Invoke();
    }
}
