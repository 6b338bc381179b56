using Foundress.Book.Controls;
using Foundress.Book.Records;
using Foundress.Knowledge;

namespace Foundress.Book.Tests.Controls;

public sealed class ControlListTests
{
    private readonly ControlScene _scene = new();

    private ControlList Controls => ControlList.Of(_scene.Book.State, TestBook.Knowledge);

    [Fact]
    public void Find_WithoutOwnFigures_IsTheKnownControl()
    {
        Assert.Same(TestBook.Knowledge.Controls.Agents["thymol"], Controls.Find("thymol"));
        Assert.Null(Controls.Find("garlic"));
        Assert.Equal("garlic", Controls.TitleOf("garlic"));
        Assert.False(Controls.HasOwnFigures("thymol"));
    }

    [Fact]
    public void Find_LabelInHand_ReplacesTheFiguresAndNamesItsSource()
    {
        _scene.Book.Write(new AgentRecord("formic-acid-short", Days: 14, Warmest: 25, DaysBeforeSupers: 3, LabelSource: "pack of 2026"));
        _scene.Book.Write(new AgentRecord("formic-acid-short", Supers: SuperRule.NotOn, WithdrawalDays: 1));

        var agent = Controls.Find("formic-acid-short")!;
        Assert.Equal((14d, 3d), (agent.Days.Value, agent.DaysBeforeSupers!.Value));
        Assert.Equal(25, Assert.Single(agent.Temperatures, limit => !limit.IsLeast).Degrees.Value);
        Assert.Equal(10, Assert.Single(agent.Temperatures, limit => limit.IsLeast).Degrees.Value);
        Assert.All(agent.Supers, ruling => Assert.Equal(SuperRule.NotOn, ruling.Rule));
        Assert.Equal("the keeper's own entry: pack of 2026", agent.Days.Source.Text);
        Assert.Equal(14, agent.Model.Days.Value);
        Assert.Equal(1, Controls.WithdrawalDays("formic-acid-short"));
        Assert.False(Controls.IsRefused("formic-acid-short"));
    }

    [Fact]
    public void Find_ControlOfTheKeepersOwn_TakesTheRestFromTheOneItIsLike()
    {
        _scene.Book.Write(new AgentRecord("my-thymol", "Thymol in foam", "thymol", ["foam"], Days: 35, Refused: true));

        var agent = Controls.Find("my-thymol")!;
        Assert.Equal(("Thymol in foam", "thymol", 35d), (agent.Title, agent.Ingredient, agent.Days.Value));
        Assert.Equal(TestBook.Knowledge.Controls.Agents["thymol"].Model.AdultKillPerDay, agent.Model.AdultKillPerDay);
        Assert.Equal("my-thymol", Controls.All[^1].Id);
        Assert.Equal("my-thymol", Assert.Single(Controls.Named("Foam")).Id);
        Assert.True(Controls.IsRefused("my-thymol"));
    }

    [Fact]
    public void Named_KnownNames_AreThoseOfTheKnowledge() =>
        Assert.Equal(["oxalic-acid-trickle", "oxalic-acid-vapour", "oxalic-acid-strips"], Controls.Named("oxalic acid").Select(a => a.Id));
}
