namespace Foundress.Book.Choosing;

/// <summary>Collects what is said of one control.</summary>
internal sealed class Reasons
{
    private readonly List<Reason> _against = [];
    private readonly List<Reason> _missing = [];
    private readonly List<string> _notes = [];

    internal IReadOnlyList<Reason> AgainstIt => _against;

    internal IReadOnlyList<Reason> MissingFirst => _missing;

    internal IReadOnlyList<string> Notes => _notes;

    internal void Against(Ground ground, string text, string? source = null) => _against.Add(new(ground, text, source));

    internal void Missing(Ground ground, string text, string? source = null, bool holds = false) => _missing.Add(new(ground, text, source, holds));

    internal void Note(string text) => _notes.Add(text);
}
