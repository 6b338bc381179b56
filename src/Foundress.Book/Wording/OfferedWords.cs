namespace Foundress.Book.Wording;

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

    /// <summary>Why an entry is struck out that its writer took back at once.</summary>
    public const string TakenBack = "Taken back right after it was written";

    /// <summary>Why a colony is passed over whose queen may be among the bees of a jar.</summary>
    public const string QueenNotFound = "Queen not found";

    /// <summary>Why a strike is struck out, or something put off is due again.</summary>
    public const string BroughtBack = "Brought back";

    /// <summary>What a round may be for: as the book keeps it, and as the reader is shown it.</summary>
    public static IReadOnlyList<(string Stored, string Shown)> Purposes =>
        [("Regular count", OfferedTexts.PurposeRegular), ("Before a control", OfferedTexts.PurposeBefore), ("After a control", OfferedTexts.PurposeAfter)];

    /// <summary>Why a colony may be passed over: as the book keeps it, and as the reader is shown it.</summary>
    public static IReadOnlyList<(string Stored, string Shown)> SkipReasons =>
    [
        (QueenNotFound, OfferedTexts.QueenNotFound), ("Dead or gone", OfferedTexts.DeadOrGone),
        ("Too weak", OfferedTexts.TooWeak), ("Cannot be opened now", OfferedTexts.CannotBeOpened),
    ];

    private static IEnumerable<(string Stored, string Shown)> All =>
    [
        .. Purposes, .. SkipReasons, (BeesCountedLater, OfferedTexts.BeesCountedLater), (JarWrittenAgain, OfferedTexts.JarWrittenAgain),
        (TakenBack, OfferedTexts.TakenBack), (BroughtBack, OfferedTexts.BroughtBack),
    ];

    /// <summary>What a reader is shown for a text of the book: words of their own language for what was offered, and what a keeper wrote as it is.</summary>
    /// <param name="stored">The text as the book has it.</param>
    public static string Shown(string stored) => All.FirstOrDefault(one => one.Stored == stored).Shown ?? stored;

    /// <summary>What the book keeps for a text on the screen.</summary>
    /// <param name="shown">The text as it was chosen or written.</param>
    public static string Stored(string shown) => All.FirstOrDefault(one => one.Shown == shown).Stored ?? shown;
}
