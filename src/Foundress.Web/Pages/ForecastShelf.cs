using System.Globalization;
using Foundress.Book.Forecasts;
using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Web.Store;

namespace Foundress.Web.Pages;

/// <summary>
/// Forecasts of the open book, worked out one colony at a time between two frames of the screen and kept until the book or
/// the day changes. Only one is worked out at a time; asking for another waits for its turn.
/// </summary>
/// <param name="session">The open book.</param>
public sealed class ForecastShelf(BookSession session) : IDisposable
{
    // A phone is slower than a laptop by half an order: fewer courses, the same fan within its own grain.
    private const int Particles = 400;

    // What is older than this says little of today that the counts since do not say better.
    private const int RecordDays = 270;

    private readonly SemaphoreSlim _turn = new(1);
    private readonly Dictionary<ApiaryId, ApiaryCourse> _courses = [];
    private readonly BroodSeasons _seasons = new(KnowledgeBase.Load());
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
        var forecaster = new ApiaryForecaster(session.State, KnowledgeBase.Load(), CultureInfo.CurrentCulture, _seasons);
        var options = new ForecastOptions { Particles = Particles, RecordDays = RecordDays, Suppose = suppose };
        foreach (var step in forecaster.Steps(apiary, session.Today, options))
        {
            if (step.Course is { } course)
                return course;
            progress?.Invoke(step);
            await Task.Delay(1, cancellation); // the screen gets its turn between two colonies
        }

        throw new InvalidOperationException("The forecast ended without a course.");
    }

    private void Fresh()
    {
        if (ReferenceEquals(_state, session.State) && _today == session.Today)
            return;
        (_state, _today) = (session.State, session.Today);
        _courses.Clear();
    }
}
