using Foundress.Science.Planning;

namespace Foundress.Book.Planning;

/// <summary>Some colonies of an apiary under plans of controls, for the search.</summary>
internal sealed class PlanModel(
    IReadOnlyList<PlanUse> uses, PlanFutures futures, IReadOnlyList<int> colonies, IReadOnlyList<PlanCourse> courses, PlanRulings rulings, PlanAim aim, int step, ulong seed)
    : IPlanModel
{
    /// <inheritdoc/>
    public PlanReading Nothing()
    {
        var chances = new float[courses[0].Days * colonies.Count];
        SideBySide.Each(colonies.Count, i =>
        {
            var own = new float[courses[i].Days];
            courses[i].Read(futures.Days(colonies[i], []), [], own);
            Spread(own, chances, i);
        });

        return new PlanReading(step, colonies.Count, chances, aim);
    }

    /// <inheritdoc/>
    public IReadOnlyList<PlanReading> Further(IReadOnlyList<int> earlier, IReadOnlyList<int> further)
    {
        PlanUse[] before = [.. earlier.Select(place => uses[place])];
        int[] starts = [.. further.Select(place => uses[place].Candidate.Start).Distinct().Order()];
        var chances = new float[further.Count][];
        for (var i = 0; i < further.Count; i++)
            chances[i] = new float[courses[0].Days * colonies.Count];
        SideBySide.Each(colonies.Count, colony =>
        {
            var course = courses[colony];
            var kept = new float[course.Days];
            var own = new float[course.Days];
            course.KeepAt(futures.Days(colonies[colony], before), Lucks(before), starts, kept);
            for (var i = 0; i < further.Count; i++)
            {
                PlanUse[] plan = [.. before, uses[further[i]]];
                kept.CopyTo(own, 0);
                course.ReadFrom(plan[^1].Candidate.Start, futures.Days(colonies[colony], plan), Lucks(plan), own);
                Spread(own, chances[i], colony);
            }
        });

        return [.. chances.Select(ofPlan => new PlanReading(step, colonies.Count, ofPlan, aim))];
    }

    /// <inheritdoc/>
    public int Conflict(IReadOnlyList<int> earlier, int next) => (int)rulings.Of([.. earlier.Select(place => uses[place])], uses[next]);

    /// <summary>For each control that kills a number of its own: the same control has the same luck on whatever day.</summary>
    internal ulong[] Lucks(IEnumerable<PlanUse> plan) => LucksOf(plan, seed);

    internal static ulong[] LucksOf(IEnumerable<PlanUse> plan, ulong seed) =>
        [.. plan.Where(use => use.Kill is not null).Select(use => Science.Numerics.SeededGenerator.ForPart(seed, use.Agent.Id).NextUInt64())];

    private void Spread(float[] own, float[] chances, int colony)
    {
        for (var day = 0; day < own.Length; day++)
            chances[(day * colonies.Count) + colony] = own[day];
    }
}
