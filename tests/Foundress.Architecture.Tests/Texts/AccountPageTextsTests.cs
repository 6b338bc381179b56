using System.Text.RegularExpressions;
using Foundress.Book.Wording;

namespace Foundress.Architecture.Tests.Texts;

/// <summary>The page on people and devices keeps its texts in scripts, which no compiler ties together.</summary>
public sealed partial class AccountPageTextsTests
{
    private const string Scripts = "src/Foundress.Web/wwwroot/js/";

    private static readonly IReadOnlyList<string> English = Names("en");

    [Fact]
    public void Languages_All_HaveTheSameTexts()
    {
        Assert.NotEmpty(English);
        foreach (var language in Languages.All)
            Assert.Equal(English, Names(language.Code));
    }

    [Fact]
    public void Texts_All_AreUsedAndThere()
    {
        var used = new[] { "account", "people", "page", "passkey" }.SelectMany(name => Use().Matches(Read(name)).Select(match => match.Groups[1].Value)).ToHashSet();
        Assert.Empty(used.Except(English));
        // Only other texts use it: roles in the middle of their sentences.
        Assert.Equal(["roles"], English.Except(used));
    }

    [Fact]
    public void Page_WordsBeforeItsScripts_AreInEveryLanguage()
    {
        var page = File.ReadAllText(Path.Combine(SourceTree.Root.FullName, "src/Foundress.Web/wwwroot/account.html"));
        foreach (var language in Languages.All.Where(language => language != Languages.English))
            Assert.Equal(3, page.Split($" data-{language.Code}=\"").Length - 1);
    }

    // Three words in a row, or a capital at the beginning of one, are for people.
    [Fact]
    public void Scripts_OfThePage_HoldNoTexts()
    {
        foreach (var name in new[] { "account", "people", "page", "passkey" })
            Assert.Empty(Quoted().Matches(Remark().Replace(Read(name), string.Empty)).Select(match => match.Value).Where(text => Prose().IsMatch(text)).Select(text => $"{name}: {text}"));
    }

    private static IReadOnlyList<string> Names(string language) => [.. Name().Matches(Read("texts." + language)).Select(match => match.Groups[1].Value)];

    private static string Read(string name) => File.ReadAllText(Path.Combine(SourceTree.Root.FullName, $"{Scripts}{name}.js"));

    [GeneratedRegex(@"^  (\w+)(?:: |,$)", RegexOptions.Multiline)]
    private static partial Regex Name();

    [GeneratedRegex(@"\btexts\.(?!(?:js|en|de)\b)(\w+)")]
    private static partial Regex Use();

    [GeneratedRegex(@"^\s*(?://|/\*).*$|(?<=\s)//.*$", RegexOptions.Multiline)]
    private static partial Regex Remark();

    [GeneratedRegex("'[^'\n]*'|`[^`\n]*`")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"^.[A-Z][a-z]+(?: |.$)|\b[a-z]+ [a-z]+ [a-z]{2,}\b")]
    private static partial Regex Prose();
}
