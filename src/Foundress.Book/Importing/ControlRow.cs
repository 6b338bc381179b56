using System.Globalization;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Wording;

namespace Foundress.Book.Importing;

/// <summary>A row of a file of controls that was understood.</summary>
internal sealed record ControlRow(
    int Row, int Line, IReadOnlyList<string> Fields, string Apiary, IReadOnlyList<ColonyId> Colonies, string Agent, DateOnly Start, DateOnly? End, ControlEnding Ending, IReadOnlyList<string?> Texts, int? Withdrawal)
{
    internal static readonly string[] TextColumns = ["product", "quantity", "batch", "supplier", "proof_of_purchase", "given_by", "prescriber", "reason", "weather", "note"];

    internal string? Reason => Texts[7];

    /// <summary>Everything but the colonies: rows that share it are one use.</summary>
    internal string Key() => string.Join('\u001f',
        [NameField.Key(Apiary), Agent, Say.IsoDay(Start), End is { } end ? Say.IsoDay(end) : string.Empty, Ending.ToString(), Withdrawal?.ToString(CultureInfo.InvariantCulture) ?? string.Empty, .. Texts.Select(text => text ?? string.Empty)]);

    internal ControlRecord Record(ControlId control, IReadOnlyList<ColonyId> colonies) => new(
        control, Agent, Start, colonies, End, Texts[0], Texts[1], Texts[2], Texts[3], Texts[4], Texts[5], Texts[6], Withdrawal, null, Texts[7], null, null, Texts[8], Texts[9]);
}
