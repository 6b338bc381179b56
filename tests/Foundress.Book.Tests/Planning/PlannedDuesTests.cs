using System.Globalization;
using Foundress.Book.Dues;
using Foundress.Book.Journal;
using Foundress.Book.Planning;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Book.Seasons;

namespace Foundress.Book.Tests.Planning;

public sealed class PlannedDuesTests
{
    private static readonly DateOnly Today = JulyApiary.Today;
    private readonly JulyApiary _scene = new();

    [Fact]
    public void For_KeptPlan_ComesByDayUntilItIsRecorded()
    {
        Keep(("thymol", 30), ("formic-acid-short", 7));
        var dues = Dues(Today);
        Assert.Equal(["formic-acid-short", "thymol"], dues.Select(due => due.Use.Agent));
        Assert.Equal(Today.AddDays(7), dues[0].From);
        Assert.Equal(Today.AddDays(13), dues[0].To);
        Assert.Contains("read the label", dues[0].Text, StringComparison.Ordinal);

        _scene.Book.Write(new ControlRecord(new ControlId(_scene.Book.Ids.Next()), "formic-acid-short", Today.AddDays(9), [_scene.Colonies[0]]));
        Assert.Equal("thymol", Assert.Single(Dues(Today.AddDays(9))).Use.Agent);
        Assert.Empty(Dues(Today.AddDays(30 + 6 + 29)));
    }

    [Fact]
    public void For_PlanThatGrewOldOrIsRuledOutNow_SaysSo()
    {
        Keep(("thymol", 7));
        Assert.DoesNotContain("search again", Assert.Single(Dues(Today)).Text, StringComparison.Ordinal);

        _scene.Book.Jar(_scene.Colonies[0], Today, 9);
        Assert.Contains("1 jar came since it was worked out on 20 Jul 2026: search again", Assert.Single(Dues(Today)).Text, StringComparison.Ordinal);

        _scene.Book.Write(new InspectionRecord(_scene.Colonies[1], Today, FramesOfBees: 14, FramesOfBrood: 7, SupersOn: true));
        Assert.Contains("ruled out: Supers are on.", Assert.Single(Dues(Today)).Text, StringComparison.Ordinal);

        foreach (var colony in _scene.Colonies)
            _scene.Book.Write(new ColonyDied(colony, Today));
        Assert.Contains("None of its colonies lives", Assert.Single(Dues(Today.AddDays(1))).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void DueItems_KeptPlan_StandsInTheOneListOfWhatIsDue()
    {
        Keep(("thymol", 3));
        var state = _scene.Book.State;
        var items = new DueItems(state, TestBook.Knowledge, new SeasonStrips(state, TestBook.Knowledge, CultureInfo.InvariantCulture));
        var item = Assert.Single(items.On(Today), item => item.Kind == DueKind.Planned);
        Assert.Equal((DueTime.Coming, Today.AddDays(3), Today.AddDays(9)), (item.Time, item.From, item.To));
        Assert.Equal(_scene.Colonies, item.Colonies);
        Assert.Equal(DueTime.Overdue, Assert.Single(items.On(Today.AddDays(12)), one => one.Kind == DueKind.Planned).Time);
        Assert.Empty(Problems(new DueSnoozed(item.Key, Today.AddDays(7), "rain")));
    }

    [Fact]
    public void For_LaterPlanForTheSameColonies_TakesItsPlace()
    {
        Keep(("thymol", 30));
        var second = Keep(("hop-beta-acids", 14));
        Assert.Equal("hop-beta-acids", Assert.Single(Dues(Today)).Use.Agent);
        _scene.Book.Strike(second);
        Assert.Equal("thymol", Assert.Single(Dues(Today)).Use.Agent);
    }

    [Fact]
    public void Plan_WrittenAndRead_IsTheSame()
    {
        var record = Plan(("thymol", 30));
        var read = Assert.IsType<ControlPlanRecord>(RecordJson.TryRead(RecordKinds.ControlPlan, RecordJson.Write(record), out var problem));
        Assert.Null(problem);
        Assert.Equal(record.Uses, read.Uses);
        Assert.Equal(record.Colonies, read.Colonies);
        Assert.Contains(Keep(("thymol", 30)), _scene.Book.State.EntriesOf(_scene.Colonies[0]));
    }

    [Fact]
    public void Check_SlipsInAPlan_AreNamed()
    {
        Assert.Empty(Problems(Plan(("thymol", 30))));
        Assert.Contains(Problems(Plan()), problem => problem.Field == "uses");
        Assert.Contains(Problems(Plan(("thymol", -3))), problem => problem.Message.Contains("A planned start lies from", StringComparison.Ordinal));
        Assert.Contains(Problems(Plan(("thymol", 30)) with { Colonies = [] }), problem => problem.Field == "colonies");
        Assert.Contains(Problems(Plan(("thymol", 30)) with { Tolerance = 2 }), problem => problem.Field == "tolerance");
        Assert.Contains(Problems(Plan(("thymol", 30)) with { Apiary = new ApiaryId(Guid.Empty) }), problem => problem.Field == "apiary");
        Assert.Contains(Problems(new PolicyRecord(Tolerance: 0.9)), problem => problem.Field == "tolerance");
        Assert.Contains(Problems(new AgentRecord("thymol", CostPerColony: -1)), problem => problem.Field == "costPerColony");
    }

    private IReadOnlyList<PlannedDue> Dues(DateOnly on) => PlannedDues.For(_scene.Book.State, TestBook.Knowledge, on);

    private IReadOnlyList<Problem> Problems(Foundress.Book.Records.Record record) => RecordRules.Check(record, _scene.Book.State, TestBook.Knowledge, Today);

    private Entry Keep(params (string Agent, int Day)[] uses) => _scene.Book.Write(Plan(uses));

    private ControlPlanRecord Plan(params (string Agent, int Day)[] uses) => new(
        _scene.Id, _scene.Colonies, [.. uses.Select(use => new PlannedUse(use.Agent, Today.AddDays(use.Day), Today.AddDays(use.Day + 10)))], Today, 0.2, 0.1);
}
