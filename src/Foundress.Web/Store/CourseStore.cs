using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using Foundress.Book.Forecasts.Exchange;
using Foundress.Book.Journal;

namespace Foundress.Web.Store;

/// <summary>Forecasts kept on this device, each with the key of what went into it.</summary>
/// <remarks>
/// A convenience and nothing more: where the device cannot keep or read one, it is worked out again. So no failure of the
/// device is reported from here; the journal's own store, which must not fail, reports it.
/// </remarks>
[SupportedOSPlatform("browser")]
public static class CourseStore
{
    /// <summary>The forecast kept for an apiary; null when there is none that can be read.</summary>
    public static async Task<KeptCourse?> ReadAsync(string operation, ApiaryId apiary)
    {
        try
        {
            if (await CourseModule.Get(operation, apiary.ToString()) is not { } text || text.IndexOf('\n', StringComparison.Ordinal) is not (> 0 and var end))
                return null;
            return new KeptCourse(text[..end], ForecastJson.ReadCourse(text[(end + 1)..]));
        }
        catch (Exception error) when (error is JSException or ArgumentException)
        {
            return null;
        }
    }

    /// <summary>Keeps a forecast in place of the one before.</summary>
    /// <param name="operation">The operation.</param>
    /// <param name="apiary">The apiary.</param>
    /// <param name="key">The key of what went into it.</param>
    /// <param name="text">The forecast as <see cref="ForecastJson"/> wrote it.</param>
    public static async Task KeepAsync(string operation, ApiaryId apiary, string key, string text)
    {
        try
        {
            await CourseModule.Put(operation, apiary.ToString(), $"{key}\n{text}");
        }
        catch (JSException)
        {
            return;
        }
    }

    /// <summary>Forgets every forecast of an operation.</summary>
    public static async Task ForgetAsync(string operation)
    {
        try
        {
            await CourseModule.Forget(operation);
        }
        catch (JSException)
        {
            return;
        }
    }
}
