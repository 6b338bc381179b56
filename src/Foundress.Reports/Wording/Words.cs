using Foundress.Science.Judging;

namespace Foundress.Reports.Wording;

/// <summary>The words for standings and phases, the same on screen, in print and in reports.</summary>
public static class Words
{
    /// <summary>A standing in words; null is a jar whose method is on another scale than the line.</summary>
    public static string Of(Standing? standing) => standing switch
    {
        Standing.Below => "below the line",
        Standing.Unclear => "unclear",
        Standing.Above => "above the line",
        _ => "not comparable: another scale",
    };

    /// <summary>A standing in one or two words, for narrow columns.</summary>
    public static string Brief(Standing? standing) => standing switch
    {
        Standing.Below => "below",
        Standing.Unclear => "unclear",
        Standing.Above => "above",
        _ => "other scale",
    };

    /// <summary>A phase in words.</summary>
    public static string Of(SeasonPhase phase) => phase switch
    {
        SeasonPhase.DormantBroodless => "dormant, no brood",
        SeasonPhase.DormantWithBrood => "dormant, some brood",
        SeasonPhase.Increase => "increase",
        SeasonPhase.Peak => "peak",
        SeasonPhase.Decrease => "decrease",
        _ => throw new ArgumentOutOfRangeException(nameof(phase), phase, "Not a phase of the season."),
    };

    /// <summary>A phase's names from the longest to the shortest, for bands of any width.</summary>
    internal static ReadOnlySpan<string> Names(SeasonPhase phase) => phase switch
    {
        SeasonPhase.DormantBroodless => (string[])["dormant, no brood", "no brood"],
        SeasonPhase.DormantWithBrood => (string[])["dormant, some brood", "some brood", "brood"],
        SeasonPhase.Increase => (string[])["increase", "incr."],
        SeasonPhase.Decrease => (string[])["decrease", "decr."],
        _ => (string[])[Of(phase)],
    };
}
