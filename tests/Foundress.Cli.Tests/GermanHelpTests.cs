using System.Text.RegularExpressions;

namespace Foundress.Cli.Tests;

/// <summary>Help and the messages about wrong words in German, those of the library for command lines too.</summary>
public sealed partial class GermanHelpTests : IDisposable
{
    // What the library, or a text left behind, would say in English.
    private static readonly string[] English =
    [
        "Description:", "Usage:", "Arguments:", "Options:", "Commands:", "Example", "(REQUIRED)", "[default", "[options]", "[command]", "Show ", "Without ", " the ", " and ", " of ",
    ];

    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    [Theory]
    [InlineData("")]
    [InlineData("jar")]
    [InlineData("calibrate")]
    [InlineData("fall")]
    [InlineData("brood")]
    [InlineData("plan")]
    [InlineData("draw")]
    [InlineData("chart")]
    [InlineData("shortlist")]
    [InlineData("ahead")]
    [InlineData("choose")]
    [InlineData("import")]
    [InlineData("import jars")]
    [InlineData("import controls")]
    [InlineData("import book")]
    [InlineData("export")]
    [InlineData("forecast")]
    [InlineData("proof")]
    [InlineData("due")]
    [InlineData("register")]
    [InlineData("map")]
    [InlineData("labels")]
    [InlineData("report")]
    [InlineData("backup")]
    [InlineData("restore")]
    [InlineData("transfer")]
    [InlineData("account")]
    [InlineData("account add")]
    [InlineData("account link")]
    [InlineData("account list")]
    [InlineData("account close")]
    public async Task Help_EveryCommand_IsGermanWithTheSameOptionsAndExamples(string command)
    {
        string[] args = [.. command.Split(' ', StringSplitOptions.RemoveEmptyEntries), "--help"];
        Assert.Equal(0, await _scene.RunAsync(args));
        var english = _scene.Out;
        Assert.Contains("Description:", english, StringComparison.Ordinal);
        Assert.Equal(0, await _scene.RunGermanAsync(args));
        Assert.Contains("Beschreibung:", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("Aufruf:", _scene.Out, StringComparison.Ordinal);
        foreach (var words in English)
            Assert.DoesNotContain(words, _scene.Out, StringComparison.Ordinal);
        Assert.Equal(Names(english), Names(_scene.Out));
        Assert.Equal(Examples(english), Examples(_scene.Out));
    }

    // A shorter word in the first column must not move the second.
    [Fact]
    public async Task Help_Columns_StayInLine()
    {
        Assert.Equal(0, await _scene.RunGermanAsync("chart", "--help"));
        var rows = _scene.Out.Split('\n').SkipWhile(line => line != "Optionen:").Skip(1).TakeWhile(line => line.Length > 0).ToArray();
        Assert.Contains(rows, row => row.Contains("(NÖTIG)", StringComparison.Ordinal));
        Assert.Single(rows.Select(row => Column().Match(row).Length).Distinct());
    }

    [Theory]
    [InlineData("Es fehlt ein Befehl.", "")]
    [InlineData("Befehl oder Argument „jars“ ist nicht bekannt.", "jars")]
    [InlineData("Befehl oder Argument „--mite“ ist nicht bekannt.", "jar", "--mite", "3")]
    [InlineData("Der Option „--mites“ fehlt ihr Wert.", "jar", "--mites")]
    [InlineData("Die Option „--high“ ist nötig.", "chart", "--low", "1")]
    [InlineData("Die Option „--low“ nimmt nur einen Wert, angegeben sind 2.", "chart", "--low", "1", "--low", "2", "--high", "3")]
    [InlineData("Der Wert „x“ ist nicht bekannt. Möglich sind:", "due", "--format", "x")]
    [InlineData("Der Wert „x“ passt nicht zur Option „--days“", "ahead", "--days", "x")]
    [InlineData("Dem Befehl „export“ fehlt das Argument „DATEI“.", "export")]
    [InlineData("Die Option --version steht nur allein.", "--version", "jar")]
    [InlineData("Es gibt keine Datei „nowhere“ mit Argumenten.", "@nowhere")]
    public async Task Run_WrongWords_AreNamedInGerman(string expected, params string[] args)
    {
        _scene.Variables["FOUNDRESS_LANGUAGE"] = "de";
        Assert.Equal(2, await _scene.RunAsync([.. args.Where(word => word.Length > 0)]));
        Assert.Contains("foundress: " + expected, _scene.Error, StringComparison.Ordinal);
        Assert.Contains("Versuchen Sie: foundress ", _scene.Error, StringComparison.Ordinal);
        Assert.All(_scene.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries), line => Assert.DoesNotMatch("Option '|Required|Unrecognized|recognized|Must|expects|Try:", line));
    }

    [Theory]
    [InlineData("--mites fehlt: Geben Sie die Zahl der gezählten Milben an", "jar", "--bees", "300")]
    [InlineData("--lines „none“: Diesen Satz von Schwellen gibt es nicht.", "jar", "--mites", "3", "--bees", "300", "--lines", "none")]
    [InlineData("--from 2026-05-01 liegt nach --to 2026-04-01: Vertauschen Sie die beiden.", "report", "--from", "2026-05-01", "--to", "2026-04-01")]
    [InlineData("Die Datei „nowhere.csv“ ist nicht zu lesen: Es gibt keine Datei /", "import", "jars", "nowhere.csv")]
    [InlineData("liegt noch kein Buch.", "due")]
    [InlineData("Es gibt keine Datei „nowhere.db“. Nennen Sie die Sicherung", "restore", "nowhere.db")]
    [InlineData("Sagen Sie, was die Person werden soll", "account", "add", "Anna")]
    [InlineData("Nennen Sie die PostgreSQL-Datenbank, in die kopiert wird", "transfer")]
    public async Task Run_WrongValue_IsNamedInGerman(string expected, params string[] args)
    {
        _scene.Variables["FOUNDRESS_DATA"] = _scene.Data;
        Assert.Equal(2, await _scene.RunGermanAsync(args));
        Assert.Contains(expected, _scene.Error, StringComparison.Ordinal);
        Assert.Equal("", _scene.Out);
    }

    private static IEnumerable<string> Names(string help) => OptionName().Matches(help[Math.Max(help.IndexOf("Option", StringComparison.Ordinal), 0)..]).Select(match => match.Value).Distinct().Order();

    private static IEnumerable<string> Examples(string help) => help.Split('\n').Select(line => line.Trim())
        .Where(line => line.StartsWith("foundress ", StringComparison.Ordinal) && !line.Contains('[', StringComparison.Ordinal) && !line.Contains('<', StringComparison.Ordinal))
        .Select(line => line.Replace("Ihr Name", "Your name", StringComparison.Ordinal));

    [GeneratedRegex(@"(?<![\w-])--[a-z-]+")]
    private static partial Regex OptionName();

    [GeneratedRegex(@"^  \S.*?\s{2,}")]
    private static partial Regex Column();
}
