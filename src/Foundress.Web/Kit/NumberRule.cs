namespace Foundress.Web.Kit;

/// <summary>Which numbers a field allows.</summary>
/// <param name="Least">The least.</param>
/// <param name="Most">The greatest.</param>
/// <param name="Decimals">0 for whole numbers, else how many decimals are usual.</param>
public readonly record struct NumberRule(double Least, double Most, int Decimals = 0);
