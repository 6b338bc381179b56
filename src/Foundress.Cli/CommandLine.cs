using System.CommandLine;
using System.CommandLine.Help;
using System.Globalization;
using Foundress.Accounts;
using Foundress.Book.Importing;
using Foundress.Cli.Commands;
using Foundress.Cli.Running;
using Foundress.Storage;

namespace Foundress.Cli;

/// <summary>The command <c>foundress</c>: its commands, and what becomes of their errors.</summary>
public static class CommandLine
{
    /// <summary>Set to anything to see where an unexpected error came from.</summary>
    private const string TraceVariable = "FOUNDRESS_TRACE";

    /// <summary>Runs one command.</summary>
    /// <param name="args">The words behind the program's name.</param>
    /// <param name="around">What the command takes from outside.</param>
    /// <returns>One of <see cref="ExitCodes"/>.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> args, Surroundings around)
    {
        // What is not told a culture is read and written as scripts expect it. Both cultures end with this method.
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        try
        {
            return await RunSpokenAsync(args, SpokenLanguage.Speak(args, around));
        }
        catch (UsageException error)
        {
            Say(around, error.Message);
            return ExitCodes.Usage;
        }
        catch (ImportFormatException error)
        {
            Say(around, CommandLineTexts.FormatNothingImported(error.Message));
            return ExitCodes.Usage;
        }
        catch (Exception error) when (error is StorageException or IOException or UnauthorizedAccessException)
        {
            Say(around, error.Message);
            return ExitCodes.Storage;
        }
        catch (AccountsException error)
        {
            Say(around, error.Message);
            return error.Fault == AccountsFault.Store ? ExitCodes.Storage : ExitCodes.Usage;
        }
        catch (OperationCanceledException)
        {
            Say(around, CommandLineTexts.Stopped);
            return ExitCodes.Unexpected;
        }
#pragma warning disable CA1031 // The last net: whatever it is, scripts must see exit code 4 and people a sentence.
        catch (Exception error)
#pragma warning restore CA1031
        {
            var traced = around.Variable(TraceVariable) is { Length: > 0 };
            Say(around, CommandLineTexts.FormatFault(traced ? error.ToString() : error.Message));
            if (!traced)
                around.Error.WriteLine(CommandLineTexts.FormatHowToTrace(TraceVariable));
            return ExitCodes.Unexpected;
        }
    }

    private static async Task<int> RunSpokenAsync(IReadOnlyList<string> args, Surroundings around)
    {
        // What the command line names stands before the environment, for every command that opens the book.
        string? database = null;
        var parsed = Root(around with { Variable = name => name == CommonOptions.DatabaseVariable ? database ?? around.Variable(name) : around.Variable(name) }).Parse(args);
        if (parsed.CommandResult.Command.Options.Any(option => option.Name == CommonOptions.DatabaseName))
            database = parsed.GetValue<string?>(CommonOptions.DatabaseName);
        if (parsed.Action is HelpAction)
            return await HelpAsync(parsed, around);
        if (parsed.Errors.Count > 0)
        {
            foreach (var error in parsed.Errors)
                Say(around, LibraryWords.Error(error.Message));
            around.Error.WriteLine(Hint(parsed));
            return ExitCodes.Usage;
        }

        return await parsed.InvokeAsync(Configuration(around.Out, around));
    }

    private static async Task<int> HelpAsync(ParseResult parsed, Surroundings around)
    {
        await using var help = new StringWriter(CultureInfo.InvariantCulture) { NewLine = around.Out.NewLine };
        var code = await parsed.InvokeAsync(Configuration(help, around));
        await around.Out.WriteAsync(LibraryWords.Help(help.ToString()));
        return code;
    }

    private static InvocationConfiguration Configuration(TextWriter output, Surroundings around) =>
        new() { Output = output, Error = around.Error, EnableDefaultExceptionHandler = false };

    private static void Say(Surroundings around, string problem) => around.Error.WriteLine("foundress: " + problem);

    private static RootCommand Root(Surroundings around)
    {
        var root = new RootCommand(CommandLineTexts.Description);
        root.Add(SpokenLanguage.Option());
        root.Options.OfType<HelpOption>().Single().Description = LibraryTexts.HelpOption;
        root.Options.OfType<VersionOption>().Single().Description = LibraryTexts.VersionOption;
        root.Add(JarCommand.Make(around));
        root.Add(CalibrateCommand.Make(around));
        root.Add(FallCommand.Make(around));
        root.Add(BroodCommand.Make(around));
        root.Add(PlanCommand.Make(around));
        root.Add(DrawCommand.Make(around));
        root.Add(ChartCommand.Make(around));
        root.Add(ShortlistCommand.Make(around));
        root.Add(AheadCommand.Make(around));
        root.Add(ChooseCommand.Make(around));
        root.Add(ImportCommand.Make(around));
        root.Add(ExportCommand.Make(around));
        root.Add(ForecastCommand.Make(around));
        root.Add(ProofCommand.Make(around));
        root.Add(DueCommand.Make(around));
        root.Add(RegisterCommand.Make(around));
        root.Add(MapCommand.Make(around));
        root.Add(LabelsCommand.Make(around));
        root.Add(ReportCommand.Make(around));
        root.Add(BackupCommand.Make(around));
        root.Add(RestoreCommand.Make(around));
        root.Add(TransferCommand.Make(around));
        root.Add(AccountCommand.Make(around));
        AddDatabase(root);
        return root;
    }

    // Whatever can be told the folder of the book can be told its database.
    private static void AddDatabase(Command command)
    {
        if (command.Options.Any(option => option.Name == CommonOptions.DataName))
            command.Add(CommonOptions.Database());
        foreach (var below in command.Subcommands)
            AddDatabase(below);
    }

    private static string Hint(ParseResult parsed)
    {
        var names = new List<string>();
        for (var at = parsed.CommandResult; at is not null; at = at.Parent as System.CommandLine.Parsing.CommandResult)
            names.Insert(0, at.Command is RootCommand ? "foundress" : at.Command.Name);
        return CommandLineTexts.FormatTryHelp(string.Join(' ', names));
    }
}
