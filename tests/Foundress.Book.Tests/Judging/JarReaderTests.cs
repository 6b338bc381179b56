using System.Globalization;
using CsCheck;
using Foundress.Book.Judging;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Judging;

namespace Foundress.Book.Tests.Judging;

public sealed class JarReaderTests
{
    private static readonly DateOnly August = new(2026, 8, 3);

    // Values worked out with SciPy 1.10.1: chi2.ppf for Garwood's interval, gamma.sf for the chance.
    [Fact]
    public void Read_FourteenMitesInThreeHundredAndTwentyBees_GivesTheWorkedValues()
    {
        var reading = Read(Jar(14, JarBees.Counted(320)));
        Assert.Equal(4.375, reading.Level.Per100Bees, 12);
        Assert.Equal(2.39185, reading.Interval.Lower.Per100Bees, 5);
        Assert.Equal(7.34051, reading.Interval.Upper.Per100Bees, 5);
        Assert.Equal(IntervalMethod.ExactPoisson, reading.Interval.Method);
        Assert.Equal(0.91605, reading.OverLine!.Value.Value, 5);
        Assert.Equal(Standing.Above, reading.Standing);
    }

    [Fact]
    public void Read_NoMites_NeverSaysNone()
    {
        var reading = Read(Jar(0, JarBees.Counted(300)));
        Assert.Equal(Standing.Below, reading.Standing);
        Assert.Contains("not proof of none", reading.Meaning, StringComparison.Ordinal);
        Assert.Contains("1.2 per 100", reading.Meaning, StringComparison.Ordinal);
        Assert.DoesNotContain("free", reading.Meaning, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Read_NineMitesInThreeHundred_IsNotSettled()
    {
        var reading = Read(Jar(9, JarBees.Counted(300)));
        Assert.Equal(Standing.Unclear, reading.Standing);
        Assert.StartsWith("Not settled", reading.Meaning, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_AssumedBees_WidensTheIntervalAndAdvisesCounting()
    {
        var counted = Read(Jar(14, JarBees.Counted(300)));
        var assumed = Read(Jar(14, new JarBees(BeeBasis.Assumed, 300, 0.15, "half-cup-us")));
        Assert.True(assumed.Interval.Width > counted.Interval.Width);
        Assert.Equal(IntervalMethod.Posterior, assumed.Interval.Method);
        Assert.StartsWith("Count the bees", assumed.Sharpen[0], StringComparison.Ordinal);
        Assert.DoesNotContain(counted.Sharpen, tip => tip.StartsWith("Count the bees", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_LinesOfAnotherScale_IsNotJudgedNorConverted()
    {
        var state = StateWith(new PolicyRecord(LinePolicy: "osnabrueck-sugar-50-g"));
        var reading = Read(Jar(14, JarBees.Counted(300)), state);
        Assert.Null(reading.Standing);
        Assert.Null(reading.OverLine);
        Assert.Contains("Scales are not converted", reading.Meaning, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_OwnLine_IsUsed()
    {
        var state = StateWith(new PolicyRecord(LinePolicy: "own", OwnAct: 10));
        Assert.Equal(Standing.Below, Read(Jar(14, JarBees.Counted(320)), state).Standing);
    }

    [Fact]
    public void Read_AnyValidJar_HasFiniteNumbersAndMoreMitesNeverLowerTheChance() =>
        Gen.Select(Gen.Int[0, 300], Gen.Int[1, 5000], Gen.Int[0, 100]).Sample((mites, bees, spread) =>
        {
            var count = spread == 0 ? JarBees.Counted(bees) : new JarBees(BeeBasis.Assumed, bees, spread / 100d);
            var reading = Read(Jar(mites, count));
            Assert.True(double.IsFinite(reading.Interval.Upper.Per100Bees));
            Assert.True(reading.Interval.Lower <= reading.Level || mites == 0);
            var more = Read(Jar(mites + 1, count));
            Assert.True(more.OverLine!.Value.Value >= reading.OverLine!.Value.Value - 1e-12);
        }, iter: 100);

    [Fact]
    public void Read_Working_ShowsFormulaNumbersAndSource()
    {
        var reading = Read(Jar(43, JarBees.Counted(310)));
        var step = Assert.Single(reading.Working, s => s.What == "Level");
        // The handbook prints 14.3 for these inputs; 100 × 43 / 310 is 13.87 (Dietemann et al. 2013, section 4.2.3.1.2.1).
        Assert.Contains("13.871", step.How, StringComparison.Ordinal);
        Assert.All(reading.Working, s => Assert.NotEmpty(s.Source));
    }

    private static JarRecord Jar(int mites, JarBees bees) => new(August, "alcohol-wash", [mites], bees);

    private static BookState StateWith(PolicyRecord policy)
    {
        var book = new TestBook();
        book.Write(policy);
        return book.State;
    }

    private static JarReading Read(JarRecord jar, BookState? state = null) =>
        new JarReader(TestBook.Knowledge, JudgingPolicy.Of(state ?? BookState.Empty, TestBook.Knowledge), CultureInfo.InvariantCulture)
            .Read(jar, (Apiary?)null);
}
