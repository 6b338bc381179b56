using System.Security.Cryptography;
using System.Text;

namespace Foundress.Book.Journal;

/// <summary>
/// Identifiers made from content: the same words always give the same UUID (version 8 of RFC 9562, from SHA-256).
/// Importing the same file twice therefore records every jar once.
/// </summary>
public static class NamedIds
{
    /// <summary>The identifier of these words in this order.</summary>
    /// <param name="words">What names the thing; their boundaries count.</param>
    public static Guid Of(params ReadOnlySpan<string> words)
    {
        var text = new StringBuilder();
        foreach (var word in words)
            text.Append(word.Length).Append(':').Append(word);
        Span<byte> hash = stackalloc byte[32];
        SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString()), hash);
        var bytes = hash[..16];
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x80);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes, bigEndian: true);
    }
}
