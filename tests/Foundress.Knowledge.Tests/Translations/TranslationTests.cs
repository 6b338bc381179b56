using System.Globalization;
using System.Text.RegularExpressions;

namespace Foundress.Knowledge.Tests.Translations;

/// <summary>What the data files say to people stands in every language, whole and not out of date; and nothing else differs between languages.</summary>
public sealed partial class TranslationTests
{
    public static TheoryData<string> Languages => [.. KnowledgeBase.Languages.Where(language => language != "en")];

    [Theory]
    [MemberData(nameof(Languages))]
    public void In_EveryTextForPeople_IsInTheLanguage(string language)
    {
        var (english, other) = Both(language);
        var translations = SpokenTexts.All(language);
        var spoken = english.Zip(other).Where(pair => pair.First.Field is not null).ToArray();

        Assert.True(spoken.Length > 1000, $"only {spoken.Length} texts were found");
        var missing = spoken.Where(pair => !translations.ContainsKey((pair.First.Field!, pair.First.Value)) && !IsCitation(pair.First)).Select(pair => pair.First).ToArray();
        Assert.True(missing.Length == 0, $"Not translated, and no citation: {string.Join("\n", missing.Select(one => $"{one.Path}: {one.Field}: {one.Value}"))}");
        Assert.All(spoken, pair => Assert.Equal(translations.GetValueOrDefault((pair.First.Field!, pair.First.Value), pair.First.Value), pair.Second.Value));
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void In_WhatIsNoTextForPeople_IsTheSameInTheLanguage(string language)
    {
        var (english, other) = Both(language);
        var silent = english.Zip(other).Where(pair => pair.First.Field is null).ToArray();

        Assert.True(silent.Length > 2000, $"only {silent.Length} values were found");
        Assert.All(silent, pair => Assert.Equal(pair.First, pair.Second));
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void In_FiguresOfTheLog_KeepPlaceNumberUnitAndStatus(string language)
    {
        var (english, other) = (Knowledge("en"), Knowledge(language));

        Assert.Equal(
            english.AllFigures().Select(one => (one.Path, one.Figure with { Source = new("", one.Figure.Source.Status, one.Figure.Source.Doi) })),
            other.AllFigures().Select(one => (one.Path, one.Figure with { Source = new("", one.Figure.Source.Status, one.Figure.Source.Doi) })));
        Assert.Equal(
            english.AllSources().Select(one => (one.Path, one.Source.Status, one.Source.Doi)),
            other.AllSources().Select(one => (one.Path, one.Source.Status, one.Source.Doi)));
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void Translations_EveryEntry_BelongsToAWordingOfItsFile(string language)
    {
        foreach (var (file, translation) in SpokenTexts.Translations(language))
        {
            var wordings = DataFiles.All(DataFiles.Tree(file), "")
                .Where(one => one.Node is System.Text.Json.Nodes.JsonValue value && value.TryGetValue<string>(out _))
                .Select(one => (Field: one.Pointer.Split('/').Last(part => !part.All(char.IsAsciiDigit)), English: one.Node!.GetValue<string>()))
                .ToHashSet();
            var stale = SpokenTexts.Entries(translation).Where(entry => !wordings.Contains((entry.Field, entry.English))).ToArray();

            Assert.True(stale.Length == 0, $"{file} in {language}: the English words are not there (any more): {string.Join("\n", stale.Select(entry => $"{entry.Field}: {entry.English}"))}");
        }
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void Translations_EveryEntry_CanBeReached(string language)
    {
        var spoken = SpokenTexts.Of(Knowledge("en")).Where(one => one.Field is not null).Select(one => (one.Field!, one.Value)).ToHashSet();
        var names = Knowledge("en").Controls.Agents.SelectMany(agent => agent.Aliases).ToHashSet(StringComparer.Ordinal);

        Assert.All(SpokenTexts.All(language).Keys, key => Assert.True(key.Field == "aliases" ? names.Contains(key.English) : spoken.Contains(key), $"nobody is shown {key}"));
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void Translations_OneWordingInSeveralFiles_IsTranslatedAlike(string language)
    {
        var twice = SpokenTexts.Translations(language).Values.SelectMany(SpokenTexts.Entries).Distinct()
            .GroupBy(entry => (entry.Field, entry.English)).Where(group => group.Count() > 1).Select(group => group.Key);

        Assert.Empty(twice);
    }

    /// <summary>A figure in a caution or a citation is as dangerous to lose as a word.</summary>
    [Theory]
    [MemberData(nameof(Languages))]
    public void Translations_Numbers_AreThoseOfTheEnglishText(string language)
    {
        var culture = CultureInfo.GetCultureInfo(language).NumberFormat;
        foreach (var ((_, english), words) in SpokenTexts.All(language))
            Assert.True(Numbers(english, CultureInfo.InvariantCulture.NumberFormat).SequenceEqual(Numbers(words, culture)), $"{english}\n{words}");
    }

    [Fact]
    public void Translations_German_UsesItsOwnQuotationMarksAndSpacing() => Assert.All(SpokenTexts.All("de"), entry =>
    {
        Assert.DoesNotContain("\"", entry.Value, StringComparison.Ordinal);
        Assert.DoesNotContain("  ", entry.Value, StringComparison.Ordinal);
        Assert.Equal(entry.Value.Trim(), entry.Value);
        Assert.Equal(entry.Key.English.EndsWith('.'), entry.Value.EndsWith('.'));
    });

    [Fact]
    public void Citations_EveryOne_IsASourceThatIsNotTranslated()
    {
        var sources = Knowledge("en").AllSources().Select(one => one.Source.Text).ToHashSet(StringComparer.Ordinal);

        Assert.All(SpokenTexts.Citations, citation => Assert.Contains(citation, sources));
        foreach (var language in KnowledgeBase.Languages.Where(language => language != "en"))
            Assert.DoesNotContain(SpokenTexts.All(language).Keys, key => key.Field == "source" && SpokenTexts.Citations.Contains(key.English));
    }

    [Theory]
    [InlineData("Oxalic acid, vapour", "oxalic-acid-vapour")]
    [InlineData("oxalic acid sublimation", "oxalic-acid-vapour")]
    [InlineData("oxalsäure verdampft", "oxalic-acid-vapour")]
    [InlineData("Oxalsäuredampf", "oxalic-acid-vapour")]
    [InlineData("AMITRAZ-STREIFEN", "amitraz-strips")]
    [InlineData("Ameisensäure", "formic-acid-short formic-acid-long")]
    public void Named_InAnotherLanguage_KnowsItsOwnAndTheEnglishNames(string name, string ids) =>
        Assert.Equal(ids.Split(' '), Knowledge("de").Controls.Named(name).Select(agent => agent.Id));

    private static KnowledgeBase Knowledge(string language) => KnowledgeBase.In(CultureInfo.GetCultureInfo(language));

    private static (IReadOnlyList<Reached> English, IReadOnlyList<Reached> Other) Both(string language)
    {
        var (english, other) = (SpokenTexts.Of(Knowledge("en")), SpokenTexts.Of(Knowledge(language)));
        Assert.Equal(language, Knowledge(language).Language);
        Assert.Equal(english.Select(one => one.Path), other.Select(one => one.Path));
        return (english, other);
    }

    private static bool IsCitation(Reached text) => text.Field == "source" && SpokenTexts.Citations.Contains(text.Value);

    private static IEnumerable<string> Numbers(string text, NumberFormatInfo format)
    {
        var grouped = new Regex($@"(?<=\d){Regex.Escape(format.NumberGroupSeparator)}(?=\d{{3}}(?!\d))");
        return Number().Matches(grouped.Replace(text, "").Replace(format.NumberDecimalSeparator, ".", StringComparison.Ordinal))
            .Select(match => match.Value.TrimEnd('.')).Order(StringComparer.Ordinal);
    }

    [GeneratedRegex(@"\d[\d.]*")]
    private static partial Regex Number();
}
