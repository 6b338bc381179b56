using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Science;
using Record = Foundress.Book.Records.Record;

namespace Foundress.Book.Tests.Rules;

public sealed class RecordRulesTests
{
    private readonly TestBook _book = new();
    private readonly ApiaryId _apiary;
    private readonly ColonyId _colony;

    public RecordRulesTests()
    {
        _apiary = _book.Apiary("Orchard");
        _colony = _book.Colony(_apiary, "1");
    }

    public static TheoryData<string, JarRecord, string> BadJars => new()
    {
        { "mites", Jar(mites: -1), "-1" },
        { "mites", Jar(mites: 100_000), "100000" },
        { "bees", Jar(bees: JarBees.Counted(0)), "0" },
        { "bees", Jar(bees: new JarBees(BeeBasis.Counted, 300.5)), "300.5" },
        { "bees", Jar(bees: JarBees.Counted(50_000)), "50000" },
        { "bees", Jar(bees: new JarBees(BeeBasis.Assumed, double.NaN, 0.1)), "NaN" },
        { "logSpread", Jar(bees: new JarBees(BeeBasis.Counted, 300, 0.2)), "0.2" },
        { "logSpread", Jar(bees: new JarBees(BeeBasis.Assumed, 300, -1)), "-1" },
        { "passes", Jar() with { Passes = [] }, "0" },
        { "passes", Jar() with { Passes = [.. Enumerable.Repeat(1, 11)] }, "11" },
        { "on", Jar() with { On = TestBook.Today.AddDays(1) }, "2026-08-21" },
        { "on", Jar() with { On = new DateOnly(1066, 10, 14) }, "1066-10-14" },
        { "method", Jar() with { Method = "guess" }, "guess" },
        { "method", Jar() with { Method = "natural-fall" }, "natural-fall" },
        { "measure", Jar(bees: new JarBees(BeeBasis.Assumed, 300, 0.15, "thimble")), "thimble" },
        { "colony", Jar() with { Colony = new ColonyId(new Guid(1, 2, 3, new byte[8])) }, "00000001-0002-0003-0000-000000000000" },
        { "round", Jar() with { Round = new RoundId(new Guid(1, 2, 3, new byte[8])) }, "00000001-0002-0003-0000-000000000000" },
    };

    [Theory]
    [MemberData(nameof(BadJars))]
    public void Check_BadJar_NamesFieldAndValue(string field, JarRecord jar, string given)
    {
        var problem = Assert.Single(Errors(jar), p => p.Field == field);
        Assert.Equal(given, problem.Given);
        Assert.EndsWith(".", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(9000d, null, null, "altitude")]
    [InlineData(400d, 3, null, "broodTo")]
    [InlineData(400d, 13, 9, "broodFrom")]
    [InlineData(400d, 11, 3, "broodTo")]
    [InlineData(400d, 6, 6, "broodTo")]
    public void Check_SiteThatCannotBe_NamesTheField(double altitude, int? from, int? to, string field) =>
        Assert.Equal(field, Assert.Single(Check(new ApiaryRecord(_apiary, Altitude: altitude, BroodFrom: from, BroodTo: to))).Field);

    [Fact]
    public void Check_SouthernMonthsOverTheNewYear_AreASeason() =>
        Assert.Empty(Check(new ApiaryRecord(_apiary, Latitude: -38, Altitude: 400, BroodFrom: 8, BroodTo: 4)));

    [Fact]
    public void Check_OrdinaryJar_HasNoProblem() => Assert.Empty(Check(Jar() with { Colony = _colony }));

    [Fact]
    public void Check_JarOfADeadColony_IsDoubtedButMayBeKept()
    {
        _book.Write(new ColonyDied(_colony, new DateOnly(2026, 7, 1)));
        var problem = Assert.Single(Check(Jar() with { Colony = _colony }));
        Assert.Equal(Gravity.Doubt, problem.Gravity);
        Assert.Contains("1 Jul 2026", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_TheSameJarTwice_IsDoubted()
    {
        _book.Write(Jar() with { Colony = _colony });
        Assert.Equal(Gravity.Doubt, Assert.Single(Check(Jar() with { Colony = _colony })).Gravity);
    }

    [Fact]
    public void Check_NamesTakenOrMissing_AreErrors()
    {
        Assert.Contains(Errors(new ApiaryRecord(NewApiary(), " orchard ")), p => p.Field == "name");
        Assert.Contains(Errors(new ApiaryRecord(NewApiary())), p => p.Field == "name");
        Assert.Contains(Errors(new ColonyRecord(NewColony(), "1", _apiary)), p => p.Field == "name");
        Assert.Contains(Errors(new ColonyRecord(NewColony(), "2")), p => p.Field == "apiary");
        Assert.Contains(Errors(new ColonyRecord(NewColony(), "2", NewApiary())), p => p.Field == "apiary");
        Assert.Empty(Errors(new ColonyRecord(NewColony(), "2", _apiary)));
    }

    [Fact]
    public void Check_NameOfADeadColony_MayBeUsedAgain()
    {
        _book.Write(new ColonyDied(_colony, new DateOnly(2026, 7, 1)));
        Assert.Empty(Errors(new ColonyRecord(NewColony(), "1", _apiary)));
    }

    [Fact]
    public void Check_EndingAColonyTwice_IsAnError()
    {
        _book.Write(new ColonyDied(_colony, new DateOnly(2026, 7, 1)));
        Assert.Contains(Errors(new ColonyDied(_colony, new DateOnly(2026, 7, 2))), p => p.Field == "colony");
        Assert.Contains(Errors(new ColoniesUnited(_colony, _colony, new DateOnly(2026, 7, 2))), p => p.Field == "into");
    }

    [Fact]
    public void Check_PolicyLinesCrossedOrMissing_AreErrors()
    {
        Assert.Contains(Errors(new PolicyRecord(OwnWatch: 4, OwnAct: 3)), p => p.Field == "ownWatch");
        Assert.Contains(Errors(new PolicyRecord(LinePolicy: "own")), p => p.Field == "ownAct");
        Assert.Contains(Errors(new PolicyRecord(LinePolicy: "hearsay")), p => p.Field == "linePolicy");
        Assert.Contains(Errors(new PolicyRecord(Confidence: 1)), p => p.Field == "confidence");
        Assert.Contains(Errors(new PolicyRecord(SureBelow: 0.5, SureAbove: 0.5)), p => p.Field == "sureBelow");
        Assert.Empty(Errors(new PolicyRecord(LinePolicy: "own", OwnWatch: 1, OwnAct: 2)));
    }

    [Fact]
    public void Check_EmptyInspection_IsAnError()
    {
        Assert.Contains(Errors(new InspectionRecord(_colony, TestBook.Today)), p => p.Field == "note");
        Assert.Contains(Errors(new InspectionRecord(_colony, TestBook.Today, FramesOfBees: 400)), p => p.Field == "framesOfBees");
        Assert.Empty(Check(new InspectionRecord(_colony, TestBook.Today, FramesOfBees: 9.5, QueenSeen: false)));
    }

    [Fact]
    public void CheckStrike_NoReasonUnknownOrStruck_AreErrors()
    {
        var jar = _book.Jar(_colony, TestBook.Today, 5);
        Assert.Contains(RecordRules.CheckStrike(new Strike(jar.Id, " "), _book.Ledger), p => p.Field == "reason");
        Assert.Contains(RecordRules.CheckStrike(new Strike(new EntryId(_book.Ids.Next()), "wrong"), _book.Ledger), p => p.Field == "entry");
        _book.Strike(jar);
        Assert.Contains(RecordRules.CheckStrike(new Strike(jar.Id, "again"), _book.Ledger), p => p.Field == "entry");
    }

    [Fact]
    public void Check_RoundOfNobodyOrBadSeed_AreErrors()
    {
        var round = new RoundRecord(new RoundId(_book.Ids.Next()), TestBook.Today, "check", "alcohol-wash", "all", "12", [new ApiaryDraw(_apiary, [_colony], [])]);
        Assert.Empty(Check(round));
        Assert.Contains(Errors(round with { Draws = [] }), p => p.Field == "draws");
        Assert.Contains(Errors(round with { Seed = "-3" }), p => p.Field == "seed");
        Assert.Contains(Errors(round with { On = TestBook.Today.AddYears(3) }), p => p.Field == "on");
        Assert.Contains(Errors(round with { Method = "worker-brood" }), p => p.Field == "method");
        _book.Write(round);
        Assert.Contains(Errors(new RoundSkip(round.Round, _colony, "", TestBook.Today)), p => p.Field == "reason");
        Assert.Contains(Errors(new RoundSkip(round.Round, NewColony(), "gone", TestBook.Today)), p => p.Field == "colony");
    }

    private static JarRecord Jar(int mites = 9, JarBees? bees = null) =>
        new(TestBook.Today, "alcohol-wash", [mites], bees ?? JarBees.Counted(300));

    private ApiaryId NewApiary() => new(_book.Ids.Next());

    private ColonyId NewColony() => new(_book.Ids.Next());

    private IReadOnlyList<Problem> Check(Record record) => RecordRules.Check(record, _book.State, TestBook.Knowledge, TestBook.Today);

    private List<Problem> Errors(Record record) => [.. Check(record).Where(p => p.Gravity == Gravity.Error)];
}
