using Foundress.Book.Journal;
using Foundress.Server.Books;
using Foundress.Storage;
using Foundress.Storage.Work;

namespace Foundress.Server.Fleet;

/// <summary>
/// Works the forecasts of all apiaries out ahead, shared with every other server on the same database: each asks for what is
/// missing, each takes a piece at a time, and a piece whose worker was killed goes to another.
/// </summary>
internal sealed partial class FleetForecasts(BookStore store, ApiaryBooks books, TimeProvider time, ILogger<FleetForecasts> log) : BackgroundService
{
    // An apiary takes well under a second; a worker that says nothing for this long is taken for dead.
    private static readonly TimeSpan Lease = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan RenewAfter = TimeSpan.FromSeconds(20);
    private static readonly TimeSpan AskEvery = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan Idle = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan Kept = TimeSpan.FromDays(7);

    private readonly string _worker = $"{Environment.ProcessId}-{Guid.NewGuid():N}"[..20];

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (store.Work is not { } queue)
            return;
        await Task.WhenAll(
            ForEverAsync(AskEvery, () => AskAsync(queue, stoppingToken), stoppingToken),
            ForEverAsync(Idle, () => WorkAsync(queue, stoppingToken), stoppingToken));
    }

    private async Task ForEverAsync(TimeSpan pause, Func<Task> work, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            try
            {
                await work();
                await Task.Delay(pause, time, stop);
            }
            catch (OperationCanceledException) when (stop.IsCancellationRequested)
            {
                return;
            }
            catch (Exception error) when (error is not OperationCanceledException)
            {
                // The database may be away for a while: what was asked for waits there. Whatever else it is, work ahead is a
                // convenience and must not end the server that keeps the book.
                if (error is StorageException storage)
                    LogAway(storage.Fault);
                else
                    LogFailed(error.GetType(), error.StackTrace);
                await Task.Delay(AskEvery, time, stop).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    private async Task AskAsync(WorkQueue queue, CancellationToken stop)
    {
        var today = DateOnly.FromDateTime(time.GetLocalNow().DateTime);
        foreach (var operation in (await store.OperationsAsync(stop)).Select(count => count.Operation).Where(operation => operation != Operations.Demo))
        {
            var parts = books.Of(operation);
            var items = new List<WorkItem>();
            foreach (var summary in await parts.SummariesAsync(today, stop))
            {
                if (summary.Living > 0)
                    items.Add(await FleetWork.ForAsync(operation, summary.Season.Apiary.Id, today, parts, store, stop));
            }

            await queue.EnqueueAsync(items, only: true, stop);
        }

        await queue.ForgetAsync(Kept, stop);
    }

    private async Task WorkAsync(WorkQueue queue, CancellationToken stop)
    {
        var seasons = FleetWork.Seasons();
        while (await queue.TakeAsync(_worker, Lease, 1, stop) is [var lease])
        {
            var renewed = time.GetTimestamp();
            try
            {
                var result = await FleetWork.DoAsync(lease.Input, store, seasons, StillOursAsync, stop);
                if (result is not null)
                    await queue.CompleteAsync(lease, result, stop);
            }
            catch (Exception error) when (error is not (StorageException or OperationCanceledException))
            {
                // Whatever one apiary's book does to the model, the others' forecasts go on. Messages can hold what was recorded.
                LogFailed(error.GetType(), error.StackTrace);
                await queue.FailAsync(lease, error.GetType().Name, stop);
            }

            async Task<bool> StillOursAsync()
            {
                if (time.GetElapsedTime(renewed) < RenewAfter)
                    return true;
                renewed = time.GetTimestamp();
                return await queue.RenewAsync(lease, Lease, stop);
            }
        }
    }

    [LoggerMessage(LogLevel.Warning, "Forecasts ahead wait, the book cannot be read or written: {Fault}")]
    private partial void LogAway(StorageFault fault);

    [LoggerMessage(LogLevel.Error, "A forecast ahead failed: {Type}\n{Place}")]
    private partial void LogFailed(Type type, string? place);
}
