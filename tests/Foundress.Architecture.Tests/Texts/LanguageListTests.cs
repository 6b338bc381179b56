using Foundress.Book.Wording;
using Foundress.Knowledge;

namespace Foundress.Architecture.Tests.Texts;

/// <summary>The list of languages stands in four places that no compiler ties together.</summary>
public sealed class LanguageListTests
{
    private static readonly IReadOnlyList<string> Spoken = [.. Languages.All.Select(language => language.Code).Order()];
    private static readonly IReadOnlyList<string> Others = [.. Spoken.Where(code => code != Languages.English.Code)];

    [Fact]
    public void Facts_Languages_AreThoseOfTheTexts() => Assert.Equal(Spoken, KnowledgeBase.Languages.Order());

    [Fact]
    public void Page_Languages_AreThoseOfTheTexts() =>
        Assert.Contains($"const others = [{string.Join(", ", Others.Select(code => $"'{code}'"))}];", Read("src/Foundress.Web/wwwroot/js/chosen.js"), StringComparison.Ordinal);

    [Fact]
    public void Build_Languages_AreThoseOfTheTexts() =>
        Assert.Contains($"<SatelliteResourceLanguages>en;{string.Join(';', Others)}</SatelliteResourceLanguages>", Read("eng/Common.props"), StringComparison.Ordinal);

    [Fact]
    public void FirstPage_WordsBeforeTheProgram_AreInEveryLanguage()
    {
        var page = Read("src/Foundress.Web/wwwroot/index.html");
        var counts = Others.Select(code => page.Split($" data-{code}=\"").Length - 1).Distinct().ToArray();
        Assert.True(counts is [> 0], string.Join(", ", counts));
    }

    private static string Read(string path) => File.ReadAllText(Path.Combine(SourceTree.Root.FullName, path));
}
