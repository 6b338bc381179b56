using System.CommandLine;
using System.CommandLine.Help;
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
        // What the command line names stands before the environment, for every command that opens the book.
        string? database = null;
        var parsed = Root(around with { Variable = name => name == CommonOptions.DatabaseVariable ? database ?? around.Variable(name) : around.Variable(name) }).Parse(args);
        if (parsed.CommandResult.Command.Options.Any(option => option.Name == CommonOptions.DatabaseName))
            database = parsed.GetValue<string?>(CommonOptions.DatabaseName);
        if (parsed.Errors.Count > 0 && parsed.Action is not HelpAction)
        {
            foreach (var error in parsed.Errors)
                around.Error.WriteLine("foundress: " + error.Message);
            around.Error.WriteLine(Hint(parsed));
            return ExitCodes.Usage;
        }

        try
        {
            var configuration = new InvocationConfiguration { Output = around.Out, Error = around.Error, EnableDefaultExceptionHandler = false };
            return await parsed.InvokeAsync(configuration);
        }
        catch (UsageException error)
        {
            around.Error.WriteLine("foundress: " + error.Message);
            return ExitCodes.Usage;
        }
        catch (ImportFormatException error)
        {
            around.Error.WriteLine("foundress: " + error.Message + " Nothing was imported.");
            return ExitCodes.Usage;
        }
        catch (Exception error) when (error is StorageException or IOException or UnauthorizedAccessException)
        {
            around.Error.WriteLine("foundress: " + error.Message);
            return ExitCodes.Storage;
        }
        catch (AccountsException error)
        {
            around.Error.WriteLine("foundress: " + error.Message);
            return error.Fault == AccountsFault.Store ? ExitCodes.Storage : ExitCodes.Usage;
        }
        catch (OperationCanceledException)
        {
            around.Error.WriteLine("foundress: stopped. What had been acknowledged is kept.");
            return ExitCodes.Unexpected;
        }
#pragma warning disable CA1031 // The last net: whatever it is, scripts must see exit code 4 and people a sentence.
        catch (Exception error)
#pragma warning restore CA1031
        {
            var traced = around.Variable(TraceVariable) is { Length: > 0 };
            around.Error.WriteLine($"foundress: a fault of the program: {(traced ? error.ToString() : error.Message)}");
            if (!traced)
                around.Error.WriteLine($"Set {TraceVariable}=1 and run it again to see where.");
            return ExitCodes.Unexpected;
        }
    }

    private static RootCommand Root(Surroundings around)
    {
        var root = new RootCommand(
            """
            Mites counted on bees, and what they mean.

            Start with one jar:
              foundress jar --mites 14 --bees 320

            Exit codes: 0 fine, 1 some rows were not imported, 2 wrong command or value,
            3 the book or a file could not be read or written, 4 a fault of the program.
            """);
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
        return $"Try: {string.Join(' ', names)} --help";
    }
}
