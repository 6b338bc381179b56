using System.Diagnostics;

namespace Foundress.Storage.Tests;

public class CrashTests
{
    // Killed at moments that differ from run to run, which is the point: whatever the moment, no acknowledged entry may be lost.
    [Fact]
    public async Task Append_WriterKilledAgainAndAgain_LosesNothingAcknowledged()
    {
        using var folder = new TempFolder();
        var acknowledged = new HashSet<Guid>();
        for (var round = 0; round < 5; round++)
        {
            using var first = Start(folder.Path, $"first {round}");
            using var second = Start(folder.Path, $"second {round}");
            var read = Task.WhenAll(ReadAsync(first, acknowledged), ReadAsync(second, acknowledged));
            var enough = acknowledged.Count + 10 + Random.Shared.Next(150);
            while (Count(acknowledged) < enough && !(first.HasExited && second.HasExited))
                await Task.Delay(Random.Shared.Next(1, 10));
            first.Kill();
            second.Kill();
            await read;
            Assert.True(acknowledged.Count >= enough, await first.StandardError.ReadToEndAsync() + await second.StandardError.ReadToEndAsync());
            using var store = await BookStore.OpenAsync(folder.Path);
            var stored = (await Some.AllAsync(store)).Select(entry => entry.Id.Value).ToHashSet();
            Assert.Empty(acknowledged.Except(stored));
            Assert.Equal(stored.Count, await store.CheckAsync());
        }
    }

    private static int Count(HashSet<Guid> acknowledged)
    {
        lock (acknowledged)
            return acknowledged.Count;
    }

    // A last line that the kill cut short is no acknowledgement.
    private static async Task ReadAsync(Process process, HashSet<Guid> acknowledged)
    {
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (!Guid.TryParseExact(line, "D", out var id))
                continue;
            lock (acknowledged)
                acknowledged.Add(id);
        }
    }

    private static Process Start(string folder, string device)
    {
        // Beside this test's own output, whatever the configuration.
        var writer = AppContext.BaseDirectory.Replace("Foundress.Storage.Tests", "Foundress.Storage.Writer", StringComparison.Ordinal);
        return Process.Start(new ProcessStartInfo("dotnet")
        {
            ArgumentList = { Path.Combine(writer, "Foundress.Storage.Writer.dll"), folder, device },
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
    }
}
