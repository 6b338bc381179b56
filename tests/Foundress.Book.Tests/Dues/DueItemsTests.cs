using System.Globalization;
using CsCheck;
using Foundress.Book.Dues;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Book.Seasons;
using Foundress.Book.Tests.Controls;

namespace Foundress.Book.Tests.Dues;

public sealed class DueItemsTests
{
    private static readonly DateOnly Today = TestBook.Today;
    private static readonly string[] Agents = ["formic-acid-long", "thymol", "oxalic-acid-trickle", "garlic"];
    private readonly ControlScene _scene = new();

    [Fact]
    public void On_JarsOverTheLine_DecisionComesFirstAndAsksForAnInspection()
    {
        _scene.Book.Jar(_scene.Colonies[0], Today.AddDays(-2), 40);
        var items = Items();
        Assert.Equal(DueKind.Decide, items[0].Kind);
        Assert.Equal([_scene.Colonies[0]], items[0].Colonies);
        Assert.Contains(items, item => item.Kind == DueKind.Inspect && item.Colonies.SequenceEqual([_scene.Colonies[0]]));

        _scene.Book.Write(new InspectionRecord(_scene.Colonies[0], Today, 8, 4, SupersOn: false));
        Assert.DoesNotContain(Items(), item => item.Kind == DueKind.Inspect);
    }

    // Common practice, no source: a cluster is not pulled apart in the cold.
    [Fact]
    public void On_JarsOverTheLineInWinter_WarnsOfTheCluster()
    {
        var winter = new DateOnly(2026, 12, 20);
        _scene.Book.Jar(_scene.Colonies[0], winter.AddDays(-2), 40);
        Assert.Contains("cluster", Items(winter).First(item => item.Kind == DueKind.Inspect).Text, StringComparison.Ordinal);
        _scene.Book.Jar(_scene.Colonies[1], Today.AddDays(-2), 40);
        Assert.DoesNotContain("cluster", Items(Today).First(item => item.Kind == DueKind.Inspect).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void On_ControlStartedAfterTheJar_NothingToDecideAnyMore()
    {
        _scene.Book.Jar(_scene.Colonies[0], Today.AddDays(-2), 40);
        _scene.Use("formic-acid-long", Today.AddDays(-1), 14, _scene.Colonies[0]);
        var items = Items();
        Assert.DoesNotContain(items, item => item.Kind == DueKind.Decide);
        Assert.Contains(items, item => item.Kind == DueKind.TakeOut && item.From == Today.AddDays(13) && item.Time == DueTime.Coming);
        Assert.Contains("a control was started since", new SeasonStrips(_scene.Book.State, TestBook.Knowledge, CultureInfo.InvariantCulture).Sentence(_scene.Book.State.Apiaries[_scene.Apiary], Today), StringComparison.Ordinal);
    }

    [Fact]
    public void On_StripsPastTheirEnd_AreOverdueUntilSomebodySaysTheyAreOut()
    {
        var use = _scene.Use("formic-acid-long", Today.AddDays(-20), 14);
        var overdue = Assert.Single(Items(), item => item.Kind == DueKind.TakeOut);
        Assert.Equal((DueTime.Overdue, 3), (overdue.Time, overdue.Colonies.Count));

        _scene.Book.Write(new ControlEnded(use.Control, Today.AddDays(-6), Colonies: [_scene.Colonies[0]]));
        Assert.Equal(_scene.Colonies.Skip(1), Assert.Single(Items(), item => item.Kind == DueKind.TakeOut).Colonies);
        _scene.Book.Write(new ControlEnded(use.Control, Today, Colonies: [.. _scene.Colonies.Skip(1)]));
        Assert.DoesNotContain(Items(), item => item.Kind == DueKind.TakeOut);
        Assert.Contains(Items(), item => item.Kind == DueKind.Prove);
    }

    [Fact]
    public void On_OpenControlOfAColonyThatWasStruckOut_AsksForNothing()
    {
        var use = _scene.Use("formic-acid-long", Today.AddDays(-20), 14);
        _scene.Book.Write(new ControlEnded(use.Control, Today.AddDays(-6), Colonies: [.. _scene.Colonies.Skip(1)]));
        _scene.Book.Strike(_scene.Book.Ledger.Entries.First(entry => entry.Kind == RecordKinds.Colony), "never was");
        Assert.DoesNotContain(Items(), item => item.Kind == DueKind.TakeOut);
    }

    [Fact]
    public void On_PutOff_StandsLastWithItsReasonAndComesBackOnItsDay()
    {
        _scene.Use("formic-acid-long", Today.AddDays(-20), 14);
        var key = Items().First(item => item.Kind == DueKind.TakeOut).Key;
        _scene.Book.Write(new DueSnoozed(key, Today.AddDays(2), "rain"));
        var last = Items()[^1];
        Assert.Equal((key, DueTime.PutOff, "rain"), (last.Key, last.Time, last.PutOff!.Reason));
        Assert.Equal(DueTime.Overdue, Items(Today.AddDays(2)).First(item => item.Key == key).Time);

        _scene.Book.Write(new DueSnoozed(key, Today, "dry after all"));
        Assert.Equal(DueTime.Overdue, Items().First(item => item.Key == key).Time);
    }

    [Fact]
    public void On_SupersAndHarvest_StandOnTheirDays()
    {
        _scene.Book.Write(new ApiaryDays(_scene.Apiary, Today.AddDays(9), Today));
        Assert.Contains(Items(), item => item is { Kind: DueKind.SupersOn, Time: DueTime.Coming });
        Assert.Contains(Items(), item => item is { Kind: DueKind.Harvest, Time: DueTime.Now });
        _scene.Book.Write(new ApiaryDays(_scene.Apiary));
        Assert.DoesNotContain(Items(), item => item.Kind is DueKind.SupersOn or DueKind.Harvest);
    }

    [Theory]
    [InlineData("", 3, "reason")]
    [InlineData("rain", 900, "until")]
    public void Check_PutOffWithoutReasonOrForYears_NamesTheField(string reason, int days, string field)
    {
        var problem = Assert.Single(RecordRules.Check(new DueSnoozed("sample:x", Today.AddDays(days), reason), _scene.Book.State, TestBook.Knowledge, Today));
        Assert.Equal((Gravity.Error, field), (problem.Gravity, problem.Field));
    }

    [Fact]
    public void Check_SupersInAnotherYear_NamesTheField() =>
        Assert.Contains(RecordRules.Check(new ApiaryDays(_scene.Apiary, Today.AddYears(3)), _scene.Book.State, TestBook.Knowledge, Today), problem => problem is { Gravity: Gravity.Error, Field: "supersOn" });

    // Whatever was recorded, the order holds: keys are unique, put off last, overdue before now before coming.
    [Fact]
    public void On_AnyUses_KeysAreUniqueAndTheOrderHolds() =>
        Gen.Select(Gen.Int[-80, 0], Gen.Int[0, 60], Gen.Int[0, 3], Gen.Bool, Gen.Int[0, 60])
            .Array[0, 6]
            .Sample(
                uses =>
                {
                    var scene = new ControlScene();
                    foreach (var (start, days, which, ends, mites) in uses)
                    {
                        var agent = Agents[which];
                        scene.Book.Jar(scene.Colonies[mites % 3], Today.AddDays(start), mites);
                        var use = scene.Use(agent, Today.AddDays(start), days, scene.Colonies[mites % 3]);
                        if (ends)
                            scene.Book.Write(new ControlEnded(use.Control, Today.AddDays(Math.Min(0, start + days))));
                    }

                    var items = Items(Today, scene);
                    if (items.Count > 0)
                        scene.Book.Write(new DueSnoozed(items[0].Key, Today.AddDays(3), "rain"));
                    items = Items(Today, scene);
                    Assert.Equal(items.Count, items.Select(item => item.Key).Distinct().Count());
                    var times = items.Where(item => item.Kind != DueKind.Decide || item.Time == DueTime.PutOff).Select(item => item.Time).ToArray();
                    Assert.Equal(times.Order(), times);
                },
                iter: 60);

    private IReadOnlyList<DueItem> Items(DateOnly? today = null) => Items(today ?? Today, _scene);

    private static IReadOnlyList<DueItem> Items(DateOnly today, ControlScene scene)
    {
        var state = scene.Book.State;
        return new DueItems(state, TestBook.Knowledge, new SeasonStrips(state, TestBook.Knowledge, CultureInfo.InvariantCulture)).On(today);
    }
}
