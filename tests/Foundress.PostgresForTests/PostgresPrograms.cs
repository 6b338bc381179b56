using System.Diagnostics;

namespace Foundress.PostgresForTests;

/// <summary>Where PostgreSQL's own programs lie on this computer.</summary>
public static class PostgresPrograms
{
    /// <summary>Names their folder where it is not found by itself.</summary>
    public const string Variable = "FOUNDRESS_POSTGRES_BIN";

    private static readonly string[] Needed = ["initdb", "pg_ctl", "postgres"];

    /// <summary>The folder; null when PostgreSQL is not installed.</summary>
    public static string? Folder { get; } = Candidates().FirstOrDefault(folder => Needed.All(name => IsThere(Path.Combine(folder, name))));

    /// <summary>Why there is no server for tests; null when there is one.</summary>
    public static string? Missing =>
        Folder is null
            ? $"PostgreSQL is not installed: install the package 'postgresql', or name the folder of its programs in {Variable}."
            : Environment.UserName == "root" && !File.ReadLines("/etc/passwd").Any(line => line.StartsWith("postgres:", StringComparison.Ordinal))
                ? "PostgreSQL does not run as root, and there is no user 'postgres' to run it as."
                : null;

    private static IEnumerable<string> Candidates()
    {
        if (!OperatingSystem.IsLinux() && !OperatingSystem.IsMacOS())
            yield break;
        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } named)
            yield return named;
        if (Asked() is { } told)
            yield return told;
        if (Directory.Exists("/usr/lib/postgresql"))
        {
            foreach (var version in Directory.GetDirectories("/usr/lib/postgresql").OrderByDescending(Version))
                yield return Path.Combine(version, "bin");
        }

        foreach (var folder in (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':', StringSplitOptions.RemoveEmptyEntries))
            yield return folder;
    }

    // A link that leads nowhere counts as a file to .NET.
    private static bool IsThere(string file) => File.Exists(file) && (File.ResolveLinkTarget(file, returnFinalTarget: true)?.Exists ?? true);

    private static int Version(string folder) => int.TryParse(Path.GetFileName(folder), out var version) ? version : 0;

    private static string? Asked()
    {
        try
        {
            using var asked = Process.Start(new ProcessStartInfo("pg_config", "--bindir") { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var folder = asked.StandardOutput.ReadToEnd().Trim();
            asked.WaitForExit();
            return asked.ExitCode == 0 && folder.Length > 0 ? folder : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            // It comes with another package, which need not be there.
            return null;
        }
    }
}
