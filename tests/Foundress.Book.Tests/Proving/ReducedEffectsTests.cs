using Foundress.Book.Choosing;
using Foundress.Book.Controls;
using Foundress.Book.Proving;
using Foundress.Book.Records;
using Foundress.Book.Tests.Controls;

namespace Foundress.Book.Tests.Proving;

public sealed class ReducedEffectsTests
{
    private static readonly DateOnly First = new(2025, 8, 10);
    private readonly ControlScene _scene = new();

    [Fact]
    public void In_FailedUse_SpeaksAgainstItsGroupEvenAfterAnother()
    {
        Used("tau-fluvalinate-strips", First, before: 40, after: 38);
        _scene.Use("oxalic-acid-trickle", new DateOnly(2025, 12, 20), 0);

        var found = Assert.Single(On(new DateOnly(2026, 8, 1)));
        Assert.Equal(("3a", First), (found.ModeId, found.Start));
        var situation = Situations.Of(_scene.Book.State.Apiaries[_scene.Apiary], _scene.Colonies, _scene.Book.State, TestBook.Knowledge, new DateOnly(2026, 8, 1));
        var offers = ControlChoices.For(situation, ControlList.Of(_scene.Book.State, TestBook.Knowledge));
        foreach (var agent in (string[])["tau-fluvalinate-strips", "flumethrin-strips"])
        {
            Assert.Contains(
                offers.Single(offer => offer.Agent.Id == agent).Against,
                reason => reason.Text.StartsWith("The jars after Tau-fluvalinate strips of 10 Aug 2025 showed a reduced effect of pyrethroids (group 3A) in this apiary", StringComparison.Ordinal));
        }

        Assert.DoesNotContain(offers.Single(offer => offer.Agent.Id == "amitraz-strips").Against, reason => reason.Text.Contains("reduced effect", StringComparison.Ordinal));
    }

    [Fact]
    public void In_LaterUseThatWorked_SpeaksForItAgain()
    {
        Used("tau-fluvalinate-strips", First, before: 40, after: 38);
        Used("flumethrin-strips", new DateOnly(2026, 3, 1), before: 200, after: 0);

        Assert.Single(On(new DateOnly(2026, 3, 1)));
        Assert.Empty(On(new DateOnly(2026, 8, 1)));
    }

    [Fact]
    public void In_BeforeTheUseLongAfterItOrElsewhere_SaysNothing()
    {
        Used("tau-fluvalinate-strips", First, before: 40, after: 38);

        Assert.Empty(On(First));
        Assert.Empty(On(First.AddYears(ReducedEffects.Years).AddDays(1)));
        Assert.Empty(ReducedEffects.In(_scene.Book.Apiary("Elsewhere"), _scene.Book.State, TestBook.Knowledge, new DateOnly(2026, 8, 1)));
    }

    private IReadOnlyList<ReducedEffect> On(DateOnly day) => ReducedEffects.In(_scene.Apiary, _scene.Book.State, TestBook.Knowledge, day);

    private void Used(string agent, DateOnly start, int before, int after)
    {
        foreach (var colony in _scene.Colonies)
            _scene.Book.Jar(colony, start.AddDays(-2), before);
        var use = _scene.Use(agent, start, 42);
        _scene.Book.Write(new ControlEnded(use.Control, start.AddDays(42)));
        foreach (var colony in _scene.Colonies)
            _scene.Book.Jar(colony, start.AddDays(45), after);
    }
}
