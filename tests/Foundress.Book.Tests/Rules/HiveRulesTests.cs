using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Record = Foundress.Book.Records.Record;

namespace Foundress.Book.Tests.Rules;

public sealed class HiveRulesTests
{
    private static readonly DateOnly July = new(2026, 7, 1);
    private readonly TestBook _book = new();
    private readonly ColonyId _colony;

    public HiveRulesTests() => _colony = _book.Colony(_book.Apiary("Orchard"), "1");

    [Fact]
    public void Check_OrdinaryRecords_HaveNoProblem()
    {
        Assert.Empty(Check(new QueenRecord(_colony, July, QueenEvent.Lost)));
        Assert.Empty(Check(new QueenRecord(_colony, July, QueenEvent.Swarmed, 0.5)));
        Assert.Empty(Check(new ColonyBegan(_colony, July, ColonyBeginning.Package, KilogramsOfBees: 1.4)));
        Assert.Empty(Check(new ColonyBegan(_colony, July, ColonyBeginning.Nucleus, FramesOfBees: 5, FramesOfBrood: 3)));
        Assert.Empty(Check(new BroodRemoved(_colony, July, RemovedBrood.Drone, 0.8)));
    }

    [Fact]
    public void Check_BadValues_NameFieldAndFix()
    {
        Assert.Contains("0 to 1", Error(new QueenRecord(_colony, July, QueenEvent.Swarmed, 60), "shareOfBees"), StringComparison.Ordinal);
        Assert.Contains("swarm only", Error(new QueenRecord(_colony, July, QueenEvent.Lost, 0.5), "shareOfBees"), StringComparison.Ordinal);
        Assert.Contains("Use one of: Lost,", Error(new QueenRecord(_colony, July, (QueenEvent)77), "event"), StringComparison.Ordinal);
        Assert.Contains("future", Error(new QueenRecord(_colony, TestBook.Today.AddDays(1), QueenEvent.Lost), "on"), StringComparison.Ordinal);
        Assert.Contains("0.1 to 10", Error(new ColonyBegan(_colony, July, ColonyBeginning.Package, KilogramsOfBees: 1400), "kilogramsOfBees"), StringComparison.Ordinal);
        Assert.Contains("0 to 60", Error(new ColonyBegan(_colony, July, ColonyBeginning.Whole, FramesOfBees: -1), "framesOfBees"), StringComparison.Ordinal);
        Assert.Contains("above 0", Error(new BroodRemoved(_colony, July, RemovedBrood.Drone, 0), "share"), StringComparison.Ordinal);
        Assert.Contains("above 0", Error(new BroodRemoved(_colony, July, RemovedBrood.All, double.NaN), "share"), StringComparison.Ordinal);
        Assert.Contains("not in the book", Error(new BroodRemoved(new ColonyId(_book.Ids.Next()), July, RemovedBrood.All, 1), "colony"), StringComparison.Ordinal);
    }

    [Fact]
    public void Check_ReleaseWithoutACage_IsDoubted()
    {
        Assert.Contains("no caging", Doubt(new QueenRecord(_colony, July, QueenEvent.Released)), StringComparison.Ordinal);
        _book.Write(new QueenRecord(_colony, July.AddDays(-24), QueenEvent.Caged));
        Assert.Empty(Check(new QueenRecord(_colony, July, QueenEvent.Released)));
    }

    [Fact]
    public void Check_TheSameTwice_IsDoubted()
    {
        _book.Write(new QueenRecord(_colony, July, QueenEvent.Lost));
        Assert.Contains("already in the book", Doubt(new QueenRecord(_colony, July, QueenEvent.Lost)), StringComparison.Ordinal);
    }

    [Fact]
    public void Check_PackageWithBrood_IsDoubted() =>
        Assert.Contains("without brood", Doubt(new ColonyBegan(_colony, July, ColonyBeginning.Package, FramesOfBrood: 2)), StringComparison.Ordinal);

    [Fact]
    public void Check_BeganAfterSomethingHappened_IsDoubted()
    {
        _book.Write(new QueenRecord(_colony, July.AddDays(-5), QueenEvent.Lost));
        Assert.Contains("before it began", Doubt(new ColonyBegan(_colony, July, ColonyBeginning.Package)), StringComparison.Ordinal);
    }

    [Fact]
    public void Check_AfterItsDeath_IsDoubted()
    {
        _book.Write(new ColonyDied(_colony, July));
        Assert.Contains("died on 1 Jul 2026", Doubt(new QueenRecord(_colony, July.AddDays(1), QueenEvent.Lost)), StringComparison.Ordinal);
    }

    private IReadOnlyList<Problem> Check(Record record) => RecordRules.Check(record, _book.State, TestBook.Knowledge, TestBook.Today);

    private string Error(Record record, string field) => Assert.Single(Check(record), p => p.Gravity == Gravity.Error && p.Field == field).Message;

    private string Doubt(Record record)
    {
        var problem = Assert.Single(Check(record));
        Assert.Equal(Gravity.Doubt, problem.Gravity);
        return problem.Message;
    }
}
