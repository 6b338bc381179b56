namespace Foundress.Browser.Tests;

/// <summary>Waiting for what the browser's own waiting cannot see.</summary>
internal static class Patiently
{
    /// <summary>Asks again and again until it holds.</summary>
    /// <param name="holds">Whether it does.</param>
    /// <exception cref="OperationCanceledException">It does not hold after <see cref="PublishedApp.Patience"/>.</exception>
    public static async Task UntilAsync(Func<Task<bool>> holds)
    {
        using var patience = new CancellationTokenSource(PublishedApp.Patience);
        while (!await holds())
            await Task.Delay(100, patience.Token);
    }
}
