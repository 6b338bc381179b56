using Foundress.ServerForTests;

namespace Foundress.Server.Tests.Faults;

/// <summary>The server that was built beside these tests, as a process of its own.</summary>
internal static class BuiltServer
{
    // Beside this test's own output, whatever the configuration.
    private static readonly string Folder = AppContext.BaseDirectory.Replace("Foundress.Server.Tests", "Foundress.Server", StringComparison.Ordinal);

    public static Task<ServerProcess> StartAsync(string data, params string[] more) => ServerProcess.StartAsync(Folder, data, null, more);

    public static Task<ServerProcess> StartAsync(string data, IReadOnlyDictionary<string, string> settings, params string[] more) => ServerProcess.StartAsync(Folder, data, settings, more);
}
