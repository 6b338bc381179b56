using System.Globalization;
using Foundress.Web.Kit;
using Foundress.Web.Store;

namespace Foundress.Web.Pages.Jars;

/// <summary>How this device's keeper counted last: the next jar starts the same way.</summary>
/// <param name="store">This device's store.</param>
public sealed class JarMemory(IEntryStore store)
{
    private static readonly string[] Fields = ["method", "basis", "measure", "beeweight", "mg", "scooped"];

    /// <summary>What was chosen last, field by field; empty on a new device.</summary>
    /// <exception cref="StoreException">The device's store cannot be read.</exception>
    public async Task<Dictionary<string, string>> RecallAsync()
    {
        var texts = new Dictionary<string, string>();
        foreach (var field in Fields)
        {
            if (await store.GetAsync("jar:" + field) is { } text)
                texts[field] = field == "mg" ? Local(text) : text;
        }

        return texts;
    }

    /// <summary>Remembers what was chosen.</summary>
    /// <param name="form">The form that was kept.</param>
    /// <exception cref="StoreException">The device could not keep it.</exception>
    public async Task KeepAsync(FormReader form)
    {
        foreach (var field in Fields)
        {
            var text = field == "mg" ? form.Number(field, JarFields.Milligrams)?.ToString(CultureInfo.InvariantCulture) : form.Text(field);
            await store.SetAsync("jar:" + field, text);
        }
    }

    private static string Local(string stored) => double.TryParse(stored, CultureInfo.InvariantCulture, out var value)
        ? NumberText.Write(value, CultureInfo.CurrentCulture)
        : string.Empty;
}
