using System.Runtime.CompilerServices;
using System.Text;

namespace Foundress.Reports.Tests.Support;

/// <summary>Compares output with the stored, looked-at file in Expected; a difference leaves a .received file to look at.</summary>
internal static class Approve
{
    public static void Matches(string name, string received, [CallerFilePath] string caller = "")
    {
        var folder = Path.Combine(Path.GetDirectoryName(Path.GetDirectoryName(caller))!, "Expected");
        var expectedPath = Path.Combine(folder, name);
        var receivedPath = Path.Combine(folder, Path.GetFileNameWithoutExtension(name) + ".received" + Path.GetExtension(name));
        var expected = File.Exists(expectedPath) ? File.ReadAllText(expectedPath).ReplaceLineEndings("\n") : "";
        if (expected == received)
        {
            File.Delete(receivedPath);
            return;
        }

        Directory.CreateDirectory(folder);
        File.WriteAllText(receivedPath, received, new UTF8Encoding(false));
        var at = 0;
        while (at < expected.Length && at < received.Length && expected[at] == received[at])
            at++;
        var line = received.AsSpan(0, at).Count('\n') + 1;
        Assert.Fail($"{name} differs from line {line}: expected '{Around(expected, at)}', received '{Around(received, at)}'. "
            + $"Look at both (git diff --no-index '{expectedPath}' '{receivedPath}'); if the new one is right, rename it to {name}.");
    }

    private static string Around(string text, int at) => text.Substring(Math.Min(at, text.Length), Math.Min(60, text.Length - Math.Min(at, text.Length)));
}
