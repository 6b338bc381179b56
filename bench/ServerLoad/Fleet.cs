using System.Diagnostics;
using System.Globalization;
using Foundress.PostgresForTests;
using Foundress.Storage;
using Foundress.Storage.Work;

namespace ServerLoad;

/// <summary>Server processes that share the forecasts of a fleet.</summary>
internal static class Fleet
{
    public static async Task RunAsync(PostgresCluster cluster, PostgresAddress address, string folder, int servers, int colonies, int apiaries)
    {
        var program = Path.Combine(AppContext.BaseDirectory.Replace("ServerLoad", "Foundress.Server", StringComparison.Ordinal), "Foundress.Server.dll");
        var from = Stopwatch.GetTimestamp();
        var processes = Enumerable.Range(0, servers).Select(n => Process.Start(new ProcessStartInfo(
            "dotnet", [program, "--port", "0", "--data", Path.Combine(folder, $"server{n}"), "--database", cluster.Setting(address.Database), "--forecasts"]) { RedirectStandardOutput = true })!).ToArray();
        try
        {
            using var store = await BookStore.OpenAsync(folder, new BookStoreOptions { BackupAtStart = false, Database = address });
            while ((await store.Work!.CountAsync()).GetValueOrDefault(WorkState.Done) < apiaries)
                await Task.Delay(500);
            var (wall, cpu) = (Stopwatch.GetElapsedTime(from), TimeSpan.Zero);
            foreach (var process in processes)
            {
                process.Refresh();
                cpu += process.TotalProcessorTime;
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"a server: {process.TotalProcessorTime.TotalSeconds:F0} s of processor time, {process.WorkingSet64 / 1_000_000} MB"));
            }

            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{servers} servers, {colonies} colonies in {apiaries} apiaries: {wall.TotalSeconds:F0} s by the clock, {cpu.TotalSeconds:F0} s of processor time, reading the book included; {cpu.TotalHours * 100_000 / colonies:F2} hours of one core for 100,000 colonies"));
        }
        finally
        {
            foreach (var process in processes)
            {
                process.Kill();
                process.Dispose();
            }
        }
    }
}
