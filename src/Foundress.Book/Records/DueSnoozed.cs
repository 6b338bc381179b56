namespace Foundress.Book.Records;

/// <summary>Something due was put off by the keeper, with the reason. The later record of the same thing holds.</summary>
/// <param name="Due">What is put off: the key of a <see cref="Dues.DueItem"/>.</param>
/// <param name="Until">The day on which it is shown as due again. A day already past takes the putting off back.</param>
/// <param name="Reason">Why; never empty.</param>
public sealed record DueSnoozed(string Due, DateOnly Until, string Reason) : Record;
