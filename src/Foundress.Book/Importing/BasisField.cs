using Foundress.Science;

namespace Foundress.Book.Importing;

/// <summary>How a number of bees is known: counted (also when nothing is written), weighed or assumed.</summary>
public static class BasisField
{
    /// <summary>Reads a basis.</summary>
    /// <param name="text">The word; case and blanks around it do not matter.</param>
    /// <param name="basis">The basis.</param>
    /// <returns>Null on success, otherwise what is wrong and how to put it right.</returns>
    public static string? Read(string text, out BeeBasis basis)
    {
        (basis, var problem) = text.Trim().ToLowerInvariant() switch
        {
            "" or "counted" => (BeeBasis.Counted, null),
            "weighed" => (BeeBasis.Weighed, null),
            "assumed" => (BeeBasis.Assumed, null),
            _ => (BeeBasis.Counted, FieldTexts.BasisWords),
        };
        return problem;
    }
}
