using System.Diagnostics;
using System.Globalization;
using Foundress.Book.Exchanging;
using Foundress.Book.Journal;

namespace Foundress.Server.Tests.Faults;

/// <summary>A disk that is really full: a small one in memory, made for the test.</summary>
public sealed class FullDiskTests(ITestOutputHelper output)
{
    [Fact]
    public async Task Send_DiskFull_KeepsAllThatWasAcknowledgedAndGoesOnWhenThereIsRoom()
    {
        using var folder = new TempData();
        if (!OperatingSystem.IsLinux() || !Run("mount", "-t", "tmpfs", "-o", "size=2m", "tmpfs", folder.Path))
        {
            Assert.Skip("A small disk can be made by the administrator of a Linux computer only.");
            return;
        }

        try
        {
            using var line = new Line();
            var number = 0;
            Entry[] Next() => [.. Enumerable.Range(0, 50).Select(_ => Site.Entry(number++))];
            Entry[] left;
            using (var server = await BuiltServer.StartAsync(folder.Path))
            {
                line.LeadTo(server.Address);
                ExchangeException? full = null;
                do
                {
                    left = Next();
                    try
                    {
                        await line.PushAsync("home", left);
                    }
                    catch (ExchangeException error)
                    {
                        full = error;
                    }
                }
                while (full is null && number < 100_000);
                Assert.Contains("507", full?.Message, StringComparison.Ordinal);
                var acknowledged = line.Acknowledged;
                Assert.NotEmpty(acknowledged);
                var before = (await line.AllAsync("home")).Select(entry => entry.Id).ToArray();
                Assert.Equal(acknowledged.OrderBy(id => id.Value), before.OrderBy(id => id.Value));
                server.Kill();
            }

            // It cannot make the day's backup now, and says so rather than go on without one.
            var refused = await Assert.ThrowsAsync<InvalidOperationException>(() => BuiltServer.StartAsync(folder.Path));
            Assert.True(refused.Message.Contains("Free some space", StringComparison.Ordinal), refused.Message);
            Assert.True(Run("mount", "-o", "remount,size=16m", folder.Path));
            using (var server = await BuiltServer.StartAsync(folder.Path))
            {
                line.LeadTo(server.Address);
                Assert.Equal(line.Acknowledged.Count, (await line.AllAsync("home")).Count);
                Assert.Empty((await line.PushAsync("home", left)).Refused);
                var held = await line.AllAsync("home");
                Assert.Equal(number, held.Count);
                Assert.Empty(line.Acknowledged.Except(held.Select(entry => entry.Id)));
                Assert.Distinct(held.Select(entry => entry.Id));
                output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"full after {number - 50} entries; {held.Count} held once there was room, 0 missing, 0 doubled"));
            }
        }
        finally
        {
            Assert.True(Run("umount", folder.Path));
        }
    }

    private static bool Run(string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true, RedirectStandardOutput = true })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
