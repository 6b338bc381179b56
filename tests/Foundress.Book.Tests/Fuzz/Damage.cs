using System.Text;
using CsCheck;

namespace Foundress.Book.Tests.Fuzz;

/// <summary>Files that were good once, and bytes that never were.</summary>
internal static class Damage
{
    private static readonly string[] Parts =
    [
        "", ",", ";", "\t", "\"", "\"\"", "\n", "\r\n", "\r", "\0", "\ufeff", "\u2028", "=1+1", "-1", "1e999", "NaN", "99999999999999999999", "0", "1,5", "2026-02-30", "9999-12-31", "0001-01-01", "31.12.2026",
        "{", "}", "[", "]", ":", "null", "\"\\ud800\"", "1e-999", "true", "é", "🐝", "\ud800", "sep=;", "all", "#", "//", "\\", new('[', 40), new('x', 300), new('9', 400),
    ];

    /// <summary>A good file with a few bytes, marks or words of another kind put in, taken out or doubled; or anything at all.</summary>
    public static Gen<byte[]> To(string good)
    {
        var bytes = Encoding.UTF8.GetBytes(good);
        var put = Gen.OneOf(Gen.Int[0, Parts.Length - 1].Select(n => Encoding.UTF8.GetBytes(Parts[n])), Gen.Byte.Array[1, 4]);
        var damaged = Gen.Select(Gen.Int[0, bytes.Length], Gen.Int[0, 20], put, Gen.Int[0, 5]).Array[1, 5].Select(edits => edits.Aggregate(bytes, (file, edit) =>
        {
            var (place, length, what, how) = edit;
            var at = Math.Min(place, file.Length);
            var end = Math.Min(file.Length, at + length);
            return how switch
            {
                0 => file[..at],
                1 => [.. file[..end], .. file[at..]],
                2 => [.. file[..at], .. file[end..]],
                _ => [.. file[..at], .. what, .. file[end..]],
            };
        }));
        return Gen.OneOf(damaged, damaged, damaged, Gen.Byte.Array[0, 300], Gen.String[0, 200].Select(Encoding.UTF8.GetBytes));
    }
}
