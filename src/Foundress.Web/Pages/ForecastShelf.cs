using Foundress.Book.Forecasts;
using Foundress.Book.Forecasts.Exchange;
using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Web.Background;
using Foundress.Web.Store;

namespace Foundress.Web.Pages;

/// <summary>
/// Forecasts of the open book, worked out one colony at a time between two frames of the screen and kept until the book or
/// the day changes. Only one is worked out at a time; asking for another waits for its turn.
/// </summary>
/// <param name="session">The open book.</param>
/// <param name="work">Where they are worked out.</param>
public sealed class ForecastShelf(BookSession session, BackgroundWork work) : IDisposable
{
    private const int Particles = 2000;
    private const int RecordDays = 365;

    // On the page's own thread every colony holds up the screen: fewer courses, the same fan within its own grain.
    private const int ParticlesOnPage = 400;

    // What is older than this says little of today that the counts since do not say better.
    private const int RecordDaysOnPage = 270;

    private readonly SemaphoreSlim _turn = new(1);
    private readonly Dictionary<ApiaryId, ApiaryCourse> _courses = [];
    private BookState? _state;
    private DateOnly _today;

    /// <summary>
    /// Whether the keeper has asked for forecasts since the program was opened: from then on pages work them out by
    /// themselves. Before that they wait for a press, because a phone is busy with one for some seconds.
    /// </summary>
    public bool Wanted { get; set; }

    /// <summary>A forecast that is there already; null when it was not asked for yet, or the book has changed since.</summary>
    public ApiaryCourse? Ready(ApiaryId apiary)
    {
        Fresh();
        return _courses.GetValueOrDefault(apiary);
    }

    /// <summary>Works out where an apiary is heading.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="progress">Told how far it is.</param>
    /// <param name="cancellation">Stops it between two colonies.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public async Task<ApiaryCourse> OfAsync(Apiary apiary, Action<ForecastStep>? progress, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(apiary);
        await _turn.WaitAsync(cancellation);
        try
        {
            if (Ready(apiary.Id) is { } ready)
                return ready;
            var course = await WorkAsync(apiary, null, progress, cancellation);
            _courses[apiary.Id] = course;
            return course;
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>Works out what a control would change in an apiary. Not kept.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="suppose">The control.</param>
    /// <param name="progress">Told how far it is.</param>
    /// <param name="cancellation">Stops it between two colonies.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public async Task<ApiaryCourse> SupposeAsync(Apiary apiary, Supposition suppose, Action<ForecastStep>? progress, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(apiary);
        await _turn.WaitAsync(cancellation);
        try
        {
            return await WorkAsync(apiary, suppose, progress, cancellation);
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _turn.Dispose();

    private async Task<ApiaryCourse> WorkAsync(Apiary apiary, Supposition? suppose, Action<ForecastStep>? progress, CancellationToken cancellation)
    {
        var place = await work.PlaceAsync();
        var request = new ForecastRequest(
            apiary.Id, session.Today, place == WorkPlace.Beside ? Particles : ParticlesOnPage, place == WorkPlace.Beside ? RecordDays : RecordDaysOnPage,
            Agent: suppose?.Agent.Id, From: suppose?.On);
        var answer = await work.RunAsync(ForecastJob.Called, ForecastJson.Write(request), step => progress?.Invoke(new ForecastStep(step.Done, step.Of, null)), cancellation);
        return ForecastJson.ReadCourse(answer);
    }

    private void Fresh()
    {
        if (ReferenceEquals(_state, session.State) && _today == session.Today)
            return;
        (_state, _today) = (session.State, session.Today);
        _courses.Clear();
    }
}
