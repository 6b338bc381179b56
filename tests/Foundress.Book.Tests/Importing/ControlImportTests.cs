using System.Text;
using CsCheck;
using Foundress.Book.Importing;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Tests.Controls;

namespace Foundress.Book.Tests.Importing;

public sealed class ControlImportTests
{
    private static readonly DateOnly Today = TestBook.Today;
    private readonly ControlScene _scene = new();

    [Fact]
    public void Read_RowsOfOneUse_AreOneControlWithItsEnd()
    {
        var file = Read("""
            apiary,colony,agent,start,end,quantity,withdrawal_days,supplier
            orchard,1,Formic acid long,2026-07-01,2026-07-15,1 pad,0,"Shop, Street 1"
            Orchard,2;3,formic-acid-long,2026-07-01,2026-07-15,1 pad,0,"Shop, Street 1"
            Orchard,all,thymol,2026-08-01,,,,
            """);
        Assert.Empty(file.Rejected);
        Assert.Equal([2, 1], file.Uses.Select(use => use.Records.Count));
        Keep(file);
        var formic = Assert.Single(_scene.Book.State.Controls.Values, control => control.Facts.Agent == "formic-acid-long");
        Assert.Equal(_scene.Colonies, formic.Facts.Colonies);
        Assert.Equal(("1 pad", 0, "Shop, Street 1"), (formic.Facts.Quantity, formic.Facts.WithdrawalDays, formic.Facts.Supplier));
        Assert.Equal(new DateOnly(2026, 7, 15), Assert.Single(formic.Ends).Facts.On);
    }

    [Fact]
    public void Read_Twice_RecordsNothingTwice()
    {
        const string text = "apiary,colony,agent,start,end\nOrchard,1;2,thymol,2026-07-01,2026-07-29\n";
        Keep(Read(text));
        var count = _scene.Book.Ledger.Count;
        var again = Read(text);
        Assert.True(Assert.Single(again.Uses).Known);
        Keep(again);
        Assert.Equal(count, _scene.Book.Ledger.Count);
    }

    [Fact]
    public void Read_AnotherColonyLater_GrowsTheUseAndLosesNone()
    {
        Keep(Read("apiary,colony,agent,start,end\nOrchard,1,thymol,2026-07-01,2026-07-29\n"));
        Keep(Read("apiary,colony,agent,start,end\nOrchard,2,thymol,2026-07-01,2026-07-29\n"));
        Assert.Equal(_scene.Colonies.Take(2), Assert.Single(_scene.Book.State.Controls.Values).Facts.Colonies);
    }

    [Theory]
    [InlineData("Orchard,1,garlic,2026-07-01,", "agent", "no known control")]
    [InlineData("Orchard,1,oxalic acid,2026-07-01,", "agent", "write which")]
    [InlineData("Orchard,9,thymol,2026-07-01,", "colony", "No colony of this name")]
    [InlineData("Nowhere,1,thymol,2026-07-01,", "apiary", "no apiary of this name")]
    [InlineData("Orchard,1,thymol,01.07.2026,", "start", "yyyy-MM-dd")]
    [InlineData("Orchard,1,thymol,2026-07-29,2026-07-01", "end", "before the start")]
    [InlineData("Orchard,1,thymol,2027-07-01,", "start", "future")]
    [InlineData("Orchard,,thymol,2026-07-01,", "colony", "Name the colonies")]
    public void Read_BadRow_NamesFieldAndFixAndStopsNothingElse(string row, string column, string fix)
    {
        var file = Read($"apiary,colony,agent,start,end\n{row}\nOrchard,1,thymol,2026-06-01,2026-06-29\n");
        var problem = Assert.Single(Assert.Single(file.Rejected).Problems, one => one.Column == column);
        Assert.Contains(fix, problem.Fix, StringComparison.Ordinal);
        Assert.Single(file.Uses);
    }

    [Fact]
    public void Read_UnknownControlOnWish_IsKeptAsWritten()
    {
        var file = Read("apiary,colony,agent,start\nOrchard,1,garlic,2026-07-01\n", keepUnknown: true);
        Keep(file);
        Assert.Equal("garlic", Assert.Single(_scene.Book.State.Controls.Values).Facts.Agent);
        Assert.Contains("not among the known controls", Assert.Single(Assert.Single(file.Uses).Doubts), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ColumnMissing_SaysWhich() =>
        Assert.Contains("agent", Assert.Throws<ImportFormatException>(() => Read("apiary,colony,start\nOrchard,1,2026-07-01\n")).Message, StringComparison.Ordinal);

    [Fact]
    public void RejectFile_OfControls_CanBeImportedOnceItIsPutRight()
    {
        var file = Read("apiary,colony,agent,start\nOrchard,9,thymol,2026-07-01\n");
        using var text = new StringWriter();
        var rejects = new RejectFile(text, file.Columns, file.Separator);
        foreach (var row in file.Rejected)
            rejects.Write(row);
        Assert.Empty(Read(text.ToString().Replace(",9,", ",2,", StringComparison.Ordinal)).Rejected);
    }

    // Whatever a file holds, reading it ends, and nothing that stands in the book goes missing.
    [Fact]
    public void Read_AnyRows_LosesNothingThatWasRecorded()
    {
        var before = _scene.Use("thymol", Today.AddDays(-40), 28);
        Gen.Select(One("Orchard", "", "Mill"), One("1", "1;2", "all", "7", ";", "\"1"), One("thymol", "garlic", "", "oxalic acid"), One("2026-07-11", "x", "", "2026-02-30"), One("2026-08-01", "2026-01-01", ""))
            .Array[0, 5]
            .Sample(
                rows =>
                {
                    var file = Read("apiary,colony,agent,start,end\n" + string.Concat(rows.Select(row => $"{row.Item1},{row.Item2},{row.Item3},{row.Item4},{row.Item5}\n")));
                    Keep(file);
                    Assert.Equal(_scene.Colonies, _scene.Book.State.Controls[before.Control].Facts.Colonies);
                    Assert.All(file.Rejected, row => Assert.NotEmpty(row.Problems));
                },
                iter: 100, threads: 1);
    }

    private static Gen<string> One(params string[] texts) => Gen.Int[0, texts.Length - 1].Select(i => texts[i]);

    private ControlFile Read(string text, bool keepUnknown = false)
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(text));
        return ControlImport.Read(stream, _scene.Book.Ledger, "home", TestBook.Knowledge, Today, keepUnknown);
    }

    private void Keep(ControlFile file)
    {
        var scribe = new Scribe("home", "import", "device-b", new HybridClock(_scene.Book.Time), _scene.Book.Ids);
        foreach (var record in file.Uses.SelectMany(use => use.Records))
        {
            _scene.Book.Time.Advance(TimeSpan.FromSeconds(1));
            _scene.Book.Ledger.Add([scribe.Write(record.Record, record.Id)]);
        }
    }
}
