using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>
/// A control was used on one or several colonies. The fields are those a register of medicines asks for (Regulation (EU)
/// 2019/6, Article 108, and its equals elsewhere), with the reason and the weather. Of two records of one use the later holds.
/// </summary>
/// <param name="Control">This use.</param>
/// <param name="Agent">Id of the control, from the knowledge files or the keeper's own; any text for one that is in neither.</param>
/// <param name="Start">The day of the first administration.</param>
/// <param name="Colonies">The colonies, one or more.</param>
/// <param name="PlannedEnd">The day it is to be over or taken out; the start itself for what is done in a day; null when not planned.</param>
/// <param name="Product">What the label calls it, in the keeper's words.</param>
/// <param name="Quantity">How much was given to each colony, in the keeper's words. Never worked out or suggested here.</param>
/// <param name="Batch">The batch on the pack.</param>
/// <param name="Supplier">Name and address of the supplier.</param>
/// <param name="ProofOfPurchase">Where the proof of purchase is kept: number of the invoice, for instance.</param>
/// <param name="By">Who did it.</param>
/// <param name="Prescriber">Name and contact of the prescriber, where there is one.</param>
/// <param name="WithdrawalDays">Withdrawal period in days by the label, 0 included.</param>
/// <param name="ReasonJars">The jars that were the reason: ids of their entries.</param>
/// <param name="Reason">The reason in words, where it was no jar.</param>
/// <param name="AirLow">Lowest air temperature of the day in degrees Celsius.</param>
/// <param name="AirHigh">Highest air temperature of the day in degrees Celsius.</param>
/// <param name="Weather">The weather in words.</param>
/// <param name="Note">Anything else.</param>
public sealed record ControlRecord(
    ControlId Control,
    string Agent,
    DateOnly Start,
    IReadOnlyList<ColonyId> Colonies,
    DateOnly? PlannedEnd = null,
    string? Product = null,
    string? Quantity = null,
    string? Batch = null,
    string? Supplier = null,
    string? ProofOfPurchase = null,
    string? By = null,
    string? Prescriber = null,
    int? WithdrawalDays = null,
    IReadOnlyList<EntryId>? ReasonJars = null,
    string? Reason = null,
    double? AirLow = null,
    double? AirHigh = null,
    string? Weather = null,
    string? Note = null) : Record;
