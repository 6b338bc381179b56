using System.Globalization;
using Foundress.Book.Controls;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science.Verifying;

namespace Foundress.Book.Proving;

/// <summary>Finds the jars around each use of a control and says whether it worked.</summary>
/// <param name="state">The book.</param>
/// <param name="knowledge">Methods, climates and controls.</param>
/// <param name="today">The reader's day.</param>
/// <param name="culture">How numbers are written in the sentences.</param>
/// <param name="forecast">What would have been without a use of a control, where a forecast tells; null for none.</param>
public sealed class ControlProofs(BookState state, KnowledgeBase knowledge, DateOnly today, CultureInfo culture, Func<Control, GrowthForecast?>? forecast = null)
{
    private readonly ControlList _controls = ControlList.Of(state, knowledge);
    private readonly ProofJars _jars = new(state, knowledge);

    /// <summary>The proof of every use, latest first.</summary>
    public IReadOnlyList<ControlProof> All() =>
        [.. state.Controls.Values.OrderByDescending(control => control.Facts.Start).ThenByDescending(control => control.Entry).Select(Of)];

    /// <summary>The proof of one use.</summary>
    public ControlProof Of(Control control)
    {
        var agent = _controls.Find(control.Facts.Agent);
        var apiary = ApiaryOf(control);
        var withBrood = ProofWindow.WithBrood(control, state, knowledge, apiary);
        var colonies = Colonies(control, agent, withBrood);
        JarPair[] pairs = [.. colonies.Where(colony => colony.Why is null).Select(colony => colony.Pair!)];
        var plain = EfficacyOf.Group(pairs);
        var (outcome, correction) = Corrected(control, colonies, pairs, plain);
        var test = agent?.Target(withBrood) is { } target ? Test(target) : null;
        var mites = pairs.Sum(pair => pair.MitesBefore);
        var tooFew = mites < knowledge.Controls.Proof.LeastMites.Value;
        Verdict? verdict = outcome.Efficacy is { } efficacy && test is not null ? tooFew ? Verdict.CannotTell : test.Judge(efficacy) : null;
        var doubts = new ProofDoubts(state, knowledge, control, colonies, _controls);
        var asPlanned = colonies.All(colony => colony.Course.Ending is CourseEnding.AsPlanned or CourseEnding.ColonyEnded);
        var signal = verdict == Verdict.Failed && asPlanned && agent is { IsNonChemical: false } && !doubts.WeatherOutside && !doubts.Early;
        return new ControlProof
        {
            Control = control,
            Agent = agent,
            Due = Due(control, agent, withBrood, colonies),
            Colonies = colonies,
            Plain = plain,
            Outcome = outcome,
            Correction = correction,
            WithBrood = withBrood,
            Test = test,
            Verdict = verdict,
            MoreJars = new(() => verdict == Verdict.CannotTell && !tooFew && plain.Refusal is null ? MoreJars.ToSettle(pairs, test!) : null),
            Doubts = doubts.All,
            ReinvasionSuspected = doubts.Reinvasion,
            ResistanceSignal = signal,
            NextGroups = verdict is Verdict.Failed or Verdict.Partly && agent is { IsNonChemical: false } ? NextGroups(agent) : [],
            Sentence = new ProofSentence(culture).Of(agent, _controls.TitleOf(control.Facts.Agent), outcome, correction, test, verdict, mites, tooFew, signal, pairs.Length),
        };
    }

    /// <summary>When the jars after one use are due; null while nobody knows when it ends, or when no colony of it is left.</summary>
    public ProofDue? DueOf(Control control)
    {
        var agent = _controls.Find(control.Facts.Agent);
        var withBrood = ProofWindow.WithBrood(control, state, knowledge, ApiaryOf(control));
        return Due(control, agent, withBrood, Colonies(control, agent, withBrood));
    }

    private EfficacyTest Test(Figure target)
    {
        var rules = knowledge.Controls.Proof;
        // A keeper's own target may lie so low that the margin would leave nothing.
        var share = Math.Clamp(target.Value / 100, 0.01, 0.999);
        return new(share, Math.Min(rules.Margin.Value / 100, share / 2), rules.Confidence.Value);
    }

    private (EfficacyOutcome Outcome, Correction Correction) Corrected(Control control, IReadOnlyList<ColonyProof> colonies, JarPair[] pairs, EfficacyOutcome plain)
    {
        if (plain.Refusal is not null)
            return (plain, Correction.None);
        var untreated = Untreated(control, colonies);
        if (untreated.Count > 0 && EfficacyOf.AgainstControls(pairs, untreated) is { Refusal: null } corrected)
            return (corrected, Correction.UntreatedColonies);
        return forecast?.Invoke(control) is { } growth
            ? (EfficacyOf.AgainstForecast(pairs, growth.Growth, growth.LogSpread), Correction.Forecast)
            : (plain, Correction.None);
    }

    // Colonies of the same apiary that got nothing from the jars before to the jars after.
    private IReadOnlyList<JarPair> Untreated(Control control, IReadOnlyList<ColonyProof> colonies)
    {
        var told = colonies.Where(colony => colony.Why is null).ToArray();
        if (told.Length == 0 || ApiaryOf(control) is not { } apiary)
            return [];
        var scale = _jars.ScaleOf(told[0].Before[0])!;
        var first = told.Min(colony => colony.Before[0].Facts.On);
        var last = told.Max(colony => colony.After[0].Facts.On);
        var pairs = new List<JarPair>();
        foreach (var colony in state.ColoniesIn(apiary.Id, control.Facts.Start).Where(colony => !control.Facts.Colonies.Contains(colony.Id)))
        {
            if (state.CoursesOf(colony.Id).Any(course => course.Start <= last && (course.End ?? DateOnly.MaxValue) >= first))
                continue;
            var before = _jars.Before(colony.Id, control.Facts.Start, scale);
            var afterFrom = told.Min(one => one.After[0].Facts.On).AddDays(-3);
            var after = _jars.After(colony.Id, afterFrom, new ProofDue(afterFrom, last.AddDays(3 - ProofJars.LateDays), ProofState.Done), null, scale);
            if (before.Count > 0 && after.Count > 0)
                pairs.Add(ProofJars.Pair(before, after));
        }

        return pairs;
    }

    private ColonyProof[] Colonies(Control control, ControlAgent? agent, bool withBrood) =>
        [.. control.Facts.Colonies.Distinct()
            .Where(state.Colonies.ContainsKey)
            .Select(id => ColonyOf(state.CoursesOf(id).First(course => course.Control.Id == control.Id), state.Colonies[id], agent, withBrood))
            .OrderBy(proof => proof.Colony.Name, NaturalOrder.Instance)];

    private ColonyProof ColonyOf(Course course, Colony colony, ControlAgent? agent, bool withBrood)
    {
        var before = _jars.Before(colony.Id, course.Start);
        ColonyProof Without(string why, IReadOnlyList<Jar>? after = null) => new(course, colony, before, after ?? [], null, null, why);
        if (course.Ending == CourseEnding.ColonyEnded)
            return Without(ProvingTexts.ColonyEnded);
        if (course.End is not { } end)
            return Without(ProvingTexts.NotOverYet);
        if (before.Count == 0)
            return Without(ProvingTexts.FormatNoJarBefore(knowledge.Controls.Proof.JarsBefore.Value.ToString("0", CultureInfo.CurrentCulture)));
        var due = ProofWindow.Of(course.Start, end, agent, withBrood, knowledge.Controls.Proof, today);
        var next = state.CoursesOf(colony.Id).Where(other => other.Control.Id != course.Control.Id && other.Start >= end).Select(other => (DateOnly?)other.Start).Min();
        var after = _jars.After(colony.Id, end, due, next, _jars.ScaleOf(before[0])!).Where(jar => jar.Facts.On > before[0].Facts.On).ToArray();
        if (after.Length == 0)
            return Without(next is { } other && state.JarsOf(colony.Id).Any(jar => jar.Facts.On > other) ? ProvingTexts.FormatNextBegan(Say.Day(other)) : ProvingTexts.NoJarAfter);
        var pair = ProofJars.Pair(before, after);
        var why = course.Ending switch
        {
            CourseEnding.StoppedEarly => ProvingTexts.StoppedEarly,
            CourseEnding.Partial => ProvingTexts.GivenInPart,
            _ => null,
        };
        return new(course, colony, before, after, pair, EfficacyOf.Colony(pair), why);
    }

    private ProofDue? Due(Control control, ControlAgent? agent, bool withBrood, IReadOnlyList<ColonyProof> colonies)
    {
        var ends = colonies.Where(colony => colony.Course.Ending != CourseEnding.ColonyEnded).Select(colony => colony.Course.End ?? colony.Course.PlannedEnd).OfType<DateOnly>().ToArray();
        if (ends.Length == 0)
            return null;
        var due = ProofWindow.Of(control.Facts.Start, ends.Max(), agent, withBrood, knowledge.Controls.Proof, today);
        var done = colonies.Any(colony => colony.After.Any(jar => jar.Facts.On >= due.From));
        var open = colonies.Any(colony => colony.Course.Ending == CourseEnding.Open);
        return due with { State = done ? ProofState.Done : open ? ProofState.Waiting : due.State };
    }

    private ModeOfAction[] NextGroups(ControlAgent failed) =>
        [.. _controls.All
            .Where(agent => agent is { IsOffered: true, IsNonChemical: false } && agent.ModeId != failed.ModeId && !_controls.IsRefused(agent.Id))
            .Select(_controls.ModeOf)
            .DistinctBy(mode => mode.Id)];

    private Apiary? ApiaryOf(Control control)
    {
        foreach (var id in control.Facts.Colonies)
        {
            if (state.Colonies.TryGetValue(id, out var colony) && state.Apiaries.TryGetValue(colony.ApiaryOn(control.Facts.Start), out var apiary))
                return apiary;
        }

        return null;
    }
}
