using System.Globalization;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rounds;

namespace Foundress.Book.Tests.Rounds;

public sealed class RoundResultsTests
{
    private static readonly DateOnly Day = new(2026, 8, 20);

    [Fact]
    public void Of_HighJars_SaysTheApiaryIsOverAndCountsTheUnsampled()
    {
        var result = Result(20, [20, 25, 30, 18, 22, 27, 31, 24]);
        Assert.Equal(8, result.Sampled);
        Assert.True(result.MeanOver!.Value.Value > 0.99);
        Assert.InRange(result.UnsampledOver!.Value, 8, 12);
        Assert.Contains("over the line of 3", result.Sentence, StringComparison.Ordinal);
        Assert.Equal(result.Ranked.OrderByDescending(one => one.Reading.Level.Per100Bees).Select(one => one.Colony.Id), result.Ranked.Select(one => one.Colony.Id));
    }

    [Fact]
    public void Of_LowJars_SaysBelow()
    {
        var result = Result(9, [0, 1, 0, 2, 1, 0, 1, 0, 1]);
        Assert.True(result.MeanOver!.Value.Value < 0.05);
        Assert.Contains("every colony was sampled", result.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_OneJar_RefusesToSpeakForTheApiary()
    {
        var result = Result(9, [5]);
        Assert.Null(result.Mean);
        Assert.Contains("One colony says nothing of the others", result.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(new[] { 0, 0, 0, 0, 0, 0, 0, 0 })]
    [InlineData(new[] { 0, 0, 0, 400, 0, 0, 0, 0 })]
    [InlineData(new[] { 400, 400 })]
    public void Of_ExtremeCounts_GivesFiniteNumbers(int[] mites)
    {
        var result = Result(40, mites);
        Assert.True(double.IsFinite(result.Mean!.Value.Per100Bees));
        Assert.True(double.IsFinite(result.MeanInterval!.Value.Upper.Per100Bees));
        Assert.InRange(result.AnyUnsampledOver!.Value.Value, 0, 1);
        Assert.DoesNotContain("NaN", result.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_HighestColony_IsShrunkTowardsTheRest()
    {
        var top = Result(20, [2, 3, 1, 2, 15, 3, 2, 1]).Ranked[0];
        Assert.True(top.Shrunk!.Value.Upper < top.Reading.Interval.Upper);
    }

    [Fact]
    public void Of_JarShakenShort_IsNamedInTheResult()
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        var colonies = new[] { book.Colony(apiary, "1", new DateOnly(2026, 4, 1)), book.Colony(apiary, "2", new DateOnly(2026, 4, 1)) };
        var proposal = new RoundPlanner(book.State, TestBook.Knowledge).Propose([apiary], Day);
        var plan = RoundPlanner.Draw(proposal, new RoundId(book.Ids.Next()), Day, "alcohol-wash", "after the peak", 5);
        book.Write(plan);
        book.Write(new JarRecord(Day, "alcohol-wash", [4], JarBees.Counted(300), colonies[0], plan.Round, new JarConditions(AgitationSeconds: 2)));
        book.Write(new JarRecord(Day, "alcohol-wash", [4], JarBees.Counted(300), colonies[1], plan.Round, new JarConditions(AgitationSeconds: 60)));
        var result = new RoundResults(book.State, TestBook.Knowledge, CultureInfo.InvariantCulture).Of(book.State.Rounds[plan.Round], Day).Apiaries[0];
        Assert.StartsWith("Colony 1: shaken 2 s instead of at least 60 s", Assert.Single(result.Doubts), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_SeveralApiaries_DrawsTheOneWithOneJarTowardsTheOthers()
    {
        var result = Several([[6, 8, 7, 9], [7]]);
        var one = result.Apiaries.Single(place => place.Sampled == 1);
        Assert.True(one.Pooled);
        Assert.NotNull(one.MeanInterval);
        Assert.Contains("Over the 2 apiaries sampled, 9 colonies", result.Whole, StringComparison.Ordinal);
        // With its own jar alone nothing would be said; with the others the limits are those of a like apiary.
        Assert.InRange(one.Mean!.Value.Per100Bees, 1.5, 4);
    }

    [Fact]
    public void Of_SeveralApiariesWithoutAnyMite_GivesFiniteNumbers()
    {
        var result = Several([[0, 0, 0], [0, 0]]);
        Assert.All(result.Apiaries, place => Assert.True(double.IsFinite(place.MeanInterval!.Value.Upper.Per100Bees) && place.MeanInterval.Value.Upper.Per100Bees > 0));
        Assert.DoesNotContain("NaN", result.Whole, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_RoundAfterAnother_SaysWhatChanged()
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        var colonies = Enumerable.Range(1, 6).Select(n => book.Colony(apiary, $"{n}", new DateOnly(2026, 4, 1))).ToList();
        foreach (var colony in colonies)
            book.Jar(colony, Day.AddDays(-40), 2);
        var plan = RoundPlanner.Draw(new RoundPlanner(book.State, TestBook.Knowledge).Propose([apiary], Day), new RoundId(book.Ids.Next()), Day, "alcohol-wash", "after the peak", 5);
        book.Write(plan);
        foreach (var colony in plan.Draws[0].Chosen)
            book.Jar(colony, Day, 12, round: plan.Round);
        var result = new RoundResults(book.State, TestBook.Knowledge, CultureInfo.InvariantCulture).Of(book.State.Rounds[plan.Round], Day).Apiaries[0];
        Assert.Equal(40, result.Change!.Days);
        Assert.Equal(6, result.Change.Colonies.Count);
        Assert.True(result.Change.Grown.Value > 0.99);
    }

    private static RoundResult Several(int[][] mites)
    {
        var book = new TestBook();
        var apiaries = mites.Select((_, i) => book.Apiary($"Place {i + 1}")).ToList();
        foreach (var (counts, i) in mites.Select((counts, i) => (counts, i)))
        {
            for (var n = 0; n < counts.Length + 2; n++)
                book.Colony(apiaries[i], $"{n + 1}", new DateOnly(2026, 4, 1));
        }

        var proposal = new RoundPlanner(book.State, TestBook.Knowledge).Propose(apiaries, Day);
        proposal = proposal with { Apiaries = [.. proposal.Apiaries.Select(place => place with { Take = mites[apiaries.IndexOf(place.Apiary.Id)].Length })] };
        var plan = RoundPlanner.Draw(proposal, new RoundId(book.Ids.Next()), Day, "alcohol-wash", "after the peak", 5);
        book.Write(plan);
        foreach (var draw in plan.Draws)
        {
            foreach (var (colony, count) in draw.Chosen.Zip(mites[apiaries.IndexOf(draw.Apiary)]))
                book.Jar(colony, Day, count, round: plan.Round);
        }

        return new RoundResults(book.State, TestBook.Knowledge, CultureInfo.InvariantCulture).Of(book.State.Rounds[plan.Round], Day);
    }

    private static ApiaryResult Result(int colonies, int[] mites)
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        for (var n = 1; n <= colonies; n++)
            book.Colony(apiary, $"{n}", new DateOnly(2026, 4, 1));
        var proposal = new RoundPlanner(book.State, TestBook.Knowledge).Propose([apiary], Day);
        var plan = RoundPlanner.Draw(proposal, new RoundId(book.Ids.Next()), Day, "alcohol-wash", "after the peak", 5);
        book.Write(plan);
        foreach (var (colony, count) in plan.Draws[0].Chosen.Zip(mites))
            book.Jar(colony, Day, count, round: plan.Round);
        return new RoundResults(book.State, TestBook.Knowledge, CultureInfo.InvariantCulture)
            .Of(book.State.Rounds[plan.Round], Day).Apiaries[0];
    }
}
