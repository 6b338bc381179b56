using System.Globalization;
using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using Foundress.Book.Forecasts;
using Foundress.Book.Jobs;
using Foundress.Knowledge;
using Foundress.Web.Store;

namespace Foundress.Web.Background;

/// <summary>
/// Does jobs on the open book away from the page: in a worker that is started when it is first wanted, or between two frames
/// of the screen where no worker can run.
/// </summary>
/// <param name="session">The open book.</param>
[SupportedOSPlatform("browser")]
public sealed class BackgroundWork(BookSession session)
{
    // A worker that broke down once is started again; one that breaks down at every start is not.
    private const int MostFailures = 2;

    private readonly Dictionary<int, Action<JobStep>> _listeners = [];
    private readonly BroodSeasons _seasons = new(KnowledgeBase.Load());
    private int _last;
    private int _failures;
    private bool _listening;

    /// <summary>Why no worker can run here; null while one can, or none was wanted yet.</summary>
    public string? WhyOnPage { get; private set; }

    /// <summary>Where a job would be done now. Starts the worker when it does not run.</summary>
    public async Task<WorkPlace> PlaceAsync()
    {
        while (WhyOnPage is null)
        {
            try
            {
                if (!_listening)
                    WorkModule.Listen(Take);
                _listening = true;
                if (await WorkModule.Start(CultureInfo.CurrentCulture.Name) == ProgramBuild.Name)
                    return WorkPlace.Beside;
                WhyOnPage = WorkTexts.NewerOnItsWay;
            }
            catch (JSException error)
            {
                if (++_failures >= MostFailures)
                    WhyOnPage = InWords(error.Message);
            }
        }

        return WorkPlace.OnPage;
    }

    /// <summary>Does a job.</summary>
    /// <param name="job">Its name, one of <see cref="BookJobs"/>.</param>
    /// <param name="input">What is asked, in the job's own form.</param>
    /// <param name="progress">Told how far it is.</param>
    /// <param name="cancellation">Stops it at its next step.</param>
    /// <returns>The answer, in the job's own form.</returns>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    /// <exception cref="WorkException">It could not be done.</exception>
    public async Task<string> RunAsync(string job, string input, Action<JobStep>? progress, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        return await PlaceAsync() == WorkPlace.Beside
            ? await BesideAsync(job, input, progress, cancellation)
            : await OnPageAsync(job, input, progress, cancellation);
    }

    // js/work.js names the reasons it knows; the rest is the browser's own words.
    private static string InWords(string reason) => reason.Split(' ')[^1] switch
    {
        "no-workers" => WorkTexts.NoWorkers,
        "not-started-in-time" => WorkTexts.NotInTime,
        "not-allowed-or-not-found" => WorkTexts.NotAllowed,
        _ => reason,
    };

    private async Task<string> BesideAsync(string job, string input, Action<JobStep>? progress, CancellationToken cancellation)
    {
        var id = ++_last;
        if (progress is not null)
            _listeners[id] = progress;
        try
        {
            var answer = WorkModule.Run(id, job, session.Operation, session.Count, input);
            await using (cancellation.Register(() => WorkModule.Cancel(id)))
                return await answer;
        }
        catch (JSException error)
        {
            cancellation.ThrowIfCancellationRequested();
            throw new WorkException(WorkTexts.FormatNotWorkedOut(InWords(error.Message)), error);
        }
        finally
        {
            _listeners.Remove(id);
        }
    }

    private async Task<string> OnPageAsync(string job, string input, Action<JobStep>? progress, CancellationToken cancellation)
    {
        try
        {
            foreach (var step in BookJobs.Find(job).Run(new JobSetting(session.Ledger, _seasons, CultureInfo.CurrentCulture), input))
            {
                if (step.Output is { } output)
                    return output;
                progress?.Invoke(step);
                await Task.Delay(1, cancellation); // the screen gets its turn between two steps
            }
        }
        catch (ArgumentException error)
        {
            throw new WorkException(WorkTexts.FormatNotWorkedOut(InWords(error.Message)), error);
        }

        throw new WorkException(WorkTexts.FormatNoAnswer(job));
    }

    private void Take(int id, string step)
    {
        if (_listeners.TryGetValue(id, out var listener))
            listener(WorkJson.Read(step));
    }
}
