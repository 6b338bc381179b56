using System.Globalization;
using System.Runtime.Versioning;
using Foundress.Book.Forecasts;
using Foundress.Book.Forecasts.Exchange;
using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Web.Background;
using Foundress.Web.Store;
using Microsoft.AspNetCore.Components;

namespace Foundress.Web.Forecasts;

/// <summary>
/// Forecasts of the open book. A part of a page says which apiaries it shows; their forecasts are then taken from the device
/// or worked out beside the page, those on the screen first, one after the other, and are renewed when the book changes.
/// </summary>
[SupportedOSPlatform("browser")]
public sealed class ForecastShelf : IDisposable
{
    private const int Particles = 2000;
    private const int RecordDays = 365;

    // On the page's own thread every colony holds up the screen: fewer courses, the same fan within its own grain.
    private const int ParticlesOnPage = 400;

    // What is older than this says little of today that the counts since do not say better.
    private const int RecordDaysOnPage = 270;

    // The page is drawn and can be used before anything else is begun.
    private static readonly TimeSpan Ahead = TimeSpan.FromMilliseconds(300);

    private readonly BookSession _session;
    private readonly BackgroundWork _work;
    private readonly NavigationManager _navigation;
    private readonly Dictionary<ApiaryId, ForecastSlot> _slots = [];
    private readonly Dictionary<ApiaryId, string> _keys = [];
    private ForecastKeys? _keysOfBook;
    private BookState? _state;
    private DateOnly _today;
    private string _operation = string.Empty;
    private (ForecastSlot Slot, string Key, CancellationTokenSource Stop)? _running;
    private string? _address;
    private int _page;
    private int _place;
    private bool _asked;
    private bool _busy;

    /// <summary>A shelf for the open book.</summary>
    /// <param name="session">The open book.</param>
    /// <param name="work">Where forecasts are worked out.</param>
    /// <param name="navigation">Which page is shown.</param>
    public ForecastShelf(BookSession session, BackgroundWork work, NavigationManager navigation)
    {
        (_session, _work, _navigation) = (session, work, navigation);
        session.Changed += BookChanged;
    }

    /// <summary>Told after the forecast of an apiary has changed or moved on; with null when that of any may have.</summary>
    public event Action<ApiaryId?>? Changed;

    /// <summary>Why forecasts hold up the page here; null where they do not.</summary>
    public string? WhyOnPage => _work.WhyOnPage;

    /// <summary>The forecast of an apiary as it can be shown now.</summary>
    public ForecastView Of(ApiaryId apiary)
    {
        if (Fresh())
            _ = PumpAsync();
        if (!_slots.TryGetValue(apiary, out var slot))
            return new ForecastView(ForecastStage.Idle, null);
        return new ForecastView(StageOf(slot), slot.Kept?.Course, slot.Done, slot.Of, slot.Problem);
    }

    /// <summary>Says that the forecasts of apiaries are shown: they come by themselves and are kept up until the wish is disposed of.</summary>
    /// <param name="apiaries">The apiaries, the most urgent first.</param>
    public IDisposable Wish(params IReadOnlyList<ApiaryId> apiaries)
    {
        ArgumentNullException.ThrowIfNull(apiaries);
        if (_address != _navigation.Uri)
            (_address, _page) = (_navigation.Uri, _page + 1);
        foreach (var apiary in apiaries)
        {
            var slot = SlotOf(apiary);
            slot.Wishes++;
            (slot.Page, slot.Place) = (_page, ++_place);
        }

        Rearrange();
        return new Wished(this, [.. apiaries]);
    }

    /// <summary>Stops the forecasts of apiaries. They are not begun again before the book changes or the keeper asks.</summary>
    public void Stop(params IReadOnlyList<ApiaryId> apiaries)
    {
        ArgumentNullException.ThrowIfNull(apiaries);
        foreach (var apiary in apiaries)
        {
            var slot = SlotOf(apiary);
            if (!IsReady(slot))
                slot.Barred = KeyOf(apiary);
        }

        Rearrange();
        Changed?.Invoke(null);
    }

    /// <summary>Begins the forecasts of apiaries that were stopped, had failed, or wait to be asked for.</summary>
    public void Ask(params IReadOnlyList<ApiaryId> apiaries)
    {
        ArgumentNullException.ThrowIfNull(apiaries);
        _asked = true;
        foreach (var apiary in apiaries)
        {
            var slot = SlotOf(apiary);
            (slot.Barred, slot.Problem) = (null, null);
        }

        Rearrange();
        Changed?.Invoke(null);
    }

    /// <summary>Works out what a control would change for a colony. Not kept.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="colony">Its colony.</param>
    /// <param name="suppose">The control.</param>
    /// <param name="progress">Told how far it is.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    /// <exception cref="WorkException">It could not be worked out.</exception>
    public async Task<ApiaryCourse> SupposeAsync(ApiaryId apiary, ColonyId colony, Supposition suppose, Action<int, int>? progress, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(suppose);
        var place = await _work.PlaceAsync();
        var request = Request(apiary, place) with { Only = colony, Agent = suppose.Agent.Id, From = suppose.On };
        return ForecastJson.ReadCourse(await _work.RunAsync(ForecastJob.Called, ForecastJson.Write(request), step => progress?.Invoke(step.Done, step.Of), cancellation));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _session.Changed -= BookChanged;
        _running?.Stop.Cancel();
    }

    private ForecastStage StageOf(ForecastSlot slot)
    {
        if (IsReady(slot))
            return ForecastStage.Ready;
        if (_running is { } running && running.Slot == slot)
            return slot.Starting ? ForecastStage.Starting : ForecastStage.Working;
        if (slot.Barred is not null && slot.Barred == KeyOf(slot.Apiary))
            return slot.Problem is null ? ForecastStage.Stopped : ForecastStage.Failed;
        if (_work.WhyOnPage is not null && !_asked)
            return ForecastStage.ToBeAsked;
        return slot.Wishes > 0 ? ForecastStage.Waiting : ForecastStage.Idle;
    }

    private ForecastSlot SlotOf(ApiaryId apiary)
    {
        if (!_slots.TryGetValue(apiary, out var slot))
            _slots[apiary] = slot = new ForecastSlot(apiary);
        return slot;
    }

    private bool IsReady(ForecastSlot slot) => slot.Kept is { } kept
        && (kept.Key == KeyOf(slot.Apiary) || (_work.WhyOnPage is not null && kept.Key == KeyFor(slot.Apiary, WorkPlace.OnPage)));

    // The key of the forecast that is aimed at: the one made beside the page, until it is known that none can be made there.
    private string KeyOf(ApiaryId apiary)
    {
        Fresh();
        if (!_keys.TryGetValue(apiary, out var key))
            _keys[apiary] = key = KeyFor(apiary, WorkPlace.Beside);
        return key;
    }

    private string KeyFor(ApiaryId apiary, WorkPlace place) =>
        (_keysOfBook ??= new ForecastKeys(_session.State, _session.Entries)).Of(Request(apiary, place), CultureInfo.CurrentCulture);

    private ForecastRequest Request(ApiaryId apiary, WorkPlace place) => place == WorkPlace.Beside
        ? new ForecastRequest(apiary, _session.Today, Particles, RecordDays)
        : new ForecastRequest(apiary, _session.Today, ParticlesOnPage, RecordDaysOnPage);

    /// <returns>True when the book or the day has changed since it was asked last.</returns>
    private bool Fresh()
    {
        if (ReferenceEquals(_state, _session.State) && _today == _session.Today)
            return false;
        (_state, _today, _keysOfBook) = (_session.State, _session.Today, null);
        _keys.Clear();
        if (_operation == _session.Operation)
            return true;
        _operation = _session.Operation;
        foreach (var slot in _slots.Values)
            (slot.Kept, slot.Looked, slot.Barred, slot.Problem) = (null, false, null, null);
        return true;
    }

    private void BookChanged()
    {
        if (ReferenceEquals(_state, _session.State))
            return;
        Fresh();
        Rearrange();
    }

    // What runs goes on unless the book has moved on under it, the keeper stopped it, or something on the screen waits for it.
    private void Rearrange()
    {
        if (_running is { } running)
        {
            var key = KeyOf(running.Slot.Apiary);
            if (running.Key != key || running.Slot.Barred == key || (running.Slot.Wishes == 0 && Next() is not null))
                running.Stop.Cancel();
        }

        _ = PumpAsync();
    }

    private ForecastSlot? Next() => _slots.Values
        .Where(slot => slot.Wishes > 0 && slot != _running?.Slot && (!slot.Looked || StageOf(slot) == ForecastStage.Waiting))
        .OrderBy(slot => slot.Looked)
        .ThenByDescending(slot => slot.Page)
        .ThenBy(slot => slot.Place)
        .FirstOrDefault();

    private async Task PumpAsync()
    {
        if (_busy)
            return;
        _busy = true;
        try
        {
            await Task.Delay(Ahead);
            while (Next() is { } slot)
            {
                if (slot.Looked)
                    await MakeAsync(slot);
                else
                    await LookAsync(slot);
                Changed?.Invoke(_work.WhyOnPage is null ? slot.Apiary : null);
            }
        }
        finally
        {
            _busy = false;
        }
    }

    private async Task LookAsync(ForecastSlot slot)
    {
        slot.Looked = true;
        var operation = _session.Operation;
        var kept = await CourseStore.ReadAsync(operation, slot.Apiary);
        if (operation == _session.Operation)
            slot.Kept ??= kept;
    }

    private async Task MakeAsync(ForecastSlot slot)
    {
        using var stop = new CancellationTokenSource();
        var (operation, key) = (_session.Operation, KeyOf(slot.Apiary));
        _running = (slot, key, stop);
        (slot.Starting, slot.Done, slot.Of, slot.Problem) = (true, 0, 0, null);
        Changed?.Invoke(slot.Apiary);
        try
        {
            var place = await _work.PlaceAsync();
            if (place == WorkPlace.OnPage && !_asked)
                return;
            var request = Request(slot.Apiary, place);
            var made = place == WorkPlace.Beside ? key : KeyFor(slot.Apiary, place);
            slot.Starting = false;
            var answer = await _work.RunAsync(ForecastJob.Called, ForecastJson.Write(request), step => Move(slot, step.Done, step.Of), stop.Token);
            if (operation != _session.Operation)
                return;
            slot.Kept = new KeptCourse(made, ForecastJson.ReadCourse(answer));
            await CourseStore.KeepAsync(operation, slot.Apiary, made, answer);
        }
        catch (OperationCanceledException)
        {
            // Stopped by the keeper, overtaken by the book, or no longer looked at: what was there before stays.
        }
        catch (WorkException error)
        {
            (slot.Barred, slot.Problem) = (key, error.Message);
        }
        finally
        {
            _running = null;
        }
    }

    private void Move(ForecastSlot slot, int done, int of)
    {
        (slot.Done, slot.Of) = (done, of);
        Changed?.Invoke(slot.Apiary);
    }

    private void Release(IReadOnlyList<ApiaryId> apiaries)
    {
        foreach (var apiary in apiaries)
            SlotOf(apiary).Wishes--;
        Rearrange();
    }

    private sealed class Wished(ForecastShelf shelf, IReadOnlyList<ApiaryId> apiaries) : IDisposable
    {
        private bool _over;

        public void Dispose()
        {
            if (_over)
                return;
            _over = true;
            shelf.Release(apiaries);
        }
    }
}
