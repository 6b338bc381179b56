using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rounds;
using Foundress.Book.Rules;

namespace Foundress.Book.Tests.Rounds;

public sealed class RoundPlannerTests
{
    private static readonly DateOnly Day = new(2026, 8, 20);

    // Rules of thumb: common practice, no source.
    [Theory]
    [InlineData(1, 1)]
    [InlineData(9, 9)]
    [InlineData(10, 8)]
    [InlineData(40, 8)]
    public void Propose_OneApiary_FollowsTheRuleOfThumb(int colonies, int take)
    {
        var (book, apiary) = Apiary(colonies);
        var proposal = new RoundPlanner(book.State, TestBook.Knowledge).Propose([apiary], Day);
        Assert.Equal(take, proposal.Jars);
        Assert.Contains("common practice, no source", proposal.Rule, StringComparison.Ordinal);
    }

    [Fact]
    public void Propose_ApiaryWithoutColonies_IsLeftOut()
    {
        var (book, apiary) = Apiary(3);
        var empty = book.Apiary("Empty");
        var proposal = new RoundPlanner(book.State, TestBook.Knowledge).Propose([apiary, empty, apiary], Day);
        Assert.Equal("Orchard", Assert.Single(proposal.Apiaries).Apiary.Name);
    }

    [Fact]
    public void Draw_SameSeed_SameColoniesAndEverybodyIsChosenOrReserve()
    {
        var (book, apiary) = Apiary(20);
        var proposal = new RoundPlanner(book.State, TestBook.Knowledge).Propose([apiary], Day);
        var round = new RoundId(book.Ids.Next());
        var one = Draw(proposal, round, 42);
        var again = Draw(proposal, round, 42);
        Assert.Equal(one.Draws[0].Chosen, again.Draws[0].Chosen);
        Assert.Equal(one.Draws[0].Reserves, again.Draws[0].Reserves);
        Assert.NotEqual(one.Draws[0].Chosen, Draw(proposal, round, 43).Draws[0].Chosen);
        Assert.Equal(20, one.Draws[0].Chosen.Concat(one.Draws[0].Reserves).Distinct().Count());
        Assert.Empty(RecordRules.Check(one, book.State, TestBook.Knowledge, Day));
    }

    [Fact]
    public void Draw_TwoColoniesOfOneName_BothTakePart()
    {
        var (book, apiary) = Apiary(2);
        // As after a merge of two phones that both registered a colony 1.
        book.Colony(apiary, "1");
        var proposal = new RoundPlanner(book.State, TestBook.Knowledge).Propose([apiary], Day);
        Assert.Equal(3, Draw(proposal, new RoundId(book.Ids.Next()), 1).Draws[0].Chosen.Distinct().Count());
    }

    [Fact]
    public void Draw_TwoApiariesOfOneName_BothTakePart()
    {
        var (book, first) = Apiary(3);
        var second = book.Apiary("Orchard");
        book.Colony(second, "1", new DateOnly(2026, 4, 1));
        var proposal = new RoundPlanner(book.State, TestBook.Knowledge).Propose([first, second], Day);
        var draws = Draw(proposal, new RoundId(book.Ids.Next()), 1).Draws;
        Assert.Equal(new[] { first, second }.OrderBy(id => id.Value), draws.Select(draw => draw.Apiary).OrderBy(id => id.Value));
        Assert.Equal(4, draws.Sum(draw => draw.Chosen.Count + draw.Reserves.Count));
    }

    private static RoundRecord Draw(RoundProposal proposal, RoundId round, ulong seed) =>
        RoundPlanner.Draw(proposal, round, Day, "alcohol-wash", "after the peak", seed);

    private static (TestBook Book, ApiaryId Apiary) Apiary(int colonies)
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        for (var n = 1; n <= colonies; n++)
            book.Colony(apiary, $"{n}", new DateOnly(2026, 4, 1));
        return (book, apiary);
    }
}
