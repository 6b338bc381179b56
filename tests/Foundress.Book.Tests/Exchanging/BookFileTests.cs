using System.Text;
using CsCheck;
using Foundress.Book.Demo;
using Foundress.Book.Exchanging;
using Foundress.Book.Journal;

namespace Foundress.Book.Tests.Exchanging;

public sealed class BookFileTests
{
    private static readonly Entry Sample = new(
        new EntryId(new Guid("018f2f5e-0000-7000-8000-000000000001")), "home", "Ada \"the\" <keeper>", "device-1",
        new HybridTime(1_780_000_000_000, 3), "jar", 1, """{"on":"2026-06-01","future":{"unknown":[1,2.50,"ü\u00fc"]}}""");

    private static readonly Entry[] Odd =
    [
        Sample,
        Sample with { Id = Id(2), Kind = "brood-disease", Schema = 99, Payload = "{ \"a\" : 1e400,\t\"a\":2, \"\\ud800\" : \"\\u0000\" }" },
        Sample with { Id = Id(3), Payload = "{\n  \"over\": \"several\",\r\n  \"lines\": [ ]\n}" },
        Sample with { Id = Id(4), Author = "\n\u2028", Payload = "{}" },
    ];

    [Fact]
    public async Task Read_WhatWasWritten_IsTheSameEntriesAndTheSameBytesAgain()
    {
        var bytes = await WriteAsync(Odd);
        var read = BookFile.Read(new MemoryStream(bytes));
        Assert.True(read.IsWhole);
        Assert.Equal("home", read.Operation);
        Assert.Equal(Odd, read.Entries);
        Assert.Equal(bytes, await WriteAsync(read.Entries));
        Assert.Equal(Odd.Length + 2, Encoding.UTF8.GetString(bytes).Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
    }

    [Fact]
    public async Task Read_DemoBook_GivesTheSameState()
    {
        var ledger = new Ledger();
        ledger.Add(DemoBook.Entries(TestBook.Knowledge, DemoBook.DefaultSeed, TestBook.Today));
        using var file = new MemoryStream();
        await BookFile.WriteAsync(file, "demo", ledger.Entries);
        file.Position = 0;
        var back = new Ledger();
        back.Add(BookFile.Read(file).Entries);
        Assert.Equal(ledger.Entries, back.Entries);
        Assert.Equal(Snapshot.Of(ledger.State), Snapshot.Of(back.State));
    }

    [Fact]
    public async Task Read_LineEndsChangedOnTheWay_IsWholeNevertheless()
    {
        var text = Encoding.UTF8.GetString(await WriteAsync(Odd)).Replace("\n", "\r\n", StringComparison.Ordinal);
        Assert.True(BookFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(text))).IsWhole);
    }

    [Fact]
    public async Task Read_DamagedLine_IsNamedAndTheOthersAreRead()
    {
        var lines = Encoding.UTF8.GetString(await WriteAsync(Odd)).Split('\n');
        lines[2] = lines[2].Replace("\"clock\":\"", "\"clock\":\"x", StringComparison.Ordinal);
        lines[4] = lines[4][..40];
        var read = BookFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(string.Join('\n', lines))));
        Assert.Equal([3, 5], read.Problems.Select(problem => problem.Line));
        Assert.StartsWith("clock:", read.Problems[0].Message, StringComparison.Ordinal);
        Assert.Equal([Odd[0], Odd[2]], read.Entries);
        Assert.Contains("was changed", read.Fault, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "empty")]
    [InlineData("[]", "first line")]
    [InlineData("{\"file\":\"other\"}", "first line")]
    [InlineData("{\"file\":\"foundress-book\",\"form\":2,\"operation\":\"home\"}", "form 2")]
    [InlineData("{\"file\":\"foundress-book\",\"operation\":\"home\"}", "form ?")]
    [InlineData("{\"file\":\"foundress-book\",\"form\":1,\"operation\":\"\"}", "first line")]
    public void Read_NoSuchFile_IsRefused(string text, string words) => Assert.Contains(
        words, Assert.Throws<EntryFormatException>(() => BookFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)))).Message, StringComparison.Ordinal);

    [Fact]
    public void Read_LineWithoutEnd_FillsNoMemory()
    {
        var head = "{\"file\":\"foundress-book\",\"form\":1,\"operation\":\"home\"}\n"u8.ToArray();
        var read = BookFile.Read(new MemoryStream([.. head, .. Enumerable.Repeat((byte)'x', 5_000_000)]));
        Assert.Contains("longer than", Assert.Single(read.Problems).Message, StringComparison.Ordinal);
    }

    // Whatever happens to the bytes, either the very entries come out, or the file is said not to be whole, or to be no such file.
    [Fact]
    public async Task Read_AnyDamage_IsNeverTakenForWhole()
    {
        var whole = await WriteAsync(Odd);
        Gen.Select(Gen.Int[0, whole.Length - 1], Gen.Byte, Gen.Int[0, 3]).Sample(
            (at, value, how) =>
            {
                byte[] damaged = how switch
                {
                    0 => whole[..at],
                    1 => [.. whole[..at], value, .. whole[at..]],
                    2 => [.. whole[..at], .. whole[(at + 1)..]],
                    _ => [.. whole[..at], value, .. whole[(at + 1)..]],
                };
                try
                {
                    var read = BookFile.Read(new MemoryStream(damaged));
                    Assert.True(!read.IsWhole || (read.Operation == "home" && Odd.SequenceEqual(read.Entries)));
                }
                catch (EntryFormatException)
                {
                }
            },
            iter: 20_000);
    }

    private static EntryId Id(int number) => new(new Guid(number, 0, 0x7000, 0x80, 0, 0, 0, 0, 0, 0, 1));

    private static async Task<byte[]> WriteAsync(IEnumerable<Entry> entries)
    {
        using var file = new MemoryStream();
        await BookFile.WriteAsync(file, "home", entries);
        return file.ToArray();
    }
}
