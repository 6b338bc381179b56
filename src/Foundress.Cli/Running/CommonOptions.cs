using System.CommandLine;
using Foundress.Book.Importing;
using Foundress.Book.Journal;
using Foundress.Book.Wording;
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

    internal static Option<bool> Json() => new("--json") { Description = SharedTexts.Json };

    internal static Option<string?> Data() => new(DataName)
    {
        Description = SharedTexts.FormatData(DataVariable, DataFolder.Default.Path),
        HelpName = SharedTexts.WordFolder,
    };

    internal static Option<string?> Database() => new(DatabaseName)
    {
        Description = SharedTexts.FormatDatabase(PostgresAddress.Example, DatabaseVariable),
        HelpName = SharedTexts.WordSetting,
    };

    internal static Option<string> Operation() => new("--operation")
    {
        Description = SharedTexts.Operation,
        HelpName = "NAME",
        DefaultValueFactory = _ => Operations.Home,
    };

    internal static Option<string?> Method() => new("--method")
    {
        Description = SharedTexts.FormatMethod(string.Join(", ", MethodIds), MethodIds[0]),
        HelpName = "ID",
    };

    internal static Option<bool> Working() => new("--working") { Description = SharedTexts.Working };

    /// <summary>Id of the counting method.</summary>
    internal static string MethodOf(string? given)
    {
        if (given is null)
            return MethodIds[0];
        return MethodField.Read(given, MethodIds, out var method) is { } problem ? throw UsageException.OfValue("--method", given, problem) : method;
    }

    private static string[] MethodIds => [.. KnowledgeBase.Load().Methods.Where(one => one.IsJar && !one.IsHistoric).Select(one => one.Id)];

    internal static Option<string?> Day(string name, string what) => new(name) { Description = SharedTexts.FormatDay(what), HelpName = SharedTexts.WordDay };

    /// <summary>Where the book lies: <see cref="DirectoryOf"/> and the database that was named on the command line or in the environment.</summary>
    internal static BookPlace PlaceOf(string? given, Surroundings around) => new(DirectoryOf(given, around), DatabaseOf(around));

    /// <summary>The PostgreSQL database that holds the book; none for the file in the folder.</summary>
    internal static PostgresAddress? DatabaseOf(Surroundings around)
    {
        if (around.Variable(DatabaseVariable) is not { } setting || string.IsNullOrWhiteSpace(setting))
            return null;
        return PostgresAddress.TryParse(setting, out var problem) ?? throw new UsageException(SharedTexts.FormatDatabaseWrong(DatabaseName, DatabaseVariable, problem));
    }

    /// <summary>The folder of the book.</summary>
    internal static string DirectoryOf(string? given, Surroundings around)
    {
        if (given is not null && string.IsNullOrWhiteSpace(given))
            throw new UsageException(SharedTexts.FolderEmpty);
        return given ?? (around.Variable(DataVariable) is { Length: > 0 } named ? named : DataFolder.Default.Path);
    }

    /// <summary>Several apiaries of the book.</summary>
    internal static Option<string[]> Apiaries() => new("--apiary") { Description = SharedTexts.SomeApiaries, HelpName = "NAME" };

    /// <summary>One apiary of the book.</summary>
    internal static Option<string?> Apiary() => new("--apiary") { Description = SharedTexts.OneApiary, HelpName = "NAME" };

    /// <summary>Of commands that write more forms than text and JSON.</summary>
    internal static Option<bool> JsonFormat() => new("--json") { Description = SharedTexts.SameAsFormatJson };

    /// <summary>A day that is not in the future.</summary>
    internal static DateOnly PastDay(string option, string? text, Surroundings around)
    {
        if (text is null)
            return around.Today;
        if (DateField.Read(text, around.Today, out var day) is { } problem)
            throw UsageException.OfValue(option, text, problem);
        return day;
    }

    /// <summary>A day that may lie ahead, up to two years.</summary>
    internal static DateOnly PlannedDay(string option, string? text, Surroundings around)
    {
        if (text is null)
            return around.Today;
        if (DateField.Read(text, around.Today.AddYears(2), out var day) is not null)
            throw UsageException.OfValue(option, text, SharedTexts.FormatDayAhead(Say.IsoDay(around.Today)));
        return day;
    }
}
