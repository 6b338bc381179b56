using Foundress.Science.Judging;

namespace Foundress.Reports.Wording;

/// <summary>The words for standings and phases, the same on screen, in print and in reports.</summary>
public static class Words
{
    /// <summary>A standing in words; null is a jar whose method is on another scale than the line.</summary>
    public static string Of(Standing? standing) => standing switch
    {
        Standing.Below => WordTexts.BelowTheLine,
        Standing.Unclear => WordTexts.Unclear,
        Standing.Above => WordTexts.AboveTheLine,
        _ => WordTexts.NotComparable,
    };

    /// <summary>A standing in one or two words, for narrow columns.</summary>
    public static string Brief(Standing? standing) => standing switch
    {
        Standing.Below => WordTexts.Below,
        Standing.Unclear => WordTexts.Unclear,
        Standing.Above => WordTexts.Above,
        _ => WordTexts.OtherScale,
    };

    /// <summary>A phase in words.</summary>
    public static string Of(SeasonPhase phase) => phase switch
    {
        SeasonPhase.DormantBroodless => WordTexts.DormantNoBrood,
        SeasonPhase.DormantWithBrood => WordTexts.DormantSomeBrood,
        SeasonPhase.Increase => WordTexts.Increase,
        SeasonPhase.Peak => WordTexts.Peak,
        SeasonPhase.Decrease => WordTexts.Decrease,
        _ => throw new ArgumentOutOfRangeException(nameof(phase), phase, "Not a phase of the season."),
    };

    /// <summary>A phase's names from the longest to the shortest, for bands of any width.</summary>
    internal static ReadOnlySpan<string> Names(SeasonPhase phase) => phase switch
    {
        SeasonPhase.DormantBroodless => (string[])[WordTexts.DormantNoBrood, WordTexts.DormantNoBroodShort],
        SeasonPhase.DormantWithBrood => (string[])[WordTexts.DormantSomeBrood, WordTexts.DormantSomeBroodShort, WordTexts.DormantSomeBroodShortest],
        SeasonPhase.Increase => (string[])[WordTexts.Increase, WordTexts.IncreaseShort],
        SeasonPhase.Decrease => (string[])[WordTexts.Decrease, WordTexts.DecreaseShort],
        _ => (string[])[Of(phase), WordTexts.PeakShort],
    };
}
