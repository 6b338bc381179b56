using Foundress.Book.Calibrating;
using Foundress.Book.Journal;
using Foundress.Book.Judging;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Estimation;

namespace Foundress.Book.Tests.Calibrating;

public sealed class JarScoopsTests
{
    private const string Cup = "half-cup-us";
    private static readonly DateOnly Day = new(2026, 7, 1);
    private readonly TestBook _book = new();

    [Fact]
    public void Assumed_FewerThanEnoughJars_IsWhatTheMeasureIsSaidToHold()
    {
        Count(350, 360);
        Assert.Equal(CalibrationUse.TooFew, Scoops.Of("tester", Cup).Use);
        Assert.Equal(new JarBees(BeeBasis.Assumed, 300, 0.15, Cup), Scoops.Assumed("tester", Cup));
    }

    [Fact]
    public void Assumed_EnoughJars_IsTheNextJarTheyTeach()
    {
        Count(350, 360, 340, 355);
        var assumed = Scoops.Assumed("tester", Cup);
        var expected = JarCalibration.From(new JarPrior(300, 0.15, 2, 4), [350, 360, 340, 355]).NextJar;
        Assert.Equal(Math.Round(expected.Bees), assumed.Count);
        Assert.Equal(expected.LogSpread, assumed.LogSpread, 4);
        Assert.Equal((BeeBasis.Assumed, Cup, 4), (assumed.Basis, assumed.Measure, assumed.CountedJars));
        Assert.InRange(assumed.Count, 310, 355);
    }

    [Fact]
    public void Assumed_AnotherPersonOrMeasure_DoesNotBorrow()
    {
        Count(350, 360, 340, 355);
        Assert.Null(Scoops.Assumed("somebody else", Cup).CountedJars);
        Assert.Null(Scoops.Assumed("tester", "100-ml").CountedJars);
    }

    [Fact]
    public void Assumed_SwitchedOff_IsWhatTheMeasureIsSaidToHold()
    {
        Count(350, 360, 340, 355);
        _book.Write(new PolicyRecord(CountedJarsTeach: false));
        Assert.Equal(CalibrationUse.SwitchedOff, Scoops.Of("tester", Cup).Use);
        Assert.Null(Scoops.Assumed("tester", Cup).CountedJars);
        _book.Write(new PolicyRecord(CountedJarsTeach: true));
        Assert.Equal(4, Scoops.Assumed("tester", Cup).CountedJars);
    }

    [Fact]
    public void Assumed_WildlyDifferentJars_AreNotUsedAndNeverFail()
    {
        Count(20, 4000, 15, 5000);
        Assert.Equal(CalibrationUse.TooDifferent, Scoops.Of("tester", Cup).Use);
        Assert.Null(Scoops.Assumed("tester", Cup).CountedJars);
    }

    [Fact]
    public void All_StruckJar_TeachesNothing()
    {
        var entries = Count(350, 360, 340);
        _book.Strike(entries[1]);
        Assert.Equal([350, 340], Assert.Single(Scoops.All).Counted);
    }

    [Fact]
    public void All_JarWithoutMeasure_IsCountedAsUnnamed()
    {
        _book.Jar(null, Day, 3);
        Assert.Empty(Scoops.All);
        Assert.Equal(1, Scoops.Unnamed);
    }

    // A jar keeps the number it was recorded with, whatever is learnt later.
    [Fact]
    public void Read_OldAssumedJar_DoesNotChangeWhenJarsAreCountedLater()
    {
        var old = new JarRecord(Day, "alcohol-wash", [9], Scoops.Assumed("tester", Cup));
        _book.Write(old);
        var before = Reader().Read(old, (Apiary?)null);
        Count(350, 360, 340, 355);
        var kept = _book.State.Jars.Single(jar => jar.Facts.Bees.Basis == BeeBasis.Assumed).Facts;
        var after = Reader().Read(kept, (Apiary?)null);
        Assert.Equal(before.Interval, after.Interval);
        Assert.Equal(300, kept.Bees.Count);
    }

    [Fact]
    public void Assumed_OwnScoop_StartsFromTheKeepersNumberAndLearns()
    {
        _book.Write(new PolicyRecord(ScoopBees: 280, ScoopLogSpread: 0.1));
        Assert.Equal(JarBees.OwnScoop, Scoops.UsualMeasure());
        Assert.Equal(new JarBees(BeeBasis.Assumed, 280, 0.1, JarBees.OwnScoop), Scoops.Assumed("tester", JarBees.OwnScoop));
        foreach (var bees in new[] { 310, 320, 315 })
            _book.Write(new JarRecord(Day, "alcohol-wash", [1], JarBees.Counted(bees, JarBees.OwnScoop)));
        Assert.InRange(Scoops.Assumed("tester", JarBees.OwnScoop).Count, 290, 315);
    }

    [Fact]
    public void Of_UnknownMeasure_NamesTheKnownOnes() =>
        Assert.Contains("half-cup-us", Assert.Throws<KnowledgeException>(() => Scoops.Of("tester", "thimble")).Message, StringComparison.Ordinal);

    [Fact]
    public void CountingGain_Calibrated_NarrowsTowardsTheCountedJar()
    {
        Count(350, 345, 355, 348, 352, 350, 349, 351);
        var scoop = Scoops.Of("tester", Cup);
        var gain = CountingGain.Of(scoop, Scoops.Said(Cup), 60, 0.95);
        Assert.True(gain.AsTaught!.Value.Width < gain.AsSaid.Width);
        Assert.True(gain.AfterMore!.Value.Width <= gain.AsTaught.Value.Width);
        Assert.True(gain.IfCounted.Width < gain.AfterMore.Value.Width);
    }

    private JarScoops Scoops => new(_book.State, TestBook.Knowledge);

    private JarReader Reader() => new(TestBook.Knowledge, JudgingPolicy.Of(_book.State, TestBook.Knowledge), System.Globalization.CultureInfo.InvariantCulture);

    private List<Entry> Count(params int[] jars) =>
        [.. jars.Select(bees => _book.Write(new JarRecord(Day, "alcohol-wash", [bees % 7], JarBees.Counted(bees, Cup))))];
}
