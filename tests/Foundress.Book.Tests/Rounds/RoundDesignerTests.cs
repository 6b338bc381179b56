using System.Globalization;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rounds;
using Foundress.Book.State;

namespace Foundress.Book.Tests.Rounds;

public sealed class RoundDesignerTests
{
    private const string Wash = "alcohol-wash";
    private static readonly DateOnly Day = new(2026, 8, 20);

    /// <summary>8 of 40 colonies, 4 over the line: SciPy 1.10.1, 1 - hypergeom.pmf(0, 40, 4, 8); precision by the formula of the method notes, line 3, k 1.3.</summary>
    [Fact]
    public void Of_NoBook_GivesDetectionAndPrecisionOfTheFormulas()
    {
        var design = Designer(BookState.Empty).Of(null, 40, 8, Day, Wash)!;
        Assert.Equal(4, design.Question.ColoniesOver);
        Assert.Equal(0.6065215012583434, design.Planned.FindsOne.Value, 9);
        Assert.Equal(Math.Sqrt(((1 / 9d) + (0.8 / 1.3)) / 8), design.Planned.RelativeError, 9);
        Assert.Equal([3, 5, 8, 12, 40], design.Rows.Select(row => row.Plan.Sample.Take));
        Assert.False(design.Spread.FromBook);
        Assert.Contains("10.5281", TestBook.Knowledge.Sampling.Design.Shape.Source.Doi, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_MoreColonies_NeverBuyLess()
    {
        var designer = Designer(BookState.Empty);
        var rows = Enumerable.Range(1, 30).Select(take => designer.Of(null, 30, take, Day, Wash)!.Planned).ToList();
        foreach (var (few, more) in rows.Zip(rows.Skip(1)))
        {
            Assert.True(more.RelativeError < few.RelativeError);
            Assert.True(more.FindsOne.Value >= few.FindsOne.Value);
        }

        var forDetection = designer.Of(null, 30, 8, Day, Wash)!.ForDetection!.Value.Take;
        Assert.True(rows[forDetection - 1].FindsOne.Value >= 0.95);
        Assert.True(rows[forDetection - 2].FindsOne.Value < 0.95);
    }

    [Fact]
    public void Of_ApiaryWithRound_TakesItsOwnSpread()
    {
        var (book, apiary) = Sampled([0, 0, 30, 1, 0, 22, 0, 1]);
        var uneven = Designer(book.State).Of(book.State.Apiaries[apiary], 8, 8, Day, Wash)!.Spread;
        var (other, alike) = Sampled([6, 7, 6, 8, 7, 6, 7, 7]);
        var even = Designer(other.State).Of(other.State.Apiaries[alike], 8, 8, Day, Wash)!.Spread;
        Assert.True(uneven.FromBook && even.FromBook);
        Assert.True(uneven.Shape < 1 && even.Shape > 3, $"{uneven.Shape} and {even.Shape}");
    }

    [Fact]
    public void Of_OtherScaleOrFewColonies_TakesTheDocumentedSpread()
    {
        var (book, apiary) = Sampled([0, 0, 30, 1, 0, 22, 0, 1]);
        Assert.False(Designer(book.State).Spread(book.State.Apiaries[apiary], Day, "sugar-shake").FromBook);
        var (small, place) = Sampled([3, 9, 1]);
        Assert.False(Designer(small.State).Spread(small.State.Apiaries[place], Day, Wash).FromBook);
    }

    [Fact]
    public void Of_NoLinePer100_GivesNothing()
    {
        var (book, apiary) = Sampled([1, 2]);
        book.Write(new ApiaryRecord(apiary, LinePolicy: TestBook.Knowledge.LinePolicies.First(policy => policy.Rows.All(row => (row.Act ?? row.Watch)!.Unit != Knowledge.Units.MitesPer100Bees)).Id));
        Assert.Null(Designer(book.State).Of(book.State.Apiaries[apiary], 2, 2, Day, Wash));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(9)]
    public void Of_TakeOutOfRange_NamesTheRange(int take) =>
        Assert.Contains("Between 1 and 8", Assert.Throws<ArgumentOutOfRangeException>(() => Designer(BookState.Empty).Of(null, 8, take, Day, Wash)).Message, StringComparison.Ordinal);

    private static RoundDesigner Designer(BookState state) => new(state, TestBook.Knowledge, CultureInfo.InvariantCulture);

    private static (TestBook Book, ApiaryId Apiary) Sampled(int[] mites)
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        foreach (var (count, index) in mites.Select((count, index) => (count, index)))
            book.Jar(book.Colony(apiary, $"{index + 1}", new DateOnly(2026, 4, 1)), new DateOnly(2026, 7, 20), count);
        return (book, apiary);
    }
}
