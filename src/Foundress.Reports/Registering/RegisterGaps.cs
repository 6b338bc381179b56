using Foundress.Book.Registering;
using Foundress.Book.Wording;

namespace Foundress.Reports.Registering;

/// <summary>What a register asks for and a record does not say.</summary>
/// <remarks>
/// The particulars of Regulation (EU) 2019/6, Article 108(2), from memory: name, quantity, supplier, proof of purchase, batch
/// and withdrawal period of what was given. What no substance was given for asks for none of them.
/// </remarks>
public static class RegisterGaps
{
    /// <summary>The particulars that are missing from a record; none for one that no longer holds.</summary>
    /// <param name="row">The record.</param>
    public static IReadOnlyList<string> Of(RegisterRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        if (row.State != RegisterState.Holds || !row.IsSubstance)
            return [];
        var facts = row.Facts;
        return
        [
            .. new (string Name, bool Missing)[]
            {
                (RegisterTexts.GapProduct, IsEmpty(facts.Product)), (RegisterTexts.GapQuantity, IsEmpty(facts.Quantity)), (RegisterTexts.GapBatch, IsEmpty(facts.Batch)), (RegisterTexts.GapSupplier, IsEmpty(facts.Supplier)),
                (RegisterTexts.GapProof, IsEmpty(facts.ProofOfPurchase)), (RegisterTexts.GapWithdrawal, row.WithdrawalDays is null), (RegisterTexts.GapGivenBy, IsEmpty(facts.By)),
            }.Where(field => field.Missing).Select(field => field.Name),
        ];
    }

    /// <summary>What is missing in the register as it is shown; null when nothing is.</summary>
    /// <param name="register">The register.</param>
    public static string? Sentence(Register register)
    {
        ArgumentNullException.ThrowIfNull(register);
        var gaps = register.Rows.Select(Of).Where(missing => missing.Count > 0).ToArray();
        if (gaps.Length == 0)
            return null;
        var fields = gaps.SelectMany(missing => missing).GroupBy(field => field).OrderByDescending(field => field.Count()).Select(field => RegisterTexts.FormatGapOf(field.Key, field.Count()));
        return Plural.Pick(gaps.Length, RegisterTexts.FormatGaps(gaps.Length, string.Join(", ", fields)));
    }

    private static bool IsEmpty(string? text) => string.IsNullOrWhiteSpace(text);
}
