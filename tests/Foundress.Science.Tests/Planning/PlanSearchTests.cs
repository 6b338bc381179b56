using CsCheck;
using Foundress.Science.Planning;

namespace Foundress.Science.Tests.Planning;

public class PlanSearchTests
{
    private static readonly Gen<(ulong Seed, double Tolerance, int JudgedFrom, int Apart, bool Rotates)> Problems =
        Gen.Select(Gen.ULong, Gen.Double[0.02, 0.5], Gen.Int[0, 40], Gen.Int[0, 28], Gen.Bool);

    /// <summary>Against the plainest check there is: every plan worked out, one after the other.</summary>
    [Fact]
    public void Find_NothingLeftAside_FindsTheBestOfAllPlans()
    {
        int held = 0;
        Problems.Sample(
            problem =>
            {
                PlainPlans model = Model(problem, 14);
                PlanSearchResult found = new PlanSearch(model.Candidates, model, PlanLimits.Everything(3)).Find();
                PlanOutcome[] all = [.. model.All(3).Where(outcome => outcome.Reading.Holds)];
                Assert.True(found.Tally.Complete);
                Assert.Equal(all.Select(outcome => (int?)outcome.Weight.Controls).Min(), found.Fewest);
                Assert.Equal(Least(all, Gentle), Least(found.Holding, Gentle));
                Assert.Equal(Least(all, outcome => outcome.Weight.Labour), Least(found.Holding, outcome => outcome.Weight.Labour));
                Assert.Equal(Least(all, outcome => outcome.Weight.Cost), Least(found.Holding, outcome => outcome.Weight.Cost));
                PlanOutcome[] bare = [.. all.Where(outcome => outcome.Weight.NonChemical)];
                Assert.Equal(Least(bare, outcome => outcome.Weight.Controls), Least(found.Holding.Where(outcome => outcome.Weight.NonChemical), outcome => outcome.Weight.Controls));
                held += all.Length > 0 && found.Fewest > 0 ? 1 : 0;
            },
            iter: 150, threads: 1);
        Assert.True(held > 30, $"Only {held} problems asked anything of the search.");
    }

    [Fact]
    public void Find_MoreTolerance_NeverNeedsMoreControls()
    {
        Gen.Select(Problems, Gen.Double[0, 0.3]).Sample(
            (problem, more) =>
            {
                PlainPlans strict = Model(problem, 16);
                PlainPlans loose = Model((problem.Seed, Math.Min(problem.Tolerance + more, 0.9), problem.JudgedFrom, problem.Apart, problem.Rotates), 16);
                int? few = Fewest(loose);
                Assert.True(Fewest(strict) is not { } strictly || few <= strictly, $"{few} at the greater tolerance.");
            },
            iter: 150);
    }

    [Fact]
    public void Find_LooserRules_NeverGiveAWorsePlan()
    {
        Problems.Sample(
            problem =>
            {
                PlanSearchResult tight = Find(Model(problem, 14));
                PlanSearchResult loose = Find(Model((problem.Seed, problem.Tolerance, problem.JudgedFrom, 0, false), 14));
                if (tight.Fewest is not { } fewest)
                    return;
                Assert.True(loose.Fewest <= fewest);
                Assert.True(Least(loose.Holding, Gentle) <= Least(tight.Holding, Gentle));
                Assert.True(Least(loose.Holding, outcome => outcome.Weight.Labour) <= Least(tight.Holding, outcome => outcome.Weight.Labour));
            },
            iter: 150);
    }

    [Fact]
    public void Find_LittleRoom_SaysWhatWasLeftAsideAndNeverClaimsTooMuch()
    {
        int left = 0;
        int same = 0;
        int asked = 0;
        Problems.Sample(
            problem =>
            {
                PlainPlans model = Model(problem, 24);
                PlanSearchResult found = new PlanSearch(model.Candidates, model, new(3, 24, 12, 4)).Find();
                PlanSearchResult all = Find(Model(problem, 24));
                Assert.All(found.Holding, outcome => Assert.True(outcome.Reading.Peak <= problem.Tolerance + 1e-6));
                Assert.True(found.Fewest is null || found.Fewest >= all.Fewest);
                Assert.Equal(found.Tally.Run, model.Asked);
                left += found.Tally.Complete ? 0 : 1;
                asked += all.Fewest is > 1 ? 1 : 0;
                same += all.Fewest is > 1 && all.Fewest == found.Fewest ? 1 : 0;
            },
            iter: 100, threads: 1);
        Assert.True(left > 20, $"Only {left} problems had too little room.");
        Assert.True(same > 0.9 * asked, $"The fewest controls were found in {same} of {asked} problems.");
    }

    [Fact]
    public void Find_NothingNeeded_LooksNoFurther()
    {
        PlainPlans model = new(5, 12, 0.9, 0, 7, true);
        PlanSearchResult found = Find(model);
        Assert.Equal(0, found.Fewest);
        Assert.Single(found.Outcomes);
        Assert.Equal(1, model.Asked);
    }

    [Fact]
    public void Find_TwiceTheSame_SameOutcome()
    {
        PlanSearchResult first = Find(Model((9, 0.2, 0, 7, true), 14));
        PlanSearchResult second = Find(Model((9, 0.2, 0, 7, true), 14));
        Assert.Equal(first.Outcomes.Select(outcome => string.Join(' ', outcome.Plan)), second.Outcomes.Select(outcome => string.Join(' ', outcome.Plan)));
    }

    [Fact]
    public void Find_Conceivable_IsTheNumberOfPlansWithoutRules()
    {
        PlainPlans model = new(3, 9, 0.05, 0, 0, false);
        Assert.Equal(model.All(3).Count, Find(model).Tally.Conceivable);
    }

    [Fact]
    public void Front_IsOfPlansThatNoOtherBeats()
    {
        PlanSearchResult found = Find(Model((21, 0.15, 0, 7, false), 14));
        IReadOnlyList<PlanOutcome> front = found.Front();
        Assert.Contains(found.Nothing, front);
        Assert.All(front, one => Assert.DoesNotContain(found.Outcomes, one.IsBeatenBy));
        Assert.All(found.Outcomes.Except(front), one => Assert.Contains(found.Outcomes, one.IsBeatenBy));
    }

    [Fact]
    public void PlanSearch_CandidatesOutOfOrder_AreRefused()
    {
        PlainPlans model = new(3, 2, 0.05, 0, 0, false);
        PlanCandidate early = new(0, 3, 3, 1, 1, 0, false);
        var error = Assert.Throws<ArgumentException>(() => new PlanSearch([early with { Start = 9, End = 9 }, early], model, PlanLimits.Everything(3)));
        Assert.Contains("give them by day", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new PlanSearch([early with { End = 1 }], model, PlanLimits.Everything(3)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PlanSearch([early with { Hazard = double.NaN }], model, PlanLimits.Everything(3)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PlanSearch([early], model, new PlanLimits(3, 0, 1, 1)));
    }

    private static PlainPlans Model((ulong Seed, double Tolerance, int JudgedFrom, int Apart, bool Rotates) problem, int candidates) =>
        new(problem.Seed, candidates, problem.Tolerance, problem.JudgedFrom, problem.Apart, problem.Rotates);

    private static PlanSearchResult Find(PlainPlans model) => new PlanSearch(model.Candidates, model, PlanLimits.Everything(3)).Find();

    private static int? Fewest(PlainPlans model) => Find(model).Fewest;

    private static double Gentle(PlanOutcome outcome) => (1000d * outcome.Weight.WorstHazard) + outcome.Weight.Hazard;

    private static double? Least(IEnumerable<PlanOutcome> outcomes, Func<PlanOutcome, double> by) => outcomes.Select(outcome => (double?)by(outcome)).Min();
}
