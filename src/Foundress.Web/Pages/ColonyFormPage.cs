using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Microsoft.AspNetCore.Components;

namespace Foundress.Web.Pages;

/// <summary>A page with a form about one colony.</summary>
public abstract class ColonyFormPage : BookPage
{
    /// <summary>Which colony.</summary>
    [Parameter]
    public Guid Id { get; set; }

    /// <summary>The colony, or null when the open book does not have it.</summary>
    protected Colony? Colony => Session.State.Colonies.GetValueOrDefault(new ColonyId(Id));

    /// <summary>The fields start with today.</summary>
    protected IReadOnlyDictionary<string, string> First => new Dictionary<string, string> { ["on"] = Say.IsoDay(Session.Today) };

    /// <summary>Writes the record when the form is in order.</summary>
    /// <param name="form">The form as read.</param>
    /// <param name="said">What is said once it is kept.</param>
    /// <param name="record">The record.</param>
    /// <returns>Where to go; null when the form is not in order.</returns>
    protected async Task<string?> KeepAsync(FormReader form, string said, Record record)
    {
        if (!form.Fine)
            return null;
        Undo.Offer(said, await Session.WriteAsync(record, form.Draft.Key));
        return $"colony/{Id}";
    }
}
