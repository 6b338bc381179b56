using System.Globalization;
using Foundress.Book.Records;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Judging;

namespace Foundress.Book.Judging;

/// <summary>Reads natural falls and opened brood, each on its own scale: rate, interval, void conditions, and where it stands to lines of that scale.</summary>
/// <param name="knowledge">Methods, lines and fall factors.</param>
/// <param name="policy">How the operation judges.</param>
/// <param name="culture">How numbers are written in the sentences.</param>
public sealed class OtherCountReader(KnowledgeBase knowledge, JudgingPolicy policy, CultureInfo culture)
{
    private const string FallMethod = "natural-fall";
    private const string NoSource = "product choice, no source; editable in the settings";

    /// <summary>Reads a natural fall that keeps to the rules of <see cref="Rules.RecordRules"/>.</summary>
    /// <param name="record">The fall.</param>
    /// <param name="apiary">Where the colony stood; null when not known.</param>
    /// <exception cref="ArgumentOutOfRangeException">The record breaks the rules.</exception>
    public OtherReading Read(MiteFallRecord record, Apiary? apiary)
    {
        var method = knowledge.Methods[FallMethod];
        var phase = SiteSeason.Of(apiary, knowledge).PhaseOn(record.On);
        var broodless = record.Broodless ?? phase == SeasonPhase.DormantBroodless;
        var factors = knowledge.FallFactors.Where(factor => factor.Covers(record.On.Month, apiary?.Hemisphere ?? Hemisphere.North, broodless)).ToList();
        var fall = new NaturalFall(record.Mites, record.Days, record.ShareCounted ?? 1, Voids(record, broodless && factors.Count == 0));
        var rate = fall.PerDay(policy.Confidence);
        // Lines for winter months are set for colonies without brood; a break in the brood at another time is another matter.
        var breaks = broodless && phase is not (SeasonPhase.DormantBroodless or SeasonPhase.DormantWithBrood);
        var voids = new List<string>();
        if (breaks)
            voids.Add("The colony has no brood: far fewer mites die in a day then, and the lines for this time of year are for colonies with brood.");
        voids.AddRange(fall.Voids.Where(reason => reason != FallVoid.NoBrood).Select(Said));

        var lines = policy.OnScale(OtherScales.Fall, apiary, record.On);
        var sound = !breaks && fall.Voids.All(reason => reason is FallVoid.NoBrood or FallVoid.Scavengers);
        var eaten = fall.Voids.Contains(FallVoid.Scavengers);
        var over = lines is not null && sound ? fall.ChanceOver(lines.Deciding) : (Chance?)null;
        Standing? standing = over is { } chance ? Judgement.Judge(chance, policy.Certainty) : null;
        if (eaten && standing != Standing.Above)
            (over, standing) = (null, null); // more fell than was counted, so only "above" can be said

        var total = factors.Count == 0 ? null : fall.Total(Bounds(factors), policy.Confidence);
        var notJudged = standing is not null ? null : voids.Count > 0 ? "It is not judged." : WhyNot(lines, OtherScales.Fall);
        var published = policy.Published(OtherScales.Fall, apiary, record.On);
        return new OtherReading(
            OtherKind.NaturalFall, record.On, method.Name, Units.MitesPerDay, rate, Counted(record), voids, lines, notJudged, over, standing, total, TotalSaid(total, fall, broodless, factors), published,
            Meaning(rate, record.Mites, "a day", voids, lines, notJudged, over, standing, published, fall.ChanceOver),
            Working(record, fall, rate, lines, over, factors, total), [.. method.Cautions.Select(caution => caution.Text)]);
    }

    /// <summary>Reads an opening of brood that keeps to the rules of <see cref="Rules.RecordRules"/>.</summary>
    /// <param name="record">The opening.</param>
    /// <param name="apiary">Where the colony stood; null when not known.</param>
    /// <exception cref="ArgumentOutOfRangeException">The record breaks the rules.</exception>
    public OtherReading Read(OpenedBroodRecord record, Apiary? apiary)
    {
        var drone = record.Brood == BroodKind.Drone;
        var scale = drone ? OtherScales.DroneCells : OtherScales.WorkerCells;
        var method = knowledge.Methods[drone ? "drone-brood" : "worker-brood"];
        var brood = new OpenedBrood(record.Brood, record.Cells, record.Infested, record.Mites);
        var share = brood.ShareInfested(policy.Confidence);
        var rate = new RateInterval(100 * share.Value, 100 * share.Lower, 100 * share.Upper, share.Confidence);
        var lines = policy.OnScale(scale, apiary, record.On);
        var over = lines is null ? (Chance?)null : OverShare(lines.Deciding);
        Standing? standing = over is { } chance ? Judgement.Judge(chance, policy.Certainty) : null;
        var notJudged = standing is null ? WhyNot(lines, scale) : null;
        var published = policy.Published(scale, apiary, record.On);
        return new OtherReading(
            drone ? OtherKind.DroneBrood : OtherKind.WorkerBrood, record.On, method.Name, Units.Percent, rate, Counted(record), [], lines, notJudged, over, standing, null, null, published,
            Meaning(rate, record.Infested, "per cent of cells", [], lines, notJudged, over, standing, published, OverShare), Working(record, brood, rate, lines, over),
            [.. method.Cautions.Select(caution => caution.Text)]);

        Chance OverShare(double percent) => brood.ChanceOver(Math.Min(1, percent / 100));
    }

    private static List<FallVoid> Voids(MiteFallRecord record, bool broodless)
    {
        var voids = new List<FallVoid>();
        if (broodless)
            voids.Add(FallVoid.NoBrood);
        if (record.Collapsing == true)
            voids.Add(FallVoid.Collapsing);
        if (record.UnderControl == true)
            voids.Add(FallVoid.UnderControl);
        if (record.Scavengers == true)
            voids.Add(FallVoid.Scavengers);
        return voids;
    }

    private static string Said(FallVoid reason) => reason switch
    {
        FallVoid.Collapsing => "The colony is collapsing: the fall no longer follows the mites on its bees.",
        FallVoid.UnderControl => "A control was working: the fall is its kill, not natural death.",
        FallVoid.Scavengers => "Ants or others reached the board: more fell than was counted.",
        _ => "The colony has no brood, and no factor for colonies without brood is known for this month.",
    };

    private static FallFactors Bounds(IReadOnlyList<FallFactor> factors) =>
        new(factors.Min(factor => factor.Lowest), factors.Max(factor => factor.Highest), string.Join("; ", factors.Select(factor => factor.Factor.Source.Text)));

    private static string WhyNot(LinesInForce? lines, string scale) => lines is null
        ? "No line of yours for this kind of count holds at this time of year, so it is not judged."
        : $"It is not judged on the scale {scale}.";

    private string Counted(MiteFallRecord record)
    {
        var share = record.ShareCounted is { } counted && counted < 1 ? $", {Say.Percent(counted, culture)} of the board counted" : string.Empty;
        return $"{Say.Count(record.Mites, "mite", "mites")} in {(record.Days == 1 ? "1 day" : $"{Number(record.Days)} days")}{share}";
    }

    private static string Counted(OpenedBroodRecord record) =>
        $"{record.Infested} of {Say.Count(record.Cells, record.Brood == BroodKind.Drone ? "drone cell" : "worker cell", record.Brood == BroodKind.Drone ? "drone cells" : "worker cells")} infested"
        + (record.Mites is { } mites ? $", {Say.Count(mites, "mother mite", "mother mites")}" : string.Empty);

    private string Meaning(
        RateInterval rate, int found, string unit, IReadOnlyList<string> voids, LinesInForce? lines, string? notJudged, Chance? over, Standing? standing, IReadOnlyList<LinesInForce> published,
        Func<double, Chance> overAny)
    {
        var text = found == 0 ? $"None were found. That is not proof of none: up to {Say.Level(rate.Upper, culture)} {unit} may be. " : string.Empty;
        foreach (var reason in voids)
            text += reason + " ";
        if (notJudged is not null)
            return text + notJudged + PublishedSaid(voids, lines, published, unit);
        var line = $"the line of {Say.Line(lines!.Deciding, culture)} {unit}";
        var chance = Say.InHundred(over!.Value, culture);
        return text + standing switch
        {
            Standing.Above => $"Over {line}, with a chance of {chance}. A control is usually needed: take a jar to see it on the scale of the bees, and look at what is workable and lawful where you are.",
            Standing.Below when lines.Watch is { } watch && lines.Act is not null && overAny(watch) > policy.Certainty.SureBelow =>
                $"Below {line} (chance of being over it: {chance}), but perhaps over {Say.Line(watch, culture)}, from where a control may be needed. Count again soon, or take a jar.",
            Standing.Below => $"Below {line} (chance of being over it: {chance}).",
            _ => $"Not settled: the chance of being over {line} is {chance}. Count longer or more, or take a jar.",
        };
    }

    private string PublishedSaid(IReadOnlyList<string> voids, LinesInForce? lines, IReadOnlyList<LinesInForce> published, string unit)
    {
        if (lines is not null || voids.Count > 0)
            return string.Empty;
        if (published.Count == 0)
            return " No published line for this time of year is known either.";
        var least = Say.Line(published.Min(one => one.Watch ?? one.Deciding), culture);
        var most = Say.Line(published.Max(one => one.Deciding), culture);
        return $" Published lines for this time of year: {(least == most ? least : $"{least} to {most}")} {unit}. Choose those of your region in the settings.";
    }

    private string? TotalSaid(MiteRange? total, NaturalFall fall, bool broodless, List<FallFactor> factors)
    {
        if (total is { } range)
        {
            var bounds = Bounds(factors);
            var known = bounds.Lowest == bounds.Highest
                ? $"the only published factor known for this month is {Number(bounds.Lowest)}"
                : $"published factors for this month run from {Number(bounds.Lowest)} to {Number(bounds.Highest)}";
            return $"All mites in the colony: somewhere from {Whole(range.Lowest)} to {Whole(range.Highest)}{(broodless ? ", being without brood" : string.Empty)}; {known}. No middle value would mean anything.";
        }

        return "How many mites there are in all cannot be told"
            + (fall.Voids is [FallVoid.NoBrood] ? ": " + LowerFirst(Said(FallVoid.NoBrood)) : ".");
    }

    private List<WorkingStep> Working(
        MiteFallRecord record, NaturalFall fall, RateInterval rate, LinesInForce? lines, Chance? over, List<FallFactor> factors, MiteRange? total)
    {
        var steps = new List<WorkingStep>
        {
            new("Fall a day", $"{record.Mites} / ({Number(fall.ShareCounted)} × {Number(fall.Days)}) = {Number(rate.Value)} mites a day", "the count"),
            new($"{Say.Percent(rate.Confidence, culture)} interval", $"{Number(rate.Lower)} to {Number(rate.Upper)} a day; chance of counting only, single days swing more", "exact Poisson interval, Garwood 1936, Biometrika 28:437-442"),
        };
        steps.AddRange(Judged(lines, over, $"tail of the gamma posterior with shape {record.Mites} + ½ (Jeffreys' prior)"));
        if (total is { } range)
        {
            steps.Add(new(
                "All mites",
                $"{Number(rate.Lower)} × {Number(factors.Min(factor => factor.Lowest))} to {Number(rate.Upper)} × {Number(factors.Max(factor => factor.Highest))} = {Whole(range.Lowest)} to {Whole(range.Highest)}",
                string.Join("; ", factors.Select(factor => $"{factor.Title} {Bounds(factor)} ({factor.Factor.Source.Text}{(factor.Factor.Source.Status == SourceStatus.FromMemory ? ", from memory" : string.Empty)})"))));
        }

        return steps;
    }

    private List<WorkingStep> Working(OpenedBroodRecord record, OpenedBrood brood, RateInterval rate, LinesInForce? lines, Chance? over)
    {
        var steps = new List<WorkingStep>
        {
            new("Cells infested", $"100 × {record.Infested} / {record.Cells} = {Number(rate.Value)} per cent", "the count"),
            new($"{Say.Percent(rate.Confidence, culture)} interval", $"{Number(rate.Lower)} to {Number(rate.Upper)} per cent", "Clopper & Pearson 1934, Biometrika 26:404-413; neighbouring cells are taken as independent"),
        };
        if (brood.MitesPerCell(policy.Confidence) is { } perCell)
            steps.Add(new("Mother mites per cell", $"{record.Mites} / {record.Cells} = {Number(perCell.Value)} ({Number(perCell.Lower)} to {Number(perCell.Upper)})", "exact Poisson interval, Garwood 1936, Biometrika 28:437-442"));
        steps.AddRange(Judged(lines, over, $"tail of the beta posterior with parameters {record.Infested} + ½ and {record.Cells - record.Infested} + ½ (Jeffreys' prior)"));
        return steps;
    }

    private IEnumerable<WorkingStep> Judged(LinesInForce? lines, Chance? over, string how)
    {
        if (lines is null || over is not { } chance)
            yield break;
        yield return new WorkingStep($"Chance over {Say.Line(lines.Deciding, culture)}", $"{Number(chance.Value)}: {how}", $"the line: {lines.Source}");
        yield return new WorkingStep(
            "Judgement", $"below when the chance is {Number(policy.Certainty.SureBelow.Value)} or less, above from {Number(policy.Certainty.SureAbove.Value)}, unclear between", NoSource);
    }

    private string Bounds(FallFactor factor) => factor.Lowest == factor.Highest ? Number(factor.Lowest) : $"{Number(factor.Lowest)} to {Number(factor.Highest)}";

    private string Whole(double mites) => mites < 10 ? mites.ToString("0", culture) : Rounded(mites).ToString("#,0", culture);

    // Two figures: more would be spurious where factors differ tenfold.
    private static double Rounded(double mites)
    {
        var unit = Math.Pow(10, Math.Floor(Math.Log10(mites)) - 1);
        return Math.Round(mites / unit) * unit;
    }

    private string Number(double value) => value.ToString("0.####", culture);

    private static string LowerFirst(string text) => char.ToLowerInvariant(text[0]) + text[1..];
}
