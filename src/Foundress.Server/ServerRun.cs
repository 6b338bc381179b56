using System.Net.Sockets;
using Foundress.Accounts;
using Foundress.Server.Accounts;
using Foundress.Server.Demo;
using Foundress.Server.Running;
using Foundress.Server.Security;
using Foundress.Storage;

namespace Foundress.Server;

/// <summary>The server from its command line to its end.</summary>
public static class ServerRun
{
    /// <summary>Runs until asked to stop.</summary>
    /// <param name="args">The command line.</param>
    /// <param name="demo">Where the invented records come from; null when there are none.</param>
    /// <param name="output">Gets one line with the address.</param>
    /// <param name="errors">Gets what went wrong.</param>
    /// <returns>One of <see cref="ServerExit"/>.</returns>
    public static async Task<int> RunAsync(string[] args, IDemoBook? demo, TextWriter output, TextWriter errors)
    {
        var running = RunningOptions.Take(args, Environment.GetEnvironmentVariable, out args, out var problem);
        var options = ServerOptions.TryParse(args, out var other);
        problem ??= other;
        options = options?.WithDatabase(Environment.GetEnvironmentVariable(ServerOptions.DatabaseVariable), out other);
        options = options is null ? null : options with { Running = running };
        problem ??= other;
        problem ??= ServerOptions.ProblemWithAddresses(
            Environment.GetEnvironmentVariable("ASPNETCORE_URLS") ?? Environment.GetEnvironmentVariable("DOTNET_URLS"));
        if (problem is null && options is { Demo: true } && demo is null)
            problem = "--demo: this build has no invented records.";
        if (problem is null && options is { Forecasts: true, Database: null })
            problem = "--forecasts: servers share this work through PostgreSQL; give --database too. With the book in a file every phone works out its own forecasts.";
        if (options is null || problem is not null)
        {
            await errors.WriteLineAsync(problem);
            return ServerExit.BadOption;
        }

        if (running.Health)
            return await HealthProbe.RunAsync(options.Port, output, errors);

        try
        {
            if (options.Reach.Problem(options.Reach.Accounts || await AccountsDatabase.ExistAsync(options.Data, options.Database)) is { } unreachable)
            {
                await errors.WriteLineAsync(unreachable);
                return ServerExit.BadOption;
            }

            await using var server = await FoundressServer.StartAsync(options, demo);
            await output.WriteLineAsync($"Foundress is at {server.Address} (data in {server.Store.Place}{(options.Demo ? $"; invented records from seed {demo!.Seed}" : string.Empty)})");
            await output.FlushAsync();
            if (server.Accounts is { } accounts && !await new Members(accounts).AnyAsync())
                await errors.WriteLineAsync(FirstAccount.Advice(options));
            await server.UntilStoppedAsync();
            return ServerExit.Done;
        }
        catch (CertificateException error)
        {
            await errors.WriteLineAsync(error.Message);
            return ServerExit.BadOption;
        }
        catch (Exception error) when (error is StorageException or AccountsException)
        {
            await errors.WriteLineAsync(error.Message);
            return ServerExit.NoBook;
        }
        catch (IOException error) when (error.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException)
        {
            await errors.WriteLineAsync(
                $"Port {options.Port} is taken by another program, perhaps by a Foundress that is already running. Stop it, or choose another port with --port.");
            return ServerExit.PortInUse;
        }
        catch (SocketException error) when (error.SocketErrorCode == SocketError.AccessDenied)
        {
            await errors.WriteLineAsync($"Port {options.Port} may not be used without special rights. Choose one above 1023 with --port.");
            return ServerExit.PortInUse;
        }
    }
}
