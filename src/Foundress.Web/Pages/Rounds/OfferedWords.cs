using Foundress.Web.Kit;

namespace Foundress.Web.Pages.Rounds;

/// <summary>
/// Words that are offered where keepers may write their own as well: purposes of a round, and reasons. The book keeps them in
/// one form, whoever chose them, and every reader sees them in their own language.
/// </summary>
public static class OfferedWords
{
    /// <summary>Why a jar is struck out whose bees were counted later.</summary>
    public const string BeesCountedLater = "The bees were counted later";

    /// <summary>Why a jar is struck out that was corrected.</summary>
    public const string JarWrittenAgain = "Corrected: the jar was written again";

    /// <summary>What a round may be for.</summary>
    public static IReadOnlyList<Choice> Purposes =>
        [new("Regular count", RoundTexts.PurposeRegular), new("Before a control", RoundTexts.PurposeBefore), new("After a control", RoundTexts.PurposeAfter)];

    /// <summary>Why a colony may be passed over.</summary>
    public static IReadOnlyList<Choice> SkipReasons =>
    [
        new("Queen not found", RoundTexts.QueenNotFound), new("Dead or gone", RoundTexts.DeadOrGone),
        new("Too weak", RoundTexts.TooWeak), new("Cannot be opened now", RoundTexts.CannotBeOpened),
    ];

    private static IEnumerable<Choice> All =>
        [.. Purposes, .. SkipReasons, new(BeesCountedLater, RoundTexts.BeesCountedLater), new(JarWrittenAgain, RoundTexts.JarWrittenAgain)];

    /// <summary>What a reader is shown for a text of the book: words of their own language for what was offered, and what a keeper wrote as it is.</summary>
    /// <param name="stored">The text as the book has it.</param>
    public static string Shown(string stored) => All.FirstOrDefault(one => one.Value == stored)?.Label ?? stored;

    /// <summary>What the book keeps for a text on the screen.</summary>
    /// <param name="shown">The text as it was chosen or written.</param>
    public static string Stored(string shown) => All.FirstOrDefault(one => one.Label == shown)?.Value ?? shown;
}
