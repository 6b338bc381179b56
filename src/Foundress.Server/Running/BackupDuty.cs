using Foundress.Storage;

namespace Foundress.Server.Running;

/// <summary>Makes the daily backup of a server that runs on for weeks: opening the book makes only the first.</summary>
internal sealed partial class BackupDuty(BookStore store, ServerMeters meters, TimeProvider time, ILogger<BackupDuty> log) : BackgroundService
{
    /// <summary>How often it looks whether a backup is due. After a failure it tries again just as soon.</summary>
    internal static readonly TimeSpan Every = TimeSpan.FromMinutes(10);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Every, time);
        while (await timer.WaitForNextTickAsync(stoppingToken))
            await LookAsync(stoppingToken);
    }

    private async Task LookAsync(CancellationToken cancellation)
    {
        var begun = time.GetTimestamp();
        try
        {
            if (await store.BackUpIfDueAsync(cancellation) is null)
                return;
            meters.BackedUp(WorkEnd.Done, time.GetElapsedTime(begun));
            LogMade();
        }
        catch (StorageException error)
        {
            // The book is unharmed, and the server of more use than no server.
            meters.BackedUp(WorkEnd.Failed, time.GetElapsedTime(begun));
            LogFailed(error.Fault);
        }
    }

    [LoggerMessage(20, LogLevel.Information, "The daily backup was made.")]
    private partial void LogMade();

    [LoggerMessage(21, LogLevel.Error, "The daily backup could not be made: {Fault}. It is tried again in ten minutes.")]
    private partial void LogFailed(StorageFault fault);
}
