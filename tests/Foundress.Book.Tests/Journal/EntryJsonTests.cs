using System.Text;
using CsCheck;
using Foundress.Book.Journal;

namespace Foundress.Book.Tests.Journal;

public sealed class EntryJsonTests
{
    private static readonly Entry Sample = new(
        new EntryId(new Guid("018f2f5e-0000-7000-8000-000000000001")), "home", "Ada \"the\" <keeper>", "device-1",
        new HybridTime(1_780_000_000_000, 3), "jar", 1, """{"on":"2026-06-01","future":{"unknown":[1,2.50,"ü"]}}""");

    [Fact]
    public void Read_WhatWasWritten_IsTheSameEntryByteForByte()
    {
        var json = EntryJson.Write(Sample);
        Assert.Equal(Sample, EntryJson.Read(json));
        Assert.Equal(json, EntryJson.Write(EntryJson.Read(json)));
    }

    [Fact]
    public void Read_PayloadWithUnknownFields_KeepsThem() =>
        Assert.Contains("\"unknown\":[1,2.50,\"ü\"]", EntryJson.Read(EntryJson.Write(Sample)).Payload, StringComparison.Ordinal);

    [Theory]
    [InlineData("{}", "id")]
    [InlineData("""{"id":"x"}""", "id")]
    [InlineData("""{"id":"018f2f5e-0000-7000-8000-000000000001"}""", "clock")]
    [InlineData("[]", "object")]
    [InlineData("nonsense", "JSON")]
    public void Read_BadEntry_NamesTheField(string json, string named) =>
        Assert.Contains(named, Assert.Throws<EntryFormatException>(() => EntryJson.Read(json)).Message, StringComparison.Ordinal);

    // Passed over, it would be gone from every copy made from this one.
    [Theory]
    [InlineData("\"seal\":\"x\",\"schema\":", "seal")]
    [InlineData("\"schema\":1,\"schema\":", "schema: is given twice")]
    public void Read_FieldThatWouldNotBeKept_IsRefused(string instead, string words)
    {
        var json = EntryJson.Write(Sample).Replace("\"schema\":", instead, StringComparison.Ordinal);
        Assert.Contains(words, Assert.Throws<EntryFormatException>(() => EntryJson.Read(json)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_PayloadTooLong_IsRefused()
    {
        var entry = Sample with { Payload = "{\"note\":\"" + new string('x', EntryJson.GreatestPayload) + "\"}" };
        Assert.Contains("payload", Assert.Throws<EntryFormatException>(() => EntryJson.Read(EntryJson.Write(entry))).Message, StringComparison.Ordinal);
    }

    // Fuzz: whatever arrives, the reader gives entries or the one documented error.
    [Fact]
    public void ReadMany_RandomBytesAndDamagedEntries_NeverThrowsAnythingElse()
    {
        var valid = EntryJson.WriteMany([Sample, Sample with { Id = new EntryId(new Guid("018f2f5e-0000-7000-8000-000000000002")) }]);
        var damaged = Gen.Select(Gen.Int[0, valid.Length - 1], Gen.Byte, Gen.Int[0, 3], (at, value, how) => how switch
        {
            0 => valid[..at],
            1 => [.. valid[..at], value, .. valid[at..]],
            2 => [.. valid[..at], .. valid[(at + 1)..]],
            _ => [.. valid[..at], value, .. valid[(at + 1)..]],
        });
        Gen.OneOf(damaged, Gen.Byte.Array[0, 200], Gen.String.Select(Encoding.UTF8.GetBytes)).Sample(
            bytes =>
            {
                try
                {
                    new Ledger().Add(EntryJson.ReadMany(bytes));
                }
                catch (EntryFormatException)
                {
                }
            },
            iter: 20_000);
    }
}
