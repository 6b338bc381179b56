using Foundress.Book.Choosing;
using Foundress.Book.Planning;
using Foundress.Book.Records;
using Foundress.Book.Tests.Planning;

namespace Foundress.Book.Tests.Choosing;

public sealed class ColonyDifferencesTests
{
    private static readonly DateOnly Today = JulyApiary.Today;
    private readonly JulyApiary _scene = new(3);

    [Fact]
    public void Of_AlikeColonies_SaysNothing() => Assert.Empty(Sentences(Today));

    [Fact]
    public void Of_ColoniesThatDiffer_NamesThemInEachGroup()
    {
        _scene.Book.Write(new InspectionRecord(_scene.Colonies[1], Today, FramesOfBees: 10, FramesOfBrood: 0, SupersOn: true));
        Assert.Equal(["Brood was seen in 1 and 3; none in 2.", "Supers are on 2; not on 1 and 3."], Sentences(Today));
    }

    [Fact]
    public void Of_OneNotLookedAtForWeeks_IsNamedAsNotNoted()
    {
        _scene.Book.Write(new InspectionRecord(_scene.Colonies[0], Today.AddDays(10), FramesOfBees: 10, FramesOfBrood: 4, SupersOn: false));
        Assert.Contains("Brood was seen in 1; not noted in 21 days in 2 and 3.", Sentences(Today.AddDays(20)));
    }

    // What the keeper says on the page stands in the place of what the book does not know, and no longer than an inspection would.
    [Fact]
    public void Said_HoldsAsLongAsAnInspection()
    {
        var late = Today.AddDays(40);
        var unknown = PlanSituations.On(_scene.Apiary, _scene.Colonies, _scene.Book.State, TestBook.Knowledge, late, new PlanOptions());
        Assert.Null(unknown.SupersOn);
        var said = new PlanOptions { Said = new SaidOfColonies(late, SupersOn: false, Brood: BroodState.None, Clustered: false) };
        var known = PlanSituations.On(_scene.Apiary, _scene.Colonies, _scene.Book.State, TestBook.Knowledge, late, said);
        Assert.Equal((false, BroodState.None, false), (known.SupersOn, known.Brood, known.Clustered));
        Assert.Null(PlanSituations.On(_scene.Apiary, _scene.Colonies, _scene.Book.State, TestBook.Knowledge, late.AddDays(22), said).SupersOn);
        Assert.Null(PlanSituations.On(_scene.Apiary, _scene.Colonies, _scene.Book.State, TestBook.Knowledge, late.AddDays(-1), said).SupersOn);
    }

    private IReadOnlyList<string> Sentences(DateOnly on) =>
        ColonyDifferences.Of(_scene.Apiary, _scene.Book.State.ColoniesIn(_scene.Id, Today), _scene.Book.State, TestBook.Knowledge, on);
}
