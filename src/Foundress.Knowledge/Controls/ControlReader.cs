using System.Globalization;

namespace Foundress.Knowledge;

/// <summary>Reads the file of controls and holds its parts against each other.</summary>
internal static class ControlReader
{
    public static readonly string[] Fields = ["modes", "gear", "proof", "planning", "agents"];

    public static ControlFacts Read(Node root)
    {
        var modes = root.Named(
            "modes", n => new ModeOfAction(n.Id(), n.Said("title"), n.Flag("rotates"), n.Said("text"), n.Source()),
            "id", "title", "rotates", "text", "source", "status", "doi");
        var gear = root.Named("gear", n => new Gear(n.Id(), n.Said("text"), n.Flag("isProtective"), n.Source()), "id", "text", "isProtective", "source", "status", "doi");
        var proof = Proof(root.Child("proof", "margin", "confidence", "proveWithin", "jarsBefore", "sealedWait", "leastMites"));
        var planning = Planning(root.Child("planning", "tolerance", "settle", "sealedCells"));
        var agents = root.Named("agents", n => Agent(n, modes, gear),
            "id", "title", "description", "ingredient", "kind", "form", "isOffered", "aliases", "mode", "days", "temperatures", "reach", "efficacies",
            "targetBroodless", "targetWithBrood", "supers", "daysBeforeSupers", "minimumInterval", "leastBroodFrames", "requirements", "gear",
            "resistance", "risks", "cautions", "organic", "hazardRank", "labourRank", "model");
        return new(new("control", agents), new("mode of action", modes), new("piece of gear", gear), proof, planning);
    }

    private static ProofRules Proof(Node n)
    {
        var rules = new ProofRules(
            n.Figure("margin", Units.Percent), n.Figure("confidence", Units.One), n.Figure("proveWithin", Units.Days), n.Figure("jarsBefore", Units.Days),
            n.Figure("sealedWait", Units.Days), n.Figure("leastMites", Units.Mites));
        if (n.Has("margin") && rules.Margin.Value is not (> 0 and < 100))
            n.Problem("margin/value", "the margin lies between 0 and 100 points.");
        if (n.Has("confidence") && rules.Confidence.Value is not (> 0 and < 1))
            n.Problem("confidence/value", "a confidence lies between 0 and 1, both excluded.");
        foreach (var (name, figure) in new[] { ("proveWithin", rules.ProveWithin), ("jarsBefore", rules.JarsBefore), ("sealedWait", rules.SealedWait), ("leastMites", rules.LeastMites) })
            Whole(n, name, figure, 1, 365);
        return rules;
    }

    private static PlanRules Planning(Node n)
    {
        var rules = new PlanRules(n.Figure("tolerance", Units.One), n.Figure("settle", Units.Days), n.Figure("sealedCells", Units.One));
        if (n.Has("tolerance") && rules.Tolerance.Value is not (> 0 and < 1))
            n.Problem("tolerance/value", "a chance that is borne lies between 0 and 1, both excluded.");
        Whole(n, "settle", rules.Settle, 1, 365);
        if (n.Has("sealedCells") && rules.SealedCells.Value < 1)
            n.Problem("sealedCells/value", "at least 1 cell.");
        return rules;
    }

    private static ControlAgent Agent(Node n, IReadOnlyList<ModeOfAction> modes, IReadOnlyList<Gear> gear)
    {
        var (title, aliases) = (n.Text("title"), n.OptionalTexts("aliases"));
        var agent = new ControlAgent(
            n.Id(), n.InLanguage("title", title), n.Said("description"), n.Said("ingredient"), n.Choice("kind", Words.ControlKinds), n.Choice("form", Words.ControlForms),
            n.Flag("isOffered"), [.. aliases.Union(aliases.Select(alias => n.InLanguage("aliases", alias)), StringComparer.Ordinal)], n.Text("mode"), n.Figure("days", Units.Days),
            n.List("temperatures", Temperature, "bound", "of", "degrees", "firstDays", "text"), n.Choice("reach", Words.BroodReaches),
            n.List("efficacies", e => new Efficacy(Share(e, "share"), e.Has("withBrood") ? e.Flag("withBrood") : null, e.Said("conditions")), "share", "withBrood", "conditions"),
            n.Has("targetBroodless") ? Share(n, "targetBroodless") : null, n.Has("targetWithBrood") ? Share(n, "targetWithBrood") : null,
            n.List("supers", Ruling, "jurisdiction", "rule", "text", "source", "status", "doi"),
            n.OptionalFigure("daysBeforeSupers", Units.Days), n.OptionalFigure("minimumInterval", Units.Days), n.OptionalFigure("leastBroodFrames", Units.Frames),
            n.Named("requirements", r => new Requirement(r.Id(), r.Choice("id", Words.ControlNeeds), r.Flag("isStrict"), r.Said("text"), r.Source()), "id", "isStrict", "text", "source", "status", "doi"),
            n.OptionalTexts("gear"), Statements(n, "resistance"), Statements(n, "risks"), Statements(n, "cautions"),
            Organic(n.Child("organic", "use", "text", "source", "status", "doi")), n.Figure("hazardRank", Units.One), n.Figure("labourRank", Units.One), Model(n.Child("model",
                "action", "adultKillPerDay", "broodKillPerDay", "days", "logSpread", "failureShare", "failureFactor", "halfLife", "droneCellsRemoved", "workerCellsRemoved",
                "layingStops", "beesMoved", "reproductionFactor", "reproductionAfter")))
        {
            EnglishTitle = title,
        };
        Check(n, agent, modes, gear);
        return agent;
    }

    private static void Check(Node n, ControlAgent agent, IReadOnlyList<ModeOfAction> modes, IReadOnlyList<Gear> gear)
    {
        if (agent.ModeId.Length > 0 && !modes.Any(m => m.Id == agent.ModeId))
            n.Problem("mode", Unknown("mode of action", agent.ModeId, modes.Select(m => m.Id)));
        for (var i = 0; i < agent.GearIds.Count; i++)
        {
            if (!gear.Any(g => g.Id == agent.GearIds[i]))
                n.Problem(string.Create(CultureInfo.InvariantCulture, $"gear/{i}"), Unknown("piece of gear", agent.GearIds[i], gear.Select(g => g.Id)));
        }

        foreach (var jurisdiction in Enum.GetValues<Jurisdiction>())
        {
            if (n.Has("supers") && agent.Supers.Count(s => s.Jurisdiction == jurisdiction) != 1)
                n.Problem("supers", $"needs one rule for \"{Words.Jurisdictions.First(w => w.Value == jurisdiction).Key}\". Add it, as \"see-label\" when nothing is certain.");
        }

        Whole(n, "days", agent.Days, 1, 365);
        Whole(n, "hazardRank", agent.HazardRank, 1, 5);
        Whole(n, "labourRank", agent.LabourRank, 1, 5);
        Whole(n, "daysBeforeSupers", agent.DaysBeforeSupers, 0, 365);
        Whole(n, "minimumInterval", agent.MinimumInterval, 0, 365);
        if (agent.Kind == ControlKind.NonChemical != (agent.Form == ControlForm.Husbandry))
            n.Problem("form", "\"husbandry\" and \"non-chemical\" go together: correct \"form\" or \"kind\".");
        if (n.Has("model") && agent.Model.Action == ControlAction.Kill != (agent.Model.AdultKillPerDay.Value > 0))
            n.Problem("model/adultKillPerDay", "the action \"kill\" kills more than 0 each day, and no other action kills: correct \"action\" or the figure.");
        if (n.Has("model") && agent.Reach == BroodReach.None && agent.Model.BroodKillPerDay.Value > 0)
            n.Problem("model/broodKillPerDay", "the control does not reach mites under the cappings (\"reach\" is \"none\"), so this is 0.");
    }

    private static IReadOnlyList<Statement> Statements(Node n, string name) =>
        n.Named(name, s => new Statement(s.Id(), s.Said("text"), s.Source()), "id", "text", "source", "status", "doi");

    private static SuperRuling Ruling(Node n) => new(n.Choice("jurisdiction", Words.Jurisdictions), n.Choice("rule", Words.SuperRules), n.OptionalSaid("text"), n.Source());

    private static OrganicRuling Organic(Node n) => new(n.Choice("use", Words.OrganicUses), n.Said("text"), n.Source());

    private static TemperatureLimit Temperature(Node n)
    {
        var bound = n.Choice("bound", Words.Bounds);
        var firstDays = n.OptionalNumber("firstDays");
        if (firstDays is not null && !(firstDays is >= 1 and <= 365 && firstDays == Math.Floor(firstDays.Value)))
            n.Problem("firstDays", "a whole number of days from 1 to 365.");
        var degrees = n.Figure("degrees", Units.DegreesCelsius);
        if (degrees.Value is < -30 or > 60)
            n.Problem("degrees/value", "an outdoor temperature lies between -30 and 60 degrees Celsius.");
        return new(bound, n.Choice("of", Words.DayTemperatures), degrees, (int?)firstDays, n.Said("text"));
    }

    private static ControlModel Model(Node n)
    {
        var model = new ControlModel(
            n.Choice("action", Words.ControlActions), n.Figure("adultKillPerDay", Units.PerDay), n.Figure("broodKillPerDay", Units.PerDay), n.Figure("days", Units.Days),
            n.Figure("logSpread", Units.One), n.Figure("failureShare", Units.One), n.Figure("failureFactor", Units.One),
            n.OptionalFigure("halfLife", Units.Days), n.OptionalFigure("droneCellsRemoved", Units.One), n.OptionalFigure("workerCellsRemoved", Units.One), n.OptionalFigure("layingStops", Units.Days),
            n.OptionalFigure("beesMoved", Units.One), n.OptionalFigure("reproductionFactor", Units.One), n.OptionalFigure("reproductionAfter", Units.Days));
        foreach (var (name, figure) in new[] { ("adultKillPerDay", model.AdultKillPerDay), ("broodKillPerDay", model.BroodKillPerDay) })
        {
            if (n.Has(name) && figure.Value is not (>= 0 and < 1))
                n.Problem($"{name}/value", "the share killed in a day lies from 0 to below 1.");
        }

        Whole(n, "days", model.Days, 1, 365);
        if (model.HalfLife is { } half && !(half.Value is > 0 and <= 3650))
            n.Problem("halfLife/value", "the days in which a rate falls by half lie above 0, up to 3650.");
        Whole(n, "layingStops", model.LayingStops, 1, 100);
        Whole(n, "reproductionAfter", model.ReproductionAfter, 0, 365);
        if (n.Has("logSpread") && model.LogSpread.Value is not (>= 0 and <= 2))
            n.Problem("logSpread/value", "the spread between colonies lies from 0 to 2.");
        foreach (var (name, figure) in new[]
        {
            ("failureShare", model.FailureShare), ("failureFactor", model.FailureFactor), ("droneCellsRemoved", model.DroneCellsRemoved),
            ("workerCellsRemoved", model.WorkerCellsRemoved), ("beesMoved", model.BeesMoved), ("reproductionFactor", model.ReproductionFactor),
        })
        {
            if (figure is not null && figure.Value is not (>= 0 and <= 1))
                n.Problem($"{name}/value", "a share lies from 0 to 1.");
        }

        if (model.ReproductionFactor is null != model.ReproductionAfter is null)
            n.Problem("", "\"reproductionFactor\" and \"reproductionAfter\" go together.");
        return model;
    }

    private static Figure Share(Node n, string name)
    {
        var figure = n.Figure(name, Units.Percent);
        if (figure.Value is < 0 or > 100 || figure.Low < 0 || figure.High > 100)
            n.Problem(name, "a share of the mites lies from 0 to 100 per cent.");
        return figure;
    }

    private static void Whole(Node n, string name, Figure? figure, int least, int most)
    {
        if (figure is not null && n.Has(name) && !(figure.Value >= least && figure.Value <= most && figure.Value == Math.Floor(figure.Value)))
            n.Problem($"{name}/value", string.Create(CultureInfo.InvariantCulture, $"a whole number from {least} to {most} is needed here."));
    }

    private static string Unknown(string kind, string id, IEnumerable<string> known) =>
        $"there is no {kind} named \"{id}\". Use one of: {string.Join(", ", known)}.";
}
