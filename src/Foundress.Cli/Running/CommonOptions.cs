using System.CommandLine;
using Foundress.Book.Importing;
using Foundress.Book.Journal;
using Foundress.Knowledge;
using Foundress.Storage;

namespace Foundress.Cli.Running;

/// <summary>Options that several commands share, each made anew because an option belongs to one command.</summary>
internal static class CommonOptions
{
    internal const string DataVariable = "FOUNDRESS_DATA";
    internal const string DatabaseVariable = "FOUNDRESS_DATABASE";
    internal const string DatabaseName = "--database";
    internal const string DataName = "--data";

    internal static Option<bool> Json() => new("--json") { Description = "Write JSON." };

    internal static Option<string?> Data() => new(DataName)
    {
        Description = $"Folder of the book. Without it: the environment variable {DataVariable}, or else {DataFolder.Default.Path}.",
        HelpName = "DIR",
    };

    internal static Option<string?> Database() => new(DatabaseName)
    {
        Description = $"The PostgreSQL database that holds the book, as '{PostgresAddress.Example}'. Without it: the environment variable {DatabaseVariable}, where a password is better kept; or else the file in the book's folder.",
        HelpName = "SETTING",
    };

    internal static Option<string> Operation() => new("--operation")
    {
        Description = "The operation whose book is meant.",
        HelpName = "NAME",
        DefaultValueFactory = _ => Operations.Home,
    };

    internal static Option<string?> Method() => new("--method")
    {
        Description = $"Counting method: {string.Join(", ", MethodIds)}. Without it: {MethodIds[0]}.",
        HelpName = "ID",
    };

    /// <summary>Id of the counting method.</summary>
    internal static string MethodOf(string? given)
    {
        if (given is null)
            return MethodIds[0];
        return MethodField.Read(given, MethodIds, out var method) is { } problem ? throw new UsageException($"--method '{given}': {problem}") : method;
    }

    private static string[] MethodIds => [.. KnowledgeBase.Load().Methods.Where(one => one.IsJar && !one.IsHistoric).Select(one => one.Id)];

    internal static Option<string?> Day(string name, string what) => new(name) { Description = $"{what} (yyyy-MM-dd). Without it: today.", HelpName = "DAY" };

    /// <summary>Where the book lies: <see cref="DirectoryOf"/> and the database that was named on the command line or in the environment.</summary>
    internal static BookPlace PlaceOf(string? given, Surroundings around) => new(DirectoryOf(given, around), DatabaseOf(around));

    /// <summary>The PostgreSQL database that holds the book; none for the file in the folder.</summary>
    internal static PostgresAddress? DatabaseOf(Surroundings around)
    {
        if (around.Variable(DatabaseVariable) is not { } setting || string.IsNullOrWhiteSpace(setting))
            return null;
        return PostgresAddress.TryParse(setting, out var problem) ?? throw new UsageException($"{DatabaseName} (or {DatabaseVariable}): {problem}");
    }

    /// <summary>The folder of the book.</summary>
    internal static string DirectoryOf(string? given, Surroundings around)
    {
        if (given is not null && string.IsNullOrWhiteSpace(given))
            throw new UsageException("--data: the folder is empty. Name one, or leave the option out.");
        return given ?? (around.Variable(DataVariable) is { Length: > 0 } named ? named : DataFolder.Default.Path);
    }

    /// <summary>A day that is not in the future.</summary>
    internal static DateOnly PastDay(string option, string? text, Surroundings around)
    {
        if (text is null)
            return around.Today;
        if (DateField.Read(text, around.Today, out var day) is { } problem)
            throw new UsageException($"{option} '{text}': {problem}");
        return day;
    }

    /// <summary>A day that may lie ahead, up to two years.</summary>
    internal static DateOnly PlannedDay(string option, string? text, Surroundings around)
    {
        if (text is null)
            return around.Today;
        if (DateField.Read(text, around.Today.AddYears(2), out var day) is not null)
            throw new UsageException($"{option} '{text}': Write a day of at most two years ahead as yyyy-MM-dd, for example {around.Today:yyyy-MM-dd}.");
        return day;
    }
}
