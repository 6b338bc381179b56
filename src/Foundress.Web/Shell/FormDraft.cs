using System.Text.Json;
using System.Text.Json.Serialization;
using Foundress.Web.Store;

namespace Foundress.Web.Shell;

/// <summary>
/// What was typed into one form, field by field, exactly as typed. It is saved on this device at every change, so that a
/// call, a flat battery or a reload costs nothing.
/// </summary>
public sealed partial class FormDraft : IDisposable
{
    private readonly IEntryStore _store;
    private readonly DirtyForms _forms;
    private readonly bool _follows;
    private Dictionary<string, string> _texts = [];
    private Dictionary<string, string> _first;
    private Task _save = Task.CompletedTask;
    private bool _saveAgain;
    private bool _left;

    private FormDraft(string key, IEntryStore store, DirtyForms forms, IReadOnlyDictionary<string, string>? first, bool follows)
    {
        (Key, _store, _forms, _follows, _first) = (key, store, forms, follows, new(first ?? new Dictionary<string, string>()));
        _texts = new(_first);
    }

    /// <summary>What it is kept under on this device.</summary>
    public string Key { get; }

    /// <summary>Whether the fields were filled from a draft of an earlier visit.</summary>
    public bool Restored { get; private set; }

    /// <summary>Why the draft could not be saved; null when it was.</summary>
    public string? Problem { get; private set; }

    /// <summary>Whether anything differs from what the form started with.</summary>
    public bool Dirty => _texts.Any(Differs);

    /// <summary>The text of a field; empty when nothing was typed.</summary>
    public string this[string field]
    {
        get => _texts.GetValueOrDefault(field, string.Empty);
        set
        {
            if (this[field] == value)
                return;
            _texts[field] = value;
            _ = SaveAsync();
        }
    }

    /// <summary>What a form's draft is kept under: those of different books never meet.</summary>
    /// <param name="operation">The open book.</param>
    /// <param name="form">Names the form and what it is about.</param>
    public static string KeyOf(string operation, string form) => $"{operation}/{form}";

    /// <summary>Opens the draft of a form.</summary>
    /// <param name="key">What it is kept under; see <see cref="KeyOf"/>.</param>
    /// <param name="store">This device's store.</param>
    /// <param name="forms">Where unsaved forms are noted.</param>
    /// <param name="first">What the fields start with when there is no draft.</param>
    /// <param name="follows">
    /// True for a form that changes what stands in the book: only what was typed is kept, and <see cref="Follow"/> brings the
    /// rest up to date. False for one that records something: the draft is all that was on the screen.
    /// </param>
    public static async Task<FormDraft> OpenAsync(string key, IEntryStore store, DirtyForms forms, IReadOnlyDictionary<string, string>? first = null, bool follows = false)
    {
        var draft = new FormDraft(key, store, forms, first, follows);
        if (await store.GetDraftAsync(key) is { } json && Read(json) is { } kept)
        {
            // A record's draft holds every field: what the book has come to offer since was not on the screen.
            if (!follows)
                draft._texts.Clear();
            foreach (var (field, text) in kept)
                draft._texts[field] = text;
            draft.Restored = draft.Dirty;
            draft.Note();
            draft.ForgetWhatStands(follows ? kept.Count : 0);
        }

        return draft;
    }

    /// <summary>The book has changed: fields that nobody has typed into take what it says now.</summary>
    public void Follow(IReadOnlyDictionary<string, string> first)
    {
        if (!_follows)
            return;
        var before = _texts.Count(Differs);
        foreach (var field in _first.Keys.Union(first.Keys).Where(field => !_texts.ContainsKey(field) || !Differs(new(field, _texts[field]))).ToList())
            _texts[field] = first.GetValueOrDefault(field, string.Empty);
        _first = new(first);
        Note();
        ForgetWhatStands(before);
    }

    /// <summary>Returns once everything typed so far is on the disk, or cannot be; see <see cref="Problem"/>.</summary>
    public Task SavedAsync() => _save;

    /// <summary>Forgets what was typed: it is in the book now, or not wanted. When this returns it is off the disk, or cannot be; see <see cref="Problem"/>.</summary>
    public Task DiscardAsync()
    {
        _texts = new(_first);
        Restored = false;
        return SaveAsync();
    }

    /// <summary>The form was left; its draft stays.</summary>
    public void Dispose()
    {
        _left = true;
        Note();
    }

    private static Dictionary<string, string>? Read(string json)
    {
        try
        {
            return JsonSerializer.Deserialize(json, DraftContext.Default.DictionaryStringString);
        }
        catch (JsonException)
        {
            return null; // a draft of another version's form: the form starts afresh
        }
    }

    private bool Differs(KeyValuePair<string, string> pair) => pair.Value != _first.GetValueOrDefault(pair.Key, string.Empty);

    // What was typed and stands in the book by now is no longer a change: kept on, it would take back what comes after.
    private void ForgetWhatStands(int before)
    {
        if (_texts.Count(Differs) < before)
            _ = SaveAsync();
    }

    // A form is noted until its draft is on the disk or off it, for without any noted form the page may be loaded again.
    private void Note()
    {
        if (Dirty && !_left)
            _forms.Add(this);
        else if (_save.IsCompleted)
            _forms.Remove(this);
    }

    private Task SaveAsync()
    {
        _saveAgain = true;
        if (_save.IsCompleted)
            _save = UntilSavedAsync();
        Note();
        return _save;
    }

    // One write at a time, the latest text last.
    private async Task UntilSavedAsync()
    {
        _forms.Add(this);
        while (_saveAgain)
        {
            // All that one tap changes goes in one write: half of it would be another form than anyone has seen.
            await Task.Yield();
            _saveAgain = false;
            try
            {
                var kept = _follows ? _texts.Where(Differs).ToDictionary() : _texts;
                await _store.SetDraftAsync(Key, Dirty ? JsonSerializer.Serialize(kept, DraftContext.Default.DictionaryStringString) : null);
                Problem = null;
            }
            catch (StoreException error)
            {
                Problem = error.Message;
            }
        }

        if (!Dirty || _left)
            _forms.Remove(this);
    }

    [JsonSerializable(typeof(Dictionary<string, string>))]
    private sealed partial class DraftContext : JsonSerializerContext;
}
