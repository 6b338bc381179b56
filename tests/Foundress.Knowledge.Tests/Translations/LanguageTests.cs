using System.Globalization;
using System.Reflection;
using System.Runtime.Loader;
using System.Text;

namespace Foundress.Knowledge.Tests.Translations;

/// <summary>Which language a reader gets, also when several read at once or the texts of a language are not installed.</summary>
public sealed class LanguageTests
{
    [Theory]
    [InlineData("", "en")]
    [InlineData("en-US", "en")]
    [InlineData("de", "de")]
    [InlineData("de-AT", "de")]
    [InlineData("fr-CA", "en")]
    public void In_Culture_GivesItsLanguageOrEnglish(string culture, string language)
    {
        var knowledge = KnowledgeBase.In(CultureInfo.GetCultureInfo(culture));

        Assert.Equal(language, knowledge.Language);
        Assert.Same(KnowledgeBase.In(CultureInfo.GetCultureInfo(language)), knowledge);
        Assert.Equal(language == "de" ? "Amitraz-Streifen" : "Amitraz strips", knowledge.Controls.Agents["amitraz-strips"].Title);
    }

    [Fact]
    public void Load_WithoutCulture_TakesTheReadersLanguageNotThatOfNumbers()
    {
        var reader = (CultureInfo.CurrentUICulture, CultureInfo.CurrentCulture);
        try
        {
            (CultureInfo.CurrentUICulture, CultureInfo.CurrentCulture) = (CultureInfo.GetCultureInfo("de-CH"), CultureInfo.GetCultureInfo("en-GB"));
            Assert.Equal("de", KnowledgeBase.Load().Language);
            (CultureInfo.CurrentUICulture, CultureInfo.CurrentCulture) = (CultureInfo.GetCultureInfo("en-GB"), CultureInfo.GetCultureInfo("de-CH"));
            Assert.Equal("en", KnowledgeBase.Load().Language);
        }
        finally
        {
            (CultureInfo.CurrentUICulture, CultureInfo.CurrentCulture) = reader;
        }
    }

    [Fact]
    public void Load_FirstCallsOfTwoLanguagesAtOnce_GiveEachReaderTheirLanguageFromOneReading()
    {
        using var program = new Copy(withGerman: true);
        var load = program.Loader;
        string[] readers = [.. Enumerable.Range(0, 16).Select(i => i % 2 == 0 ? "de-DE" : "en-GB")];
        var read = new object[readers.Length];
        using var start = new Barrier(readers.Length);
        var threads = readers.Select((reader, i) => new Thread(() =>
        {
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(reader);
            start.SignalAndWait();
            read[i] = load();
        })).ToList();
        threads.ForEach(thread => thread.Start());
        threads.ForEach(thread => thread.Join());

        Assert.All(readers.Zip(read), pair => Assert.Equal(pair.First[..2], Copy.LanguageOf(pair.Second)));
        Assert.Equal(2, read.Distinct(ReferenceEqualityComparer.Instance).Count());
    }

    [Fact]
    public void Load_TextsOfTheLanguageNotInstalled_GivesEnglish()
    {
        using var program = new Copy(withGerman: false);
        var before = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("de-DE");
            var german = program.Loader();
            Assert.Equal("en", Copy.LanguageOf(german));
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("en-GB");
            Assert.Same(program.Loader(), german);
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    [Fact]
    public void Read_TextThatIsNotTranslated_StaysEnglishBesideOthersThatAre()
    {
        var knowledge = Read(file => file == "climates.json" ? """{ "title": { "Cold": "Kalt" } }""" : null);

        Assert.Equal("Kalt", knowledge.Climates["cold"].Title);
        Assert.Equal("Temperate", knowledge.Climates["temperate"].Title);
        Assert.Equal("Alcohol wash", knowledge.Methods["alcohol-wash"].Name);
    }

    [Theory]
    [InlineData("{", "The translation of climates.json is not well-formed JSON: ")]
    [InlineData("""{ "title": { "Cold": "Kalt", "Cold": "Eisig" } }""", "The translation of climates.json is not well-formed JSON: ")]
    [InlineData("[]", "The translation of climates.json cannot be used: ")]
    [InlineData("""{ "Cold": "Kalt" }""", "The translation of climates.json cannot be used: ")]
    [InlineData("""{ "title": { "Cold": 3 } }""", "The translation of climates.json cannot be used: ")]
    [InlineData("""{ "title": { "Cold": "" } }""", "The translation of climates.json cannot be used: \"title\" gives no words for \"Cold\".")]
    public void Read_TranslationThatIsNone_IsRefusedByItsFile(string content, string message) => Assert.StartsWith(
        message, Assert.Throws<KnowledgeException>(() => Read(file => file == "climates.json" ? content : null)).Message, StringComparison.Ordinal);

    [Fact]
    public void Name_EveryUnit_IsItsOwnNameInEnglishAndWordsInOtherLanguages()
    {
        string[] signs = [Units.Percent, Units.Minutes, Units.Metres, Units.DegreesCelsius, Units.Grams, Units.One];
        var before = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("en-GB");
            Assert.All(Units.All, unit => Assert.Equal(unit, Units.Name(unit)));
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.All(Units.All, unit => Assert.Equal(signs.Contains(unit), unit == Units.Name(unit)));
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    private static KnowledgeBase Read(Func<string, string?> translation) => KnowledgeBase.Read(
        file => new MemoryStream(Encoding.UTF8.GetBytes(DataFiles.Text(file))), "de", file => translation(file) is { } text ? new MemoryStream(Encoding.UTF8.GetBytes(text)) : null);

    /// <summary>The knowledge loaded a second time, so that nothing of it has been read yet, with or without its German texts.</summary>
    private sealed class Copy(bool withGerman) : AssemblyLoadContext(isCollectible: true), IDisposable
    {
        public Func<object> Loader
        {
            get
            {
                var type = LoadFromAssemblyPath(typeof(KnowledgeBase).Assembly.Location).GetType(typeof(KnowledgeBase).FullName!)!;
                return type.GetMethod(nameof(KnowledgeBase.Load), Type.EmptyTypes)!.CreateDelegate<Func<object>>();
            }
        }

        public static string LanguageOf(object knowledge) =>
            (string)knowledge.GetType().GetProperty(nameof(KnowledgeBase.Language))!.GetValue(knowledge)!;

        public void Dispose() => Unload();

        protected override Assembly? Load(AssemblyName name)
        {
            if (string.IsNullOrEmpty(name.CultureName))
                return null;
            var satellite = Path.Combine(AppContext.BaseDirectory, name.CultureName, name.Name + ".dll");
            return withGerman ? LoadFromAssemblyPath(satellite) : throw new FileNotFoundException("Left out for this test.", satellite);
        }
    }
}
