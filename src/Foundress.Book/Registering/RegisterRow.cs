using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.Registering;

/// <summary>One record of a use of a control, as an inspector reads it.</summary>
public sealed record RegisterRow
{
    /// <summary>The entry that recorded it.</summary>
    public required EntryId Entry { get; init; }

    /// <summary>What was recorded.</summary>
    public required ControlRecord Facts { get; init; }

    /// <summary>Whether it holds.</summary>
    public required RegisterState State { get; init; }

    /// <summary>Why it no longer holds; null when it does.</summary>
    public required RegisterStrike? Struck { get; init; }

    /// <summary>Names of the apiaries, by where the colonies stood on the first day.</summary>
    public required IReadOnlyList<string> Apiaries { get; init; }

    /// <summary>Where that is, in degrees (latitude, longitude); null where an apiary has no place.</summary>
    public required (double Latitude, double Longitude)? Place { get; init; }

    /// <summary>Names of the colonies.</summary>
    public required IReadOnlyList<string> Colonies { get; init; }

    /// <summary>Title of the control.</summary>
    public required string Control { get; init; }

    /// <summary>The active ingredient, or what was done; empty for a control that is not known.</summary>
    public required string Ingredient { get; init; }

    /// <summary>Whether a substance was given, as far as is known.</summary>
    public required bool IsSubstance { get; init; }

    /// <summary>What was written about its end.</summary>
    public required IReadOnlyList<RegisterEnd> Ends { get; init; }

    /// <summary>The last day it was at work in any colony; null while it is open or when nobody said.</summary>
    public required DateOnly? End { get; init; }

    /// <summary>Days from the first to the last, both counted; null while it is open.</summary>
    public int? Days => End is { } end ? end.DayNumber - Facts.Start.DayNumber + 1 : null;

    /// <summary>The withdrawal period in days, as recorded or as the keeper's own figures say; null when neither does.</summary>
    public required int? WithdrawalDays { get; init; }

    /// <summary>The first day after the withdrawal period; null when it is not known.</summary>
    public required DateOnly? WithdrawalOver { get; init; }

    /// <summary>The reason in words, jars first.</summary>
    public required string Reason { get; init; }

    /// <summary>What the jars after it say; empty for a row that does not hold.</summary>
    public required string Outcome { get; init; }

    /// <summary>Who wrote it down.</summary>
    public required string Author { get; init; }

    /// <summary>When it was written down.</summary>
    public required DateTimeOffset Written { get; init; }
}
