using System.Text.RegularExpressions;
using Foundress.Book.Wording;

namespace Foundress.Architecture.Tests.Texts;

/// <summary>Every language says everything, with the same numbers and names in it.</summary>
public sealed partial class ResourceTests
{
    private static readonly IReadOnlyList<ResourceFile> English = [.. ResourceFile.All.Where(file => file.Language is null)];

    public static TheoryData<string> OtherLanguages => [.. Languages.All.Where(language => language != Languages.English).Select(language => language.Code)];

    [Theory]
    [MemberData(nameof(OtherLanguages))]
    public void Language_EveryFile_HasTheTextsOfTheEnglishOne(string language)
    {
        Assert.NotEmpty(English);
        foreach (var file in English)
        {
            var other = ResourceFile.All.SingleOrDefault(one => one.English == file.Path && one.Language == language);
            Assert.True(other is not null, $"{file.Path} has no {language}.");
            Assert.True(file.Texts.Keys.Order().SequenceEqual(other.Texts.Keys.Order()),
                $"{other.Path}: missing {string.Join(", ", file.Texts.Keys.Except(other.Texts.Keys))}; left over {string.Join(", ", other.Texts.Keys.Except(file.Texts.Keys))}");
        }
    }

    [Fact]
    public void Files_Language_IsOneTheProgramKnows() =>
        Assert.Empty(ResourceFile.All.Where(file => file.Language is { } code && Languages.All.All(language => language.Code != code)).Select(file => file.Path));

    [Fact]
    public void Texts_Translated_HaveTheSamePlaceholders()
    {
        foreach (var (key, english, other, path) in Pairs())
            Assert.True(Names(english).SetEquals(Names(other)), $"{path}, {key}: “{english}” and “{other}” name different things.");
    }

    // The class made of the English file takes its parameters from the names, so only plain names are understood.
    [Fact]
    public void Texts_Braces_AreOfPlainNames()
    {
        foreach (var file in ResourceFile.All)
        {
            foreach (var (key, text) in file.Texts)
                Assert.False(PlainName().Replace(text, string.Empty).AsSpan().ContainsAny('{', '}'), $"{file.Path}, {key}: “{text}”");
        }
    }

    [Fact]
    public void Texts_WithForms_HaveOneForEachRuleOfTheirLanguage()
    {
        // Of both languages so far: one and other (Unicode CLDR 46).
        const int Forms = 2;
        foreach (var (key, english, other, path) in Pairs())
        {
            var parted = english.Contains(Plural.Mark, StringComparison.Ordinal) || other.Contains(Plural.Mark, StringComparison.Ordinal);
            var wanted = parted ? Forms : 1;
            Assert.True(english.Split(Plural.Mark).Length == wanted && other.Split(Plural.Mark).Length == wanted, $"{path}, {key}: “{english}”, “{other}”");
        }
    }

    [Fact]
    public void Texts_Marks_AreKeptInTranslation()
    {
        foreach (var (key, english, other, path) in Pairs())
        {
            foreach (var mark in new[] { "[[", "]]", "\n" })
                Assert.True(english.Split(mark).Length == other.Split(mark).Length, $"{path}, {key}: “{english}”, “{other}”");
        }
    }

    [Fact]
    public void Texts_Everyone_SaysSomething() =>
        Assert.Empty(ResourceFile.All.SelectMany(file => file.Texts.Where(text => string.IsNullOrWhiteSpace(text.Value)).Select(text => $"{file.Path}, {text.Key}")));

    // A text nobody shows is translated for nothing.
    [Fact]
    public void Texts_Everyone_IsUsed()
    {
        foreach (var project in English.GroupBy(file => file.Project))
        {
            var used = new HashSet<string>(SourceTree.Files($"src/{project.Key}", ".cs", ".razor").SelectMany(file => Use().Matches(file.Text)).Select(match => match.Groups[1].Value + "." + match.Groups[2].Value));
            Assert.Empty(project.SelectMany(file => file.Texts.Keys.Where(key => !used.Contains($"{file.Class}.{key}") && !used.Contains($"{file.Class}.Format{key}")).Select(key => $"{file.Path}, {key}")));
        }
    }

    // Two classes of one name would make the check above blind.
    [Fact]
    public void Files_Names_AreTheirOwn() =>
        Assert.Empty(English.GroupBy(file => (file.Project, file.Class)).Where(group => group.Count() > 1).Select(group => group.Key.Class));

    private static IEnumerable<(string Key, string English, string Other, string Path)> Pairs() =>
        from other in ResourceFile.All
        where other.Language is not null
        from text in English.Single(file => file.Path == other.English).Texts
        where other.Texts.ContainsKey(text.Key)
        select (text.Key, text.Value, other.Texts[text.Key], other.Path);

    private static HashSet<string> Names(string text) => [.. PlainName().Matches(text).Select(match => match.Value)];

    [GeneratedRegex(@"\{[a-z]\w*\}")]
    private static partial Regex PlainName();

    [GeneratedRegex(@"\b(\w+Texts)\.@?(\w+)")]
    private static partial Regex Use();
}
