using System.Globalization;
using System.Text.Json;
using Foundress.Science.Sampling;

namespace Foundress.Knowledge;

/// <summary>Reads the data files into their types and holds them against each other.</summary>
/// <param name="language">The code of the language texts are wanted in.</param>
/// <param name="open">Opens a data file.</param>
/// <param name="translation">Opens the texts of a data file in that language; null where there are none.</param>
internal sealed class KnowledgeReader(string language, Func<string, Stream> open, Func<string, Stream?> translation)
{
    public ReadingLog Log { get; } = new();

    public KnowledgeBase Read()
    {
        var methods = Root("methods.json", "scales", "methods");
        var scales = methods.Named("scales", Scale, "id", "unit", "description");
        var countingMethods = methods.Named(
            "methods", Method, "id", "name", "description", "scale", "isJar", "isHistoric", "killsSample", "defaultJar", "recoveries", "handling", "cautions");
        var unitOfScale = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var scale in scales)
            unitOfScale.TryAdd(scale.Id, scale.Unit);
        var lines = Root("lines.json", "policies");
        var policies = lines.Named(
            "policies", n => Policy(n, unitOfScale), "id", "title", "region", "hemisphere", "scale", "alsoUsedOn", "rows", "notes");
        var rules = Root("calendar.json", "rules").Named("rules", Rule, "id", "phase", "point", "text", "leeway", "source", "status", "doi");
        var jars = Root("jars.json", "measures", "beeWeights", "calibration", "weighing");
        var measures = jars.Named("measures", Measure, "id", "name", "volume", "bees", "logSpread", "note");
        var weights = jars.Named("beeWeights", n => new BeeWeight(n.Id(), n.Said("name"), n.Figure("weight", Units.MilligramsPerBee)), "id", "name", "weight");
        var calibration = Calibration(jars.Child("calibration", "jarsForMean", "jarsForSpread", "jarsEnough"));
        var weighing = Weighing(jars.Child("weighing", "spreadOfBees", "spreadOfPlaces", "scaleResolution", "sampleBees"));
        var falls = Root("fall.json", "factors").Named("factors", Fall, "id", "title", "hemisphere", "months", "brood", "factor");
        var climatesRoot = Root("climates.json", "climates");
        var climates = climatesRoot.Named(
            "climates", Climate, "id", "title", "description", "latitudeFrom", "latitudeTo", "northernMonths", "source", "status", "doi");
        var sampling = Sampling(Root("sampling.json", "sampling").Child(
            "sampling", "countAllBelow", "coloniesInOneApiary", "shareOfColoniesLow", "shareOfColoniesHigh", "timesPerYear", "daysAfterControl", "beesPerJar", "design", "published"));
        var judgingNode = Root("judging.json", "judging").Child("judging", "sureBelow", "sureAbove", "confidence", "defaultPolicy", "passNarrowing", "passMites");
        var judging = Judging(judgingNode);
        var bees = BeeReader.Read(Root("bees.json", BeeReader.Fields), climates);
        var controls = ControlReader.Read(Root("agents.json", ControlReader.Fields));
        var mites = MiteReader.Read(Root("biology.json", MiteReader.Fields));

        CheckMethods(methods, countingMethods, unitOfScale, measures);
        CheckBands(climatesRoot, climates);
        if (judging.DefaultPolicyId.Length > 0 && !policies.Any(p => p.Id == judging.DefaultPolicyId))
            judgingNode.Problem("defaultPolicy", Unknown("line policy", judging.DefaultPolicyId, policies.Select(p => p.Id)));
        if (Log.Problems.Count > 0)
            throw new KnowledgeException(Log.Problems);

        return new KnowledgeBase(
            new("counting method", countingMethods), new("scale", scales), new("line policy", policies), new("jar measure", measures),
            new("bee weight", weights), new("climate", climates), new("calendar rule", rules), sampling, judging, bees, controls,
            calibration, weighing, new("fall factor", falls), mites, language, Log);
    }

    private static string Unknown(string kind, string id, IEnumerable<string> known) =>
        $"there is no {kind} named \"{id}\". Use one of: {string.Join(", ", known)}.";

    private static Scale Scale(Node n)
    {
        var unit = n.Text("unit");
        if (unit.Length > 0 && !Units.All.Contains(unit))
            n.Problem("unit", $"\"{unit}\" is not a known unit. Use one of: {string.Join(", ", Units.All)}.");
        return new(n.Id(), unit, n.Said("description"));
    }

    private static Fact Fact(Node n) => new(n.Id(), n.Said("text"), n.FigureOfAnyUnit("figure"));

    private static CountingMethod Method(Node n) => new(
        n.Id(), n.Said("name"), n.Said("description"), n.Text("scale"), n.Flag("isJar"), n.Flag("isHistoric"), n.Flag("killsSample"), n.OptionalText("defaultJar"),
        n.List("recoveries", r => new Recovery(r.Figure("share", Units.Percent), r.Said("conditions")), "share", "conditions"),
        n.Named("handling", Fact, "id", "text", "figure"),
        n.Named("cautions", s => new Statement(s.Id(), s.Said("text"), s.Source()), "id", "text", "source", "status", "doi"));

    private static LinePolicy Policy(Node n, Dictionary<string, string> unitOfScale)
    {
        var scale = n.Text("scale");
        var alsoUsedOn = n.OptionalTexts("alsoUsedOn");
        var unit = unitOfScale.GetValueOrDefault(scale);
        if (unit is null && scale.Length > 0)
            n.Problem("scale", Unknown("scale", scale, unitOfScale.Keys));
        for (var i = 0; i < alsoUsedOn.Count; i++)
        {
            if (!unitOfScale.TryGetValue(alsoUsedOn[i], out var other))
                n.Problem(Place("alsoUsedOn", i), Unknown("scale", alsoUsedOn[i], unitOfScale.Keys));
            else if (unit is not null && other != unit)
                n.Problem(Place("alsoUsedOn", i), $"scale \"{alsoUsedOn[i]}\" counts in {other}, not in {unit}: lines are never converted. Give it a policy of its own.");
        }

        var rows = n.List("rows", r => Row(r, unit), "phases", "months", "colonyClass", "watch", "act", "watchMeans", "actMeans", "note");
        if (rows.Count == 0 && n.Has("rows"))
            n.Problem("rows", "a policy without a line says nothing. Add a row, or take the policy out.");
        for (var i = 0; i < rows.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (Overlap(rows[i], rows[j]))
                    n.Problem(Place("rows", i), $"covers a time and colony class that row {j} covers already. Make the two rows' phases, months or colonyClass differ.");
            }
        }

        return new(n.Id(), n.Said("title"), n.Said("region"), n.Choice("hemisphere", Words.Hemispheres), scale, alsoUsedOn, rows, n.OptionalSaids("notes"));
    }

    private static LineRow Row(Node n, string? unit)
    {
        var row = new LineRow(
            n.Has("phases") ? n.Choices("phases", Words.Phases) : [], n.OptionalMonths("months"), n.OptionalText("colonyClass"),
            n.OptionalFigure("watch", unit), n.OptionalFigure("act", unit), n.OptionalSaid("watchMeans"), n.OptionalSaid("actMeans"), n.OptionalSaid("note"));
        if (!n.Has("watch") && !n.Has("act"))
            n.Problem("", "has neither \"watch\" nor \"act\". Add at least one line.");
        foreach (var (name, line) in new[] { ("watch", row.Watch), ("act", row.Act) })
        {
            if (line?.Value < 0)
                n.Problem(name, "a line is 0 or more.");
        }

        if (row.Watch?.Value > row.Act?.Value)
            n.Problem("", string.Create(CultureInfo.InvariantCulture, $"\"watch\" ({row.Watch!.Value}) is above \"act\" ({row.Act!.Value}). The first line may not be above the second."));
        return row;
    }

    private static bool Overlap(LineRow a, LineRow b) =>
        a.ColonyClass == b.ColonyClass
        && (a.Phases.Count == 0 || b.Phases.Count == 0 || a.Phases.Intersect(b.Phases).Any())
        && (a.Months.Count == 0 || b.Months.Count == 0 || a.Months.Intersect(b.Months).Any());

    private static CalendarEntry Rule(Node n)
    {
        var id = n.Id();
        var leeway = n.Figure("leeway", Units.Days);
        if (leeway.Value is < 0 or > 60 || leeway.Value != Math.Floor(leeway.Value))
            n.Problem("leeway/value", "the leeway is a whole number of days from 0 to 60.");
        var rule = new CalendarRule(n.Choice("phase", Words.Phases), n.Choice("point", Words.Points), id, (int)Math.Clamp(leeway.Value, 0, 60));
        return new(id, rule, n.Said("text"), leeway, n.Source());
    }

    private static JarMeasure Measure(Node n)
    {
        var measure = new JarMeasure(
            n.Id(), n.Said("name"), n.Figure("volume", Units.Millilitres), n.Figures("bees", Units.Bees), n.Figure("logSpread", Units.One), n.OptionalSaid("note"));
        if (measure.Bees.Count == 0 && n.Has("bees"))
            n.Problem("bees", "is empty. Add the number of bees the measure is said to hold.");
        if (measure.Bees.Any(b => b.Value < 1))
            n.Problem("bees", "a jar holds at least one bee.");
        if (measure.LogSpread.Value is < 0 or > 1)
            n.Problem("logSpread/value", "the log spread of a bee count lies between 0 and 1.");
        return measure;
    }

    private static Climate Climate(Node n)
    {
        var months = n.Choices("northernMonths", Words.Phases);
        if (months.Count != 12 && n.Has("northernMonths"))
            n.Problem("northernMonths", string.Create(CultureInfo.InvariantCulture, $"has {months.Count} phases. Give one for each month from January to December, as in the north."));
        return new(n.Id(), n.Said("title"), n.Said("description"), n.OptionalNumber("latitudeFrom"), n.OptionalNumber("latitudeTo"), months, n.Source());
    }

    private static SamplingRules Sampling(Node n)
    {
        var rules = new SamplingRules(
            WholeFigure(n, "countAllBelow", Units.Colonies), WholeFigure(n, "coloniesInOneApiary", Units.Colonies),
            n.Figure("shareOfColoniesLow", Units.Percent), n.Figure("shareOfColoniesHigh", Units.Percent),
            WholeFigure(n, "timesPerYear", Units.TimesPerYear), WholeFigure(n, "daysAfterControl", Units.Days), WholeFigure(n, "beesPerJar", Units.Bees),
            Design(n.Child("design", "harmlessShareOfLine", "harmfulShareOfLine", "shareNotToMiss", "errorChance", "precision", "visitSpread", "shape")),
            n.Named("published", Fact, "id", "text", "figure"));
        if (rules.ColoniesInOneApiary.Value > rules.CountAllBelow.Value)
            n.Problem("coloniesInOneApiary/value", "a larger apiary cannot need more colonies than one small enough to count whole (countAllBelow).");
        if (!(rules.ShareOfColoniesLow.Value > 0 && rules.ShareOfColoniesLow.Value <= rules.ShareOfColoniesHigh.Value && rules.ShareOfColoniesHigh.Value <= 100))
            n.Problem("", "the shares must run 0 < shareOfColoniesLow ≤ shareOfColoniesHigh ≤ 100.");
        return rules;
    }

    private static DesignDefaults Design(Node n)
    {
        var design = new DesignDefaults(
            n.Figure("harmlessShareOfLine", Units.Percent), n.Figure("harmfulShareOfLine", Units.Percent), n.Figure("shareNotToMiss", Units.Percent),
            n.Figure("errorChance", Units.Percent), n.Figure("precision", Units.Percent), n.Figure("visitSpread", Units.One), n.Figure("shape", Units.One));
        if (design.HarmlessShareOfLine.Value is not (> 0 and <= 100))
            n.Problem("harmlessShareOfLine/value", "a level at which a control is wasted lies above 0 and at most on the line (100 %).");
        if (design.HarmfulShareOfLine.Value is not (> 100 and <= 1000))
            n.Problem("harmfulShareOfLine/value", "a level at which waiting does harm lies above the line: above 100 % and up to 1000 %.");
        if (design.ShareNotToMiss.Value is not (> 0 and <= 100))
            n.Problem("shareNotToMiss/value", "a share of the colonies lies above 0 and at most at 100 %.");
        if (design.ErrorChance.Value is not (> 0 and < 50))
            n.Problem("errorChance/value", "the chance of a wrong decision lies above 0 and below 50 %.");
        if (design.Precision.Value is not (> 0 and <= 100))
            n.Problem("precision/value", "a precision lies above 0 and at most at 100 %.");
        if (design.VisitSpread.Value is not (>= 0 and <= 1))
            n.Problem("visitSpread/value", "a spread of logarithms lies between 0 and 1 here.");
        if (design.Shape.Value is not (>= 0.05 and <= 1000))
            n.Problem("shape/value", "the shape of the spread between colonies lies between 0.05 and 1000.");
        return design;
    }

    private static Figure WholeFigure(Node n, string name, string unit)
    {
        var figure = n.Figure(name, unit);
        if (n.Has(name) && !(figure.Value is >= 1 and <= 100_000 && figure.Value == Math.Floor(figure.Value)))
            n.Problem($"{name}/value", "a whole number from 1 to 100,000 is needed here.");
        return figure;
    }

    private static JudgingDefaults Judging(Node n)
    {
        var judging = new JudgingDefaults(n.Figure("sureBelow", Units.One), n.Figure("sureAbove", Units.One), n.Figure("confidence", Units.One), n.Text("defaultPolicy"),
            n.Figure("passNarrowing", Units.One), n.Figure("passMites", Units.Mites));
        foreach (var (name, figure) in new[] { ("sureBelow", judging.SureBelow), ("sureAbove", judging.SureAbove), ("confidence", judging.Confidence), ("passNarrowing", judging.PassNarrowing) })
        {
            if (n.Has(name) && figure.Value is not (> 0 and < 1))
                n.Problem($"{name}/value", "a chance given here lies between 0 and 1, both excluded.");
        }

        if (n.Has("sureBelow") && n.Has("sureAbove") && judging.SureBelow.Value >= judging.SureAbove.Value)
            n.Problem("sureBelow/value", "must be less than sureAbove, or every count would be both below and above the line.");
        if (judging.PassMites.Value < 0)
            n.Problem("passMites/value", "a number of mites is 0 or more.");
        return judging;
    }

    private static CalibrationRules Calibration(Node n)
    {
        var rules = new CalibrationRules(n.Figure("jarsForMean", Units.Jars), n.Figure("jarsForSpread", Units.Jars), WholeFigure(n, "jarsEnough", Units.Jars));
        if (n.Has("jarsForMean") && rules.JarsForMean.Value <= 0)
            n.Problem("jarsForMean/value", "what a measure is said to hold is worth more than 0 jars.");
        if (n.Has("jarsForSpread") && rules.JarsForSpread.Value <= 2)
            n.Problem("jarsForSpread/value", "the said spread is worth more than 2 jars: with fewer the next jar has no finite spread.");
        return rules;
    }

    private static WeighingFacts Weighing(Node n)
    {
        var facts = new WeighingFacts(
            n.Figure("spreadOfBees", Units.One), n.Figure("spreadOfPlaces", Units.One), n.Figure("scaleResolution", Units.Grams), WholeFigure(n, "sampleBees", Units.Bees));
        if (n.Has("spreadOfBees") && facts.SpreadOfBees.Value is not (> 0 and <= 1))
            n.Problem("spreadOfBees/value", "the relative spread of the weight of bees lies above 0 and at most 1.");
        if (facts.SpreadOfPlaces.Value is not (>= 0 and <= 1))
            n.Problem("spreadOfPlaces/value", "the relative spread between scoops lies between 0 and 1.");
        if (facts.ScaleResolution.Value < 0)
            n.Problem("scaleResolution/value", "the step of a scale is 0 grams or more.");
        return facts;
    }

    private static FallFactor Fall(Node n)
    {
        var fall = new FallFactor(
            n.Id(), n.Said("title"), n.Choice("hemisphere", Words.Hemispheres), n.OptionalMonths("months"), n.Choice("brood", Words.Brood), n.Figure("factor", Units.MitesPerDailyMite));
        if (n.Has("factor") && fall.Lowest <= 0)
            n.Problem("factor", "a fall factor is above 0.");
        return fall;
    }

    private static void CheckMethods(
        Node root, IReadOnlyList<CountingMethod> methods, Dictionary<string, string> unitOfScale, IReadOnlyList<JarMeasure> measures)
    {
        for (var i = 0; i < methods.Count; i++)
        {
            var method = methods[i];
            if (method.ScaleId.Length > 0 && !unitOfScale.ContainsKey(method.ScaleId))
                root.Problem($"{Place("methods", i)}/scale", Unknown("scale", method.ScaleId, unitOfScale.Keys));
            if (method.DefaultJarId is { Length: > 0 } jar && !measures.Any(m => m.Id == jar))
                root.Problem($"{Place("methods", i)}/defaultJar", Unknown("jar measure", jar, measures.Select(m => m.Id)));
            if (method.IsJar != method.DefaultJarId is not null)
                root.Problem(Place("methods", i), "\"defaultJar\" belongs to jar methods and to no others: add it, take it out, or correct \"isJar\".");
        }
    }

    /// <summary>Each distance from the equator needs one default climate and no more.</summary>
    private static void CheckBands(Node root, IReadOnlyList<Climate> climates)
    {
        var reached = 0d;
        foreach (var (climate, i) in climates.Select((c, i) => (c, i)).Where(c => c.c.LatitudeFrom is not null || c.c.LatitudeTo is not null).OrderBy(c => c.c.LatitudeFrom))
        {
            if (climate.LatitudeFrom is not { } from || climate.LatitudeTo is not { } to || from >= to)
                root.Problem(Place("climates", i), "\"latitudeFrom\" and \"latitudeTo\" go together, and the first is the smaller.");
            else if (from != reached)
                root.Problem(Place("climates", i), string.Create(CultureInfo.InvariantCulture, $"its band starts at {from} degrees but the bands before it end at {reached}. Bands must touch without gap or overlap."));
            reached = climate.LatitudeTo ?? reached;
        }

        if (reached != 90)
            root.Problem("climates", string.Create(CultureInfo.InvariantCulture, $"the latitude bands end at {reached} degrees. Together they must cover 0 to 90."));
    }

    private static string Place(string list, int index) => string.Create(CultureInfo.InvariantCulture, $"{list}/{index}");

    private Node Root(string file, params ReadOnlySpan<string> fields)
    {
        // $schema lets an editor check the file while it is written.
        string[] allowed = [.. fields, "$schema"];
        try
        {
            using var stream = open(file);
            using var document = JsonDocument.Parse(stream, new JsonDocumentOptions { AllowDuplicateProperties = false });
            return new Node(Log, Translation.Read(file, translation), file, "", document.RootElement.Clone(), allowed);
        }
        catch (JsonException e)
        {
            throw new KnowledgeException($"{file} is not well-formed JSON: {e.Message}", e);
        }
    }
}
