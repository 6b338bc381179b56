using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Science;
using Foundress.Science.Estimation;
using Record = Foundress.Book.Records.Record;

namespace Foundress.Book.Tests.Rules;

public sealed class OtherCountRulesTests
{
    private static readonly DateOnly Day = new(2026, 7, 14);
    private readonly TestBook _book = new();
    private readonly ColonyId _colony;

    public OtherCountRulesTests() => _colony = _book.Colony(_book.Apiary("Orchard"), "1");

    public static TheoryData<string, Record> Bad => new()
    {
        { "mites", Fall with { Mites = -1 } },
        { "mites", Fall with { Mites = 20_000 } },
        { "days", Fall with { Days = 0 } },
        { "days", Fall with { Days = 61 } },
        { "days", Fall with { Days = double.NaN } },
        { "shareCounted", Fall with { ShareCounted = 0 } },
        { "shareCounted", Fall with { ShareCounted = 33 } },
        { "on", Fall with { On = TestBook.Today.AddDays(1) } },
        { "cells", Brood with { Cells = 0 } },
        { "cells", Brood with { Cells = 9_000 } },
        { "infested", Brood with { Infested = 101 } },
        { "infested", Brood with { Infested = -1 } },
        { "mites", Brood with { Mites = 3 } },
        { "mites", Brood with { Infested = 0, Mites = 3 } },
        { "fallLines", new PolicyRecord(FallLines: "common-practice") },
        { "droneLines", new PolicyRecord(DroneLines: "hannover-fall") },
        { "workerLines", new PolicyRecord(WorkerLines: "uk-drone-brood") },
        { "sampleBees", Jar(new JarBees(BeeBasis.Weighed, 300, 0.03, Grams: 31, SampleGrams: 10)) },
        { "sampleBees", Jar(new JarBees(BeeBasis.Weighed, 300, 0.03, Grams: 31, SampleBees: 1, SampleGrams: 10)) },
        { "sampleGrams", Jar(new JarBees(BeeBasis.Weighed, 300, 0.03, Grams: 31, SampleBees: 100, SampleGrams: 40)) },
        { "sampleGrams", Jar(new JarBees(BeeBasis.Counted, 300, SampleBees: 100, SampleGrams: 10)) },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void Check_BadCount_NamesFieldAndFix(string field, Record record)
    {
        var problem = Assert.Single(Check(record), p => p.Gravity == Gravity.Error && p.Field == field);
        Assert.EndsWith(".", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_OrdinaryCounts_HaveNoProblem()
    {
        Assert.Empty(Check(Fall));
        Assert.Empty(Check(Brood with { Mites = 15 }));
        Assert.Empty(Check(new PolicyRecord(FallLines: "hannover-fall", DroneLines: "none")));
        Assert.Empty(Check(Jar(JarBees.Counted(300, JarBees.OwnScoop))));
    }

    [Fact]
    public void Check_UnknownColony_IsAnError() =>
        Assert.Contains(RecordRules.Check(Fall with { Colony = new ColonyId(new Guid(9, 2, 3, new byte[8])) }, _book.State, TestBook.Knowledge, TestBook.Today), p => p.Field == "colony" && p.Gravity == Gravity.Error);

    [Fact]
    public void Check_SameCountTwice_IsDoubted()
    {
        _book.Write(Fall with { Colony = _colony });
        _book.Write(Brood with { Colony = _colony });
        Assert.Equal(Gravity.Doubt, Assert.Single(Check(Fall)).Gravity);
        Assert.Equal(Gravity.Doubt, Assert.Single(Check(Brood)).Gravity);
    }

    [Fact]
    public void Write_NewKindsAndFields_ReadBackTheSame()
    {
        Record[] records =
        [
            Fall with { Colony = _colony, ShareCounted = 0.33, Broodless = true, Scavengers = true, Note = "oil" },
            Brood with { Colony = _colony, Mites = 15 },
            Jar(JarBees.Weighed(31.5, new WeighedSample(100, 10.4, fromJar: false), TestBook.Knowledge.Weighing.ToWeighing())),
            new PolicyRecord(CountedJarsTeach: false, FallLines: "hannover-fall"),
        ];
        foreach (var record in records)
        {
            var text = RecordJson.Write(record);
            Assert.Equal(text, RecordJson.Write(RecordJson.TryRead(RecordKinds.Of(record), text, out var problem)!));
            Assert.Null(problem);
        }
    }

    // Jars written before these fields existed must read as they always did.
    [Fact]
    public void TryRead_JarOfAnEarlierVersion_IsComplete()
    {
        var jar = (JarRecord)RecordJson.TryRead("jar", """{"on":"2026-07-14","method":"alcohol-wash","passes":[3],"bees":{"basis":"Weighed","count":300,"logSpread":0.16,"grams":27.2,"milligramsPerBee":90.7}}""", out var problem)!;
        Assert.Null(problem);
        Assert.Equal(new JarBees(BeeBasis.Weighed, 300, 0.16, Grams: 27.2, MilligramsPerBee: 90.7), jar.Bees);
    }

    // Ratio with the delta method, Cochran 1977 chapter 6, by hand: 31.5 × 100 / 10.4 = 302.9; spread² = 0.2² (1/100 - 1/302.9) + (1/12)(1/31.5² + 1/10.4²).
    [Fact]
    public void Weighed_WithACountedSample_PropagatesItsUncertainty()
    {
        var bees = JarBees.Weighed(31.5, new WeighedSample(100, 10.4, fromJar: true), TestBook.Knowledge.Weighing.ToWeighing());
        Assert.Equal(303, bees.Count);
        var expected = Math.Sqrt((0.04 * ((1 / 100d) - (1 / 302.885))) + ((1 / 12d) * ((1 / (31.5 * 31.5)) + (1 / (10.4 * 10.4)))));
        Assert.Equal(expected, bees.LogSpread, 4);
        Assert.Equal((100, 10.4, (bool?)null), (bees.SampleBees, bees.SampleGrams, bees.SampleApart));
        Assert.True(bees.LogSpread < 0.16, "a sub-sample of the jar must tell more than the range of the literature");
    }

    private static MiteFallRecord Fall => new(default, Day, 24, 3);

    private static OpenedBroodRecord Brood => new(default, Day, BroodKind.Drone, 100, 12);

    private static JarRecord Jar(JarBees bees) => new(Day, "alcohol-wash", [3], bees);

    private IReadOnlyList<Problem> Check(Record record) => RecordRules.Check(
        record switch
        {
            MiteFallRecord fall => fall with { Colony = _colony },
            OpenedBroodRecord brood => brood with { Colony = _colony },
            var other => other,
        },
        _book.State, TestBook.Knowledge, TestBook.Today);
}
