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
    private readonly string _key;
    private readonly IEntryStore _store;
    private readonly DirtyForms _forms;
    private Dictionary<string, string> _texts = [];
    private Dictionary<string, string> _first = [];
    private bool _saving;
    private bool _saveAgain;

    private FormDraft(string key, IEntryStore store, DirtyForms forms) => (_key, _store, _forms) = (key, store, forms);

    /// <summary>Whether the fields were filled from a draft of an earlier visit.</summary>
    public bool Restored { get; private set; }

    /// <summary>Why the draft could not be saved; null when it was.</summary>
    public string? Problem { get; private set; }

    /// <summary>Whether anything differs from what the form started with.</summary>
    public bool Dirty => _texts.Any(pair => pair.Value != _first.GetValueOrDefault(pair.Key, string.Empty));

    /// <summary>The text of a field; empty when nothing was typed.</summary>
    public string this[string field]
    {
        get => _texts.GetValueOrDefault(field, string.Empty);
        set
        {
            if (this[field] == value)
                return;
            _texts[field] = value;
            if (Dirty)
                _forms.Add(_key);
            else
                _forms.Remove(_key);
            _ = SaveAsync();
        }
    }

    /// <summary>Opens the draft of a form.</summary>
    /// <param name="key">Names the form and what it is about.</param>
    /// <param name="store">This device's store.</param>
    /// <param name="forms">Where unsaved forms are noted.</param>
    /// <param name="first">What the fields start with when there is no draft.</param>
    public static async Task<FormDraft> OpenAsync(string key, IEntryStore store, DirtyForms forms, IReadOnlyDictionary<string, string>? first = null)
    {
        var draft = new FormDraft(key, store, forms) { _first = new(first ?? new Dictionary<string, string>()) };
        draft._texts = new(draft._first);
        if (await store.GetDraftAsync(key) is { } json && Read(json) is { } kept)
        {
            foreach (var (field, text) in kept)
                draft._texts[field] = text;
            draft.Restored = draft.Dirty;
            if (draft.Dirty)
                forms.Add(key);
        }

        return draft;
    }

    /// <summary>Forgets what was typed: it is in the book now, or not wanted.</summary>
    public async Task DiscardAsync()
    {
        _texts = new(_first);
        Restored = false;
        _forms.Remove(_key);
        await SaveAsync();
    }

    /// <summary>The form was left; its draft stays.</summary>
    public void Dispose() => _forms.Remove(_key);

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

    // One write at a time, the latest text last.
    private async Task SaveAsync()
    {
        _saveAgain = true;
        if (_saving)
            return;
        _saving = true;
        try
        {
            while (_saveAgain)
            {
                _saveAgain = false;
                await _store.SetDraftAsync(_key, Dirty ? JsonSerializer.Serialize(_texts, DraftContext.Default.DictionaryStringString) : null);
            }

            Problem = null;
        }
        catch (StoreException error)
        {
            Problem = error.Message;
        }
        finally
        {
            _saving = false;
        }
    }

    [JsonSerializable(typeof(Dictionary<string, string>))]
    private sealed partial class DraftContext : JsonSerializerContext;
}
