using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using Foundress.Storage.Model;

namespace Foundress.Storage.Transfer;

/// <summary>
/// A fingerprint of a set of entries that does not depend on their order: how many there are, and the sum, modulo 2^256, of
/// the SHA-256 of each. Two sets of entries with one fingerprint are the same entry for entry and character for character.
/// </summary>
internal sealed class EntryDigest
{
    private const int Words = 4;

    private readonly ulong[] _sum = new ulong[Words];

    /// <summary>How many entries were added.</summary>
    public long Count { get; private set; }

    /// <summary>Adds an entry: all of it but its place in one database and the time it came there.</summary>
    public void Add(StoredEntry row)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Span<byte> number = stackalloc byte[16];
        row.Id.TryWriteBytes(number, bigEndian: true, out _);
        hash.AppendData(number);
        BinaryPrimitives.WriteInt32BigEndian(number, row.Schema);
        hash.AppendData(number[..4]);
        foreach (var text in (ReadOnlySpan<string>)[row.Operation, row.Author, row.Device, row.Clock, row.Kind, row.Payload])
        {
            // With its length before it, so that no two entries run together to one text.
            var bytes = Encoding.UTF8.GetBytes(text);
            BinaryPrimitives.WriteInt32BigEndian(number, bytes.Length);
            hash.AppendData(number[..4]);
            hash.AppendData(bytes);
        }

        Span<byte> one = stackalloc byte[32];
        hash.GetHashAndReset(one);
        var carry = UInt128.Zero;
        for (var word = Words - 1; word >= 0; word--)
        {
            carry += (UInt128)_sum[word] + BinaryPrimitives.ReadUInt64BigEndian(one[(8 * word)..]);
            _sum[word] = (ulong)carry;
            carry >>= 64;
        }

        Count++;
    }

    /// <summary>The sum as 64 hexadecimal digits.</summary>
    public override string ToString() => string.Concat(_sum.Select(word => word.ToString("x16", System.Globalization.CultureInfo.InvariantCulture)));
}
