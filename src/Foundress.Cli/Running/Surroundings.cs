using System.Globalization;
using System.Security.Cryptography;

namespace Foundress.Cli.Running;

/// <summary>Everything a command takes from outside, so that commands can be tried without a process.</summary>
/// <param name="Out">Where results go.</param>
/// <param name="Error">Where problems go.</param>
/// <param name="Time">The clock.</param>
/// <param name="Variable">Reads an environment variable.</param>
/// <param name="NewSeed">A fresh seed for a draw that names none.</param>
/// <param name="Device">The id of this device in the book.</param>
/// <param name="SystemLanguage">The culture whose language is spoken where none is named.</param>
/// <param name="SystemNumbers">The culture whose numbers are written in sentences of its own language.</param>
public sealed record Surroundings(
    TextWriter Out,
    TextWriter Error,
    TimeProvider Time,
    Func<string, string?> Variable,
    Func<ulong> NewSeed,
    string Device,
    CultureInfo SystemLanguage,
    CultureInfo SystemNumbers)
{
    /// <summary>How numbers are written in sentences. JSON and CSV do not depend on it.</summary>
    public CultureInfo Culture { get; init; } = CultureInfo.InvariantCulture;

    /// <summary>The day here and now.</summary>
    public DateOnly Today => DateOnly.FromDateTime(Time.GetLocalNow().DateTime);

    /// <summary>What this process has around it.</summary>
    public static Surroundings OfThisProcess() => new(
        Console.Out, Console.Error, TimeProvider.System, Environment.GetEnvironmentVariable,
        // Ten digits: easy to read out and type again.
        () => (ulong)RandomNumberGenerator.GetInt32(int.MaxValue),
        "cli-" + Environment.MachineName, CultureInfo.CurrentUICulture, CultureInfo.CurrentCulture);
}
