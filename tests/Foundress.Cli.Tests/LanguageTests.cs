using System.Globalization;
using Foundress.Book.Demo;
using Foundress.Knowledge;
using Foundress.Storage;

namespace Foundress.Cli.Tests;

/// <summary>Which language a command speaks, and what stays the same in all of them.</summary>
public sealed class LanguageTests : IDisposable
{
    private static readonly string[] FourteenOn320 = ["jar", "--mites", "14", "--bees", "320", "--line", "3"];

    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    [Theory]
    [InlineData("en-GB", null, null, false)]
    [InlineData("de-DE", null, null, true)]
    [InlineData("fr-FR", null, null, false)]
    [InlineData("en-GB", "de", null, true)]
    [InlineData("de-DE", "en", null, false)]
    [InlineData("de-DE", " ", null, true)]
    [InlineData("en-GB", null, "de", true)]
    [InlineData("en-GB", null, "DE", true)]
    [InlineData("de-DE", "de", "en", false)]
    [InlineData("en-GB", "xx", "de", true)]
    public async Task Language_OfTheCommand_ComesBeforeTheVariableAndThatBeforeTheSystem(string system, string? variable, string? option, bool german)
    {
        _scene.System = CultureInfo.GetCultureInfo(system);
        if (variable is not null)
            _scene.Variables["FOUNDRESS_LANGUAGE"] = variable;
        var before = (CultureInfo.CurrentUICulture, CultureInfo.CurrentCulture);
        Assert.Equal(0, await _scene.RunAsync(option is null ? FourteenOn320 : [.. FourteenOn320, "--language=" + option]));
        Assert.Contains(german ? "14 Milben auf 320 Bienen:" : "Alcohol wash, 14 mites on 320 bees:", _scene.Out, StringComparison.Ordinal);
        // Other work in the same process keeps its own.
        Assert.Equal(before, (CultureInfo.CurrentUICulture, CultureInfo.CurrentCulture));
    }

    [Theory]
    [InlineData("en-GB", null, "xx", "--language 'xx': there is no such language. Known are en (English), de (Deutsch).")]
    [InlineData("de-DE", null, "xx", "--language „xx“: Diese Sprache gibt es hier nicht. Bekannt sind en (English), de (Deutsch).")]
    [InlineData("en-GB", "de", "xx", "--language „xx“: Diese Sprache gibt es hier nicht.")]
    [InlineData("en-GB", "yy", null, "FOUNDRESS_LANGUAGE 'yy': there is no such language. Known are en (English), de (Deutsch).")]
    public async Task Language_NotThere_IsRefusedAndThoseThereAreNamed(string system, string? variable, string? option, string expected)
    {
        _scene.System = CultureInfo.GetCultureInfo(system);
        if (variable is not null)
            _scene.Variables["FOUNDRESS_LANGUAGE"] = variable;
        Assert.Equal(2, await _scene.RunAsync(option is null ? FourteenOn320 : [.. FourteenOn320, "--language", option]));
        Assert.Contains(expected, _scene.Error, StringComparison.Ordinal);
        Assert.Equal("", _scene.Out);
    }

    // The language is told by --language; how numbers look in it, by the system when it is of that language.
    [Theory]
    [InlineData("en-US", "de", "4,4 Milben je 100 Bienen; Bereich zu 95 %: 2,4 bis 7,3.")]
    [InlineData("de-DE", "de", "4,4 Milben je 100 Bienen; Bereich zu 95 %: 2,4 bis 7,3.")]
    [InlineData("de-CH", "de", "4.4 Milben je 100 Bienen; Bereich zu 95 %: 2.4 bis 7.3.")]
    [InlineData("de-DE", "en", "4.4 mites per 100 bees; 95 % interval 2.4 to 7.3.")]
    public async Task Numbers_InSentences_AreOfTheLanguage(string system, string language, string expected)
    {
        _scene.System = CultureInfo.GetCultureInfo(system);
        Assert.Equal(0, await _scene.RunAsync([.. FourteenOn320, "--language", language]));
        Assert.Contains(expected, _scene.Out, StringComparison.Ordinal);
    }

    // 0.9 would be 9 by the rules of German.
    [Theory]
    [InlineData("de-DE", "en", "--tolerance '0.9': write a chance from 0.01 to 0.5, for example 0.2.")]
    [InlineData("de-DE", "de", "--tolerance „0.9“: Schreiben Sie eine Wahrscheinlichkeit von 0.01 bis 0.5, zum Beispiel 0.2.")]
    public async Task Numbers_Typed_HaveAPointWhateverTheSystem(string system, string language, string expected)
    {
        _scene.System = CultureInfo.GetCultureInfo(system);
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = _scene.System;
            Assert.Equal(2, await _scene.RunOnBookAsync("choose", "--tolerance", "0.9", "--language", language));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        Assert.Contains(expected, _scene.Error, StringComparison.Ordinal);
    }

    // Only numbers, ids and names: not a byte may differ.
    [Fact]
    public async Task Json_OfNumbers_IsTheSameInEveryLanguage()
    {
        var counted = _scene.Write("counted.csv", "observer,measure,bees\nAnna,half-cup-us,280\nAnna,half-cup-us,300\nAnna,half-cup-us,330\n");
        await SameAsync("chart", "--low", "1.5", "--high", "4.5", "--at", "3", "--json");
        await SameAsync("calibrate", counted, "--json");
        var jars = _scene.Write("jars.csv", "apiary,colony,date,method,mites,bees\nHome,1,2026-07-01,alcohol-wash,9,300\nHome,2,2026-07-01,alcohol-wash,7,0\n");
        Assert.Equal(1, await _scene.RunOnBookAsync("import", "jars", jars));
        await SameAsync("import", "jars", jars, "--check", "--json", "--data", _scene.Data);
        await SameAsync("map", "--data", _scene.Data);
    }

    [Fact]
    public async Task Csv_OfForecasts_IsTheSameInEveryLanguage()
    {
        var jars = _scene.Write("jars.csv", "apiary,colony,date,method,mites,bees\nHome,1,2026-06-01,alcohol-wash,9,300\n");
        var sites = _scene.Write("sites.csv", "apiary,latitude,longitude\nHome,48.5,11.25\n");
        var targets = _scene.Write("targets.csv", "apiary,colony,date,bees\nHome,1,2026-07-01,300\n");
        string[] written = [Path.Combine(_scene.Folder, "en.csv"), Path.Combine(_scene.Folder, "de.csv")];
        foreach (var path in written)
        {
            Assert.Equal(0, await _scene.RunAsync(
                "forecast", "--jars", jars, "--sites", sites, "--targets", targets, "--quantiles", "5", "--particles", "64", "--out", path, "--language", Path.GetFileNameWithoutExtension(path)));
        }

        var english = await File.ReadAllBytesAsync(written[0]);
        Assert.NotEmpty(english);
        Assert.Equal(english, await File.ReadAllBytesAsync(written[1]));
        Assert.Contains("1 Probe aus 1 Probe vorhergesagt", _scene.Out, StringComparison.Ordinal);
    }

    // What is kept in the book does not depend on who looked at it in which language.
    [Fact]
    public async Task Draw_KeptInGerman_IsWrittenByTheSameAuthor()
    {
        var jars = _scene.Write("jars.csv", "apiary,colony,date,method,mites,bees\nHome,1,2026-07-01,alcohol-wash,9,300\nHome,2,2026-07-01,alcohol-wash,7,300\n");
        Assert.Equal(0, await _scene.RunGermanAsync("import", "jars", jars, "--data", _scene.Data));
        Assert.Contains("2 Proben eingelesen, 0 schon im Buch, 0 abgelehnt; 1 neuer Stand, 2 neue Völker.", _scene.Out, StringComparison.Ordinal);
        Assert.Equal(0, await _scene.RunGermanAsync("draw", "--seed", "1", "--keep", "--data", _scene.Data));
        Assert.Contains("Home, 2 von 2 Völkern:", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("Die Runde steht im Buch.", _scene.Out, StringComparison.Ordinal);
        Assert.Equal(["command line", "import"], (await _scene.LedgerAsync()).Entries.Select(entry => entry.Author).Distinct().Order());
    }

    [Theory]
    [InlineData("Proben   aufhören, warten bis   aufhören, handeln ab   genau genug ab", "chart", "--low", "1", "--high", "3")]
    [InlineData("wahrer Befall 1,5 je 100: warten", "chart", "--low", "1.5", "--high", "4.5")]
    [InlineData("8,0 Milben am Tag", "fall", "--mites", "24", "--days", "3", "--date", "2026-07-14")]
    [InlineData("12,0 % der Zellen; Bereich zu 95 %: 6,4 bis 20,0.", "brood", "--cells", "100", "--infested", "12")]
    [InlineData("Home: 8 von 12 Völkern.", "plan", "--apiary", "Home=12", "--design")]
    [InlineData("  Völker  Mittel auf  findet eines darüber", "plan", "--apiary", "Home=12", "--design")]
    [InlineData("Startzahl 42: Dieselbe Startzahl", "draw", "--apiary", "Home=12", "--seed", "42")]
    public async Task Report_WithoutABook_IsGerman(string expected, params string[] args)
    {
        Assert.Equal(0, await _scene.RunGermanAsync(args));
        Assert.Contains(expected, _scene.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Heather bank, 2. Sept. 2026 bis 30. Sept. 2026: ", "due")]
    [InlineData("Bestandsbuch", "register")]
    [InlineData("Wartezeit: ", "register")]
    [InlineData("Ausgeschlossen:", "choose", "--apiary", "Mill orchard")]
    [InlineData("Volk          Zunahme je Tag", "shortlist")]
    [InlineData("Ohne eine Probe in dieser Zeit: ", "shortlist", "--since", "2026-08-25")]
    public async Task Report_OfTheBook_IsGerman(string expected, params string[] args)
    {
        using (var store = await BookStore.OpenAsync(_scene.Data))
            await store.AppendAsync("demo", DemoBook.Entries(KnowledgeBase.Load(), DemoBook.DefaultSeed, new DateOnly(2026, 9, 1)));
        Assert.Equal(0, await _scene.RunGermanAsync([.. args, "--operation", "demo", "--data", _scene.Data]));
        Assert.Contains(expected, _scene.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Account_InGerman_NamesRolesInGerman()
    {
        Assert.Equal(0, await _scene.RunGermanAsync("account", "add", "Anna", "--helper", "--administrator", "--operation", "north", "--data", _scene.Data));
        Assert.StartsWith("Anna wird Helfer/in in „north“ und Verwalter/in, wenn dieser Link einmal geöffnet wird, vor 8. Sep", _scene.Out, StringComparison.Ordinal);
        Assert.Contains(" 2026, 09:00 UTC:\n", _scene.Out, StringComparison.Ordinal);
        Assert.Equal(0, await _scene.RunGermanAsync("account", "list", "--data", _scene.Data));
        Assert.Equal("Noch hat niemand einen Zugang.\n", _scene.Out);
    }

    private async Task SameAsync(params string[] args)
    {
        var code = await _scene.RunAsync(args);
        var english = _scene.Out;
        Assert.NotEmpty(english);
        Assert.Equal(code, await _scene.RunGermanAsync(args));
        Assert.Equal(english, _scene.Out);
    }
}
