using System.Globalization;
using System.Numerics;
using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using Foundress.Book.Forecasts;
using Foundress.Book.Jobs;
using Foundress.Knowledge;
using Foundress.Web.Store;

namespace Foundress.Web.Background;

/// <summary>The worker's side: does jobs on the stored book when <c>js/reckoner.js</c> asks for them. Runs in a runtime of its own, never in the page's.</summary>
[SupportedOSPlatform("browser")]
internal static partial class Reckoner
{
    // Between two steps the worker looks for news from the page, but not more often than this: a look costs some milliseconds.
    private static readonly TimeSpan Breath = TimeSpan.FromMilliseconds(40);

    private static readonly Dictionary<int, CancellationTokenSource> Running = [];
    private static readonly StoredBook Book = new(new BrowserEntryStore());
    private static readonly SemaphoreSlim Reading = new(1);
    private static readonly BroodSeasons Seasons = new(KnowledgeBase.Load());

    // Jobs that somebody waits for: the others stand back.
    private static int _waitedFor;

    /// <summary>The name of the build, for the page to see that it is its own.</summary>
    [JSExport]
    internal static string Build() => ProgramBuild.Name;

    /// <summary>How the inner loop is worked here, for tests and for the bench: lanes of its vectors, and whether the processor works them.</summary>
    [JSExport]
    internal static string Vectors() => $"{Vector<float>.Count} {(Vector.IsHardwareAccelerated ? "by the processor" : "one by one")}";

    /// <summary>Does a job.</summary>
    /// <returns>The answer; null when it was stopped, or refused with a reason.</returns>
    [JSExport]
    [return: JSMarshalAs<JSType.Promise<JSType.String>>]
    internal static async Task<string?> RunAsync(int id, string name, string operation, int entries, string input)
    {
        using var stop = new CancellationTokenSource();
        Running[id] = stop;
        var first = false;
        try
        {
            var setting = await SettingAsync(operation, entries, stop.Token);
            var looked = TimeProvider.System.GetTimestamp();
            var job = BookJobs.Find(name);
            if (job.ComesFirst)
                _waitedFor++;
            first = job.ComesFirst;
            foreach (var step in job.Run(setting, input))
            {
                if (step.Output is { } output)
                    return output;
                if (TimeProvider.System.GetElapsedTime(looked) < Breath && step.Note is null)
                    continue;
                Step(id, WorkJson.Write(step));
                do
                    await Task.Delay(first ? 1 : 5, stop.Token);
                while (!first && _waitedFor > 0);
                looked = TimeProvider.System.GetTimestamp();
            }

            throw new InvalidOperationException($"The job '{name}' ended without an answer.");
        }
        catch (OperationCanceledException)
        {
            return null;
        }
        catch (Exception error) when (error is ArgumentException or StoreException)
        {
            Refuse(id, error.Message);
            return null;
        }
        finally
        {
            Running.Remove(id);
            if (first)
                _waitedFor--;
        }
    }

    /// <summary>Stops a job at its next step.</summary>
    /// <returns>False when it has ended already.</returns>
    [JSExport]
    internal static bool Cancel(int id)
    {
        if (!Running.TryGetValue(id, out var stop))
            return false;
        stop.Cancel();
        return true;
    }

    private static async Task<JobSetting> SettingAsync(string operation, int entries, CancellationToken stop)
    {
        await Reading.WaitAsync(stop);
        try
        {
            return new JobSetting(await Book.ReadAsync(operation, entries), Seasons, CultureInfo.CurrentCulture);
        }
        finally
        {
            Reading.Release();
        }
    }

    [JSImport("step", "reckoner")]
    private static partial void Step(int id, string step);

    [JSImport("refuse", "reckoner")]
    private static partial void Refuse(int id, string reason);
}
