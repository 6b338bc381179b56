using System.Globalization;
using System.Text.Json;
using Foundress.Book;
using Foundress.Cli.Running;
using Foundress.Storage;
using Microsoft.Extensions.Time.Testing;

namespace Foundress.Cli.Tests;

/// <summary>Runs commands without a process, in a folder of their own, on 1 September 2026.</summary>
internal sealed class CliScene : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("foundress-cli-");

    internal string Folder => _folder.FullName;

    /// <summary>The folder of the book, made by the first command that writes.</summary>
    internal string Data => Path.Combine(Folder, "book");

    internal Dictionary<string, string> Variables { get; } = [];

    /// <summary>The culture of the system the commands run on, whatever this one's is.</summary>
    internal CultureInfo System { get; set; } = CultureInfo.InvariantCulture;

    internal string Out { get; private set; } = "";

    internal string Error { get; private set; } = "";

    internal async Task<int> RunAsync(params string[] args)
    {
        using var output = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        using var error = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        var time = new FakeTimeProvider(new DateTimeOffset(2026, 9, 1, 9, 0, 0, TimeSpan.Zero));
        var around = new Surroundings(
            output, error, time, Variables.GetValueOrDefault, () => 4711, "cli-test", System, System);
        var code = await CommandLine.RunAsync(args, around);
        (Out, Error) = (output.ToString(), error.ToString());
        return code;
    }

    /// <summary>Runs one command in German.</summary>
    internal Task<int> RunGermanAsync(params string[] args) => RunAsync([.. args, "--language", "de"]);

    /// <summary>Runs a command on this scene's book.</summary>
    internal Task<int> RunOnBookAsync(params string[] args) => RunAsync([.. args, "--data", Data]);

    internal JsonElement Json()
    {
        using var document = JsonDocument.Parse(Out);
        return document.RootElement.Clone();
    }

    internal string Write(string name, string text)
    {
        var path = Path.Combine(Folder, name);
        File.WriteAllText(path, text);
        return path;
    }

    internal async Task<Ledger> LedgerAsync()
    {
        using var store = await BookStore.OpenAsync(Data);
        var ledger = new Ledger();
        await foreach (var entry in store.ReadAllAsync("home"))
            ledger.Add([entry]);
        return ledger;
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
