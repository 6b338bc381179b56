using System.Globalization;
using CsCheck;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rounds;
using Foundress.Book.Rules;
using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Sampling;

namespace Foundress.Book.Tests.Rounds;

public sealed class StopRuleTests
{
    private static readonly DateOnly Day = new(2026, 8, 20);
    private static readonly EarlyStop Early = new(1.5, 4.5, 0.1, 1.3, 300);

    [Fact]
    public void Read_LowApiary_AllowsToStopAndWait()
    {
        var (book, round, draw) = Begun(12);
        var reading = Take(book, round, draw, [1, 0, 0, 1, 0]);
        Assert.Equal(SequentialDecision.Wait, reading.Decision);
        Assert.StartsWith("You may stop here", reading.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_HighApiary_AllowsToStopAndActAtTheFirstJarThatDecides()
    {
        var (book, round, draw) = Begun(12);
        var reading = Take(book, round, draw, [30, 25, 0, 0, 0, 0]);
        Assert.Equal(SequentialDecision.Act, reading.Decision);
        Assert.True(reading.Jars <= 2);
    }

    /// <summary>Kuno 1969, Res. Popul. Ecol. 11:127-136, worked by hand: 1 / (0.25² - 1 / (1.3 · 20)) = 41.6, so 42 mites; never with 12 jars.</summary>
    [Theory]
    [InlineData(20, 42)]
    [InlineData(12, null)]
    public void PreciseFrom_Jars_FollowsTheStopLine(int jars, int? mites) => Assert.Equal(mites, new StopRule(Early, 20).PreciseFrom(0.25, jars));

    [Fact]
    public void Read_NoJar_SaysSo()
    {
        var (book, round, draw) = Begun(12);
        Assert.Equal("No jar has been taken here yet.", Take(book, round, draw, []).Sentence);
    }

    /// <summary>The chart and the live judgement are one rule: with jars of the chart's size they never differ.</summary>
    [Fact]
    public void Read_JarsOfTheChartsSize_AgreesWithTheChart() => Gen.Int[0, 40].Array[1, 12].Sample(mites =>
    {
        var rule = new StopRule(Early, 12);
        var reading = rule.Read([.. mites.Select(count => new JarCount(count, BeeCount.Counted(300)))], CultureInfo.InvariantCulture);
        var so = 0;
        var expected = (SequentialDecision.GoOn, mites.Length);
        for (var i = 0; i < mites.Length; i++)
        {
            so += mites[i];
            var decision = rule.Lines[i].Decide(so);
            if (decision == SequentialDecision.GoOn)
                continue;
            expected = (decision, i + 1);
            break;
        }

        Assert.Equal(expected, (reading.Decision, reading.Jars));
    });

    [Fact]
    public void Open_ApiaryEnded_AsksForNoFurtherJarThereAndGoesOnElsewhere()
    {
        var book = new TestBook();
        var apiaries = new[] { book.Apiary("Heath"), book.Apiary("Mill") };
        foreach (var apiary in apiaries)
        {
            for (var n = 1; n <= 5; n++)
                book.Colony(apiary, $"{n}", new DateOnly(2026, 4, 1));
        }

        var plan = Plan(book, apiaries, 4);
        book.Write(plan);
        book.Jar(plan.Draws[0].Chosen[0], Day, 1, round: plan.Round);
        var stop = new RoundStop(plan.Round, plan.Draws[0].Apiary, "rain", Day);
        Assert.Empty(RecordRules.Check(stop, book.State, TestBook.Knowledge, Day));
        var entry = book.Write(stop);
        var round = book.State.Rounds[plan.Round];
        Assert.Equal(plan.Draws[1].Chosen, round.Open);
        Assert.Equal([plan.Draws[0].Chosen[0]], round.ToSample(plan.Draws[0]));
        book.Strike(entry);
        Assert.Equal(7, book.State.Rounds[plan.Round].Open.Count);
    }

    [Fact]
    public void Check_StopWithoutReasonOrOfAnotherApiary_NamesTheField()
    {
        var (book, round, _) = Begun(4);
        var elsewhere = book.Apiary("Elsewhere");
        Assert.Contains(RecordRules.Check(new RoundStop(round, elsewhere, "rain", Day), book.State, TestBook.Knowledge, Day), p => p.Field == "apiary");
        Assert.Contains(RecordRules.Check(new RoundStop(round, book.State.Rounds[round].Plan.Draws[0].Apiary, " ", Day), book.State, TestBook.Knowledge, Day), p => p.Field == "reason");
    }

    [Theory]
    [InlineData(0, 4.5, 0.1, 1.3, 300, "low")]
    [InlineData(4.5, 4.5, 0.1, 1.3, 300, "high")]
    [InlineData(1.5, 4.5, 0.5, 1.3, 300, "errorChance")]
    [InlineData(1.5, 4.5, 0.1, 0, 300, "shape")]
    [InlineData(1.5, 4.5, 0.1, 1.3, 10, "beesPerJar")]
    [InlineData(double.NaN, 4.5, 0.1, 1.3, 300, "low")]
    public void Check_RuleOutOfRange_NamesTheField(double low, double high, double error, double shape, int bees, string field)
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        for (var n = 1; n <= 6; n++)
            book.Colony(apiary, $"{n}", new DateOnly(2026, 4, 1));
        var plan = RoundPlanner.Draw(
            new RoundPlanner(book.State, TestBook.Knowledge).Propose([apiary], Day), new RoundId(book.Ids.Next()), Day, "alcohol-wash", "after the peak", 5, _ => new EarlyStop(low, high, error, shape, bees));
        Assert.Contains(RecordRules.Check(plan, book.State, TestBook.Knowledge, Day), p => p.Field == field);
    }

    [Fact]
    public void Draw_RuleIsKeptInTheJournal_AndReadBack()
    {
        var (book, round, draw) = Begun(6);
        Assert.Equal(Early, draw.EarlyStop);
        var entry = book.State.Rounds[round].Entry;
        var read = Assert.IsType<RoundRecord>(RecordJson.TryRead(entry.Kind, entry.Payload, out _));
        Assert.Equal(Early, read.Draws[0].EarlyStop);
    }

    private static (TestBook Book, RoundId Round, ApiaryDraw Draw) Begun(int colonies)
    {
        var book = new TestBook();
        var apiary = book.Apiary("Orchard");
        for (var n = 1; n <= colonies; n++)
            book.Colony(apiary, $"{n}", new DateOnly(2026, 4, 1));
        var plan = Plan(book, [apiary], colonies);
        book.Write(plan);
        return (book, plan.Round, plan.Draws[0]);
    }

    private static RoundRecord Plan(TestBook book, IReadOnlyList<ApiaryId> apiaries, int take)
    {
        var proposal = new RoundPlanner(book.State, TestBook.Knowledge).Propose(apiaries, Day);
        proposal = proposal with { Apiaries = [.. proposal.Apiaries.Select(place => place with { Take = Math.Min(take, place.Colonies.Count) })] };
        return RoundPlanner.Draw(proposal, new RoundId(book.Ids.Next()), Day, "alcohol-wash", "after the peak", 5, _ => Early);
    }

    private static StopReading Take(TestBook book, RoundId round, ApiaryDraw draw, int[] mites)
    {
        foreach (var (colony, count) in draw.Chosen.Zip(mites))
            book.Jar(colony, Day, count, round: round);
        return new StopRule(Early, draw.Chosen.Count).Read(book.State.Rounds[round], draw, CultureInfo.InvariantCulture);
    }
}
