namespace Foundress.Web.Shell;

/// <summary>Which forms hold something that is not in the book yet: the page is never loaded again under them.</summary>
public sealed class DirtyForms
{
    private readonly HashSet<string> _forms = [];

    /// <summary>Told when the last form has become clean.</summary>
    public event Action? AllClean;

    /// <summary>Whether any form holds something.</summary>
    public bool Any => _forms.Count > 0;

    /// <summary>Notes that a form holds something that is not in the book yet.</summary>
    public void Add(string form) => _forms.Add(form);

    /// <summary>Notes that a form was kept, emptied or left.</summary>
    public void Remove(string form)
    {
        if (_forms.Remove(form) && !Any)
            AllClean?.Invoke();
    }
}
