namespace Foundress.Book.Records;

/// <summary>Which units people are shown. Records always hold metric values.</summary>
public enum UnitSystem
{
    /// <summary>Grams, millilitres, degrees Celsius.</summary>
    Metric,

    /// <summary>Ounces, cups, degrees Fahrenheit.</summary>
    UsCustomary,
}
