using Foundress.Book.Controls;
using Foundress.Book.Judging;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;

namespace Foundress.Book.Proving;

/// <summary>What may have falsified the jars after a control.</summary>
internal sealed class ProofDoubts
{
    private readonly List<string> _all = [];

    internal ProofDoubts(BookState state, KnowledgeBase knowledge, Control control, IReadOnlyList<ColonyProof> colonies, ControlList controls)
    {
        var told = colonies.Where(colony => colony.Why is null).ToArray();
        if (told.Length == 0)
            return;
        var agent = controls.Find(control.Facts.Agent);
        FindTime(knowledge, told, agent);
        FindWeather(control, agent);
        FindReinvasion(state, knowledge, control, told);
        var partly = colonies.Count(colony => colony.Course.Ending is CourseEnding.StoppedEarly or CourseEnding.Partial);
        if (partly > 0)
            _all.Add(Plural.Pick(partly, ProvingTexts.FormatColoniesInPart(partly)));
    }

    internal IReadOnlyList<string> All => _all;

    // Some of what it does was still to come.
    internal bool Early { get; private set; }

    internal bool Reinvasion { get; private set; }

    internal bool WeatherOutside { get; private set; }

    private void FindTime(KnowledgeBase knowledge, ColonyProof[] told, ControlAgent? agent)
    {
        var rules = knowledge.Controls.Proof;
        var late = told.Count(colony => colony.After[0].Facts.On > colony.Course.End!.Value.AddDays((int)(rules.ProveWithin.Value + rules.SealedWait.Value)));
        if (late > 0)
            _all.Add(ProvingTexts.FormatJarsLate(Say.InColonies(late)));
        var early = told.Count(colony => colony.After[0].Facts.On < colony.Course.Start.AddDays((int)rules.SealedWait.Value));
        Early = early > 0 && agent is not { Reach: BroodReach.Yes };
        if (Early)
            _all.Add(ProvingTexts.FormatJarsEarly(Say.InColonies(early)));
    }

    private void FindWeather(Control control, ControlAgent? agent)
    {
        foreach (var limit in agent?.Temperatures ?? [])
        {
            var air = limit.Of switch
            {
                DayTemperature.Minimum => control.Facts.AirLow,
                DayTemperature.Maximum => control.Facts.AirHigh,
                _ => (control.Facts.AirLow + control.Facts.AirHigh) / 2,
            };
            if (air is not { } degrees || (limit.IsLeast ? degrees >= limit.Degrees.Value : degrees <= limit.Degrees.Value))
                continue;
            WeatherOutside = true;
            _all.Add($"{(limit.IsLeast ? ProvingTexts.Colder : ProvingTexts.Warmer)} {limit.Text}");
        }
    }

    // Neighbours over the line, or colonies that broke down near by, bring mites in.
    private void FindReinvasion(BookState state, KnowledgeBase knowledge, Control control, ColonyProof[] told)
    {
        var apiary = told[0].Colony.ApiaryOn(control.Facts.Start);
        var from = control.Facts.Start;
        var to = told.Max(colony => colony.After[0].Facts.On);
        var policy = JudgingPolicy.Of(state, knowledge);
        var site = state.Apiaries.GetValueOrDefault(apiary);
        var high = state.JarsIn(apiary)
            .Where(one => !control.Facts.Colonies.Contains(one.Colony.Id) && one.Jar.Facts.On >= from && one.Jar.Facts.On <= to)
            .Where(one => IsOver(one.Jar, policy.On(site, one.Jar.Facts.On), knowledge))
            .Select(one => one.Colony.Name).Distinct().ToArray();
        if (high.Length > 0)
            _all.Add(ProvingTexts.FormatNeighboursOver(Say.List(high)));
        var fallen = state.Colonies.Values
            .Where(colony => colony.End is { Fate: ColonyFate.Died } end && end.On >= from && end.On <= to && colony.ApiaryOn(end.On) == apiary)
            .Select(colony => colony.Name).ToArray();
        if (fallen.Length > 0)
            _all.Add(ProvingTexts.FormatNeighboursDied(Say.List(fallen)));
        Reinvasion = high.Length > 0 || fallen.Length > 0;
    }

    private static bool IsOver(Jar jar, LinesInForce? lines, KnowledgeBase knowledge) =>
        lines is { Unit: Units.MitesPer100Bees }
        && knowledge.Methods.TryGet(jar.Facts.Method, out var method) && lines.ScaleIds.Contains(method.ScaleId)
        && 100d * jar.Facts.Mites / jar.Facts.Bees.Count > lines.Deciding;
}
