namespace Foundress.Book.State;

/// <summary>Orders names as people number hives: runs of digits by value, so 2 comes before 10. The same on every platform.</summary>
public sealed class NaturalOrder : IComparer<string>
{
    private NaturalOrder()
    {
    }

    /// <summary>The one instance; it has no state.</summary>
    public static NaturalOrder Instance { get; } = new();

    /// <inheritdoc/>
    public int Compare(string? x, string? y)
    {
        if (x is null || y is null)
            return string.CompareOrdinal(x, y);
        int i = 0, j = 0;
        while (i < x.Length && j < y.Length)
        {
            int outcome;
            if (char.IsAsciiDigit(x[i]) && char.IsAsciiDigit(y[j]))
                outcome = CompareNumbers(x, ref i, y, ref j);
            else
                outcome = char.ToUpperInvariant(x[i++]).CompareTo(char.ToUpperInvariant(y[j++]));
            if (outcome != 0)
                return outcome;
        }

        var rest = (x.Length - i).CompareTo(y.Length - j);
        return rest != 0 ? rest : string.CompareOrdinal(x, y);
    }

    private static int CompareNumbers(string x, ref int i, string y, ref int j)
    {
        var left = Digits(x, ref i);
        var right = Digits(y, ref j);
        return left.Length != right.Length ? left.Length.CompareTo(right.Length) : left.SequenceCompareTo(right);
    }

    private static ReadOnlySpan<char> Digits(string text, ref int at)
    {
        while (at < text.Length - 1 && text[at] == '0' && char.IsAsciiDigit(text[at + 1]))
            at++;
        var start = at;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
            at++;
        return text.AsSpan(start, at - start);
    }
}
