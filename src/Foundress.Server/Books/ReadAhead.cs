using Foundress.Storage;

namespace Foundress.Server.Books;

/// <summary>Reads every operation through once after a start, so that nobody's first question has to wait for it.</summary>
internal sealed partial class ReadAhead(BookStore store, ApiaryBooks books, ILogger<ReadAhead> log) : BackgroundService
{
    /// <summary>Ends when everything was read. For tests.</summary>
    internal Task Done => ExecuteTask ?? Task.CompletedTask;

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        // The server answers first: what is asked meanwhile is read on the way.
        await Task.Yield();
        try
        {
            foreach (var count in await store.OperationsAsync(stoppingToken))
                await books.Of(count.Operation).ReadAsync(stoppingToken);
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // The server ends.
        }
        catch (Exception error) when (error is not OperationCanceledException)
        {
            // Whoever asks next is told what is wrong; the server goes on taking entries if it can, and must not end by it.
            LogFailed(error is StorageException storage ? storage.Fault.ToString() : error.GetType().Name);
        }
    }

    [LoggerMessage(LogLevel.Warning, "The book could not be read ahead ({Fault}). It is read when it is first asked for.")]
    private partial void LogFailed(string fault);
}
