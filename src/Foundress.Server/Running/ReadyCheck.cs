using Foundress.Storage;

namespace Foundress.Server.Running;

/// <summary>Whether the server can do its work: the book can be read and written, and it is not about to end.</summary>
internal sealed class ReadyCheck(BookStore store, IHostApplicationLifetime lifetime, TimeProvider time)
{
    // Whoever asks often must not make the disk work as often.
    private static readonly TimeSpan Fresh = TimeSpan.FromSeconds(1);

    private readonly Lock _gate = new();
    private Task<string?>? _check;
    private long _begun;

    /// <summary>Why it cannot; null when it can. The reason holds no path: anyone may ask.</summary>
    public async Task<string?> WhyNotAsync(CancellationToken cancellation)
    {
        if (lifetime.ApplicationStopping.IsCancellationRequested)
            return "The server is shutting down.";
        Task<string?> check;
        lock (_gate)
        {
            var isGoodNews = _check is { IsCompletedSuccessfully: true, Result: null } && time.GetElapsedTime(_begun) < Fresh;
            if (_check is { IsCompleted: false } running)
                check = running;
            else if (isGoodNews)
                check = _check!;
            else
                (_check, _begun) = (check = LookAsync(), time.GetTimestamp());
        }

        return await check.WaitAsync(cancellation);
    }

    private async Task<string?> LookAsync()
    {
        try
        {
            await store.CheckWritableAsync(CancellationToken.None);
            return null;
        }
        catch (StorageException error)
        {
            return error.Fault switch
            {
                StorageFault.DiskFull => "There is no room left where the book lies.",
                StorageFault.ReadOnly => "The book cannot be written.",
                StorageFault.InUse => "Another program holds the book.",
                StorageFault.Damaged or StorageFault.NotABook => "The book is damaged.",
                StorageFault.Missing => "The book is gone.",
                _ => "The book cannot be reached.",
            };
        }
    }
}
