using Foundress.Book.Choosing;
using Foundress.Book.Controls;
using Foundress.Book.Records;
using Foundress.Book.Tests.Controls;

namespace Foundress.Book.Tests.Choosing;

public sealed class HoneyAndClusterTests
{
    private readonly ControlScene _scene = new();

    [Fact]
    public void Of_SupersDueBeforeTheEnd_RulesTheControlOut()
    {
        var start = new DateOnly(2026, 4, 1);
        foreach (var colony in _scene.Colonies)
            _scene.Book.Write(new InspectionRecord(colony, start, 8, 4, SupersOn: false));
        Assert.DoesNotContain(Offer("thymol", start).Against, reason => reason.Ground == Ground.Supers);
        _scene.Book.Write(new ApiaryDays(_scene.Apiary, start.AddDays(10)));
        Assert.Contains(Offer("thymol", start).Against, reason => reason.Ground == Ground.Supers);
    }

    [Fact]
    public void Of_ClusterSeen_ComesBeforeTheSeason()
    {
        var summer = new DateOnly(2026, 6, 20);
        Assert.False(Situation(summer).InCluster);
        _scene.Book.Write(new InspectionRecord(_scene.Colonies[0], summer, Clustered: true));
        Assert.True(Situation(summer).InCluster);
        foreach (var colony in _scene.Colonies)
            _scene.Book.Write(new InspectionRecord(colony, new DateOnly(2026, 12, 20), Clustered: false));
        Assert.False(Situation(new DateOnly(2026, 12, 21)).InCluster);
    }

    private Situation Situation(DateOnly start) =>
        Situations.Of(_scene.Book.State.Apiaries[_scene.Apiary], [.. _scene.Colonies], _scene.Book.State, TestBook.Knowledge, start);

    private ControlOffer Offer(string agent, DateOnly start)
    {
        var controls = ControlList.Of(_scene.Book.State, TestBook.Knowledge);
        return ControlChoices.For(controls.Find(agent)!, Situation(start), controls);
    }
}
