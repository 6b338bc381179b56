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
        var breaks = broodless && !phase.IsDormant();
        var voids = new List<string>();
        if (breaks)
            voids.Add(OtherCountTexts.BreakInBrood);
        voids.AddRange(fall.Voids.Where(reason => reason != FallVoid.NoBrood).Select(Said));

        var lines = policy.OnScale(OtherScales.Fall, apiary, record.On);
        var sound = !breaks && fall.Voids.All(reason => reason is FallVoid.NoBrood or FallVoid.Scavengers);
        var eaten = fall.Voids.Contains(FallVoid.Scavengers);
        var over = lines is not null && sound ? fall.ChanceOver(lines.Deciding) : (Chance?)null;
        Standing? standing = over is { } chance ? Judgement.Judge(chance, policy.Certainty) : null;
        if (eaten && standing != Standing.Above)
            (over, standing) = (null, null); // more fell than was counted, so only "above" can be said

        var total = factors.Count == 0 ? null : fall.Total(Bounds(factors), policy.Confidence);
        var notJudged = standing is not null ? null : voids.Count > 0 ? OtherCountTexts.NotJudged : WhyNot(lines, OtherScales.Fall);
        var published = policy.Published(OtherScales.Fall, apiary, record.On);
        return new OtherReading(
            OtherKind.NaturalFall, record.On, method.Name, Units.MitesPerDay, rate, Counted(record), voids, lines, notJudged, over, standing, total, TotalSaid(total, fall, broodless, factors), published,
            Meaning(rate, record.Mites, ADay, voids, lines, notJudged, over, standing, published, fall.ChanceOver),
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
            Meaning(rate, record.Infested, PerCentOfCells, [], lines, notJudged, over, standing, published, OverShare), Working(record, brood, rate, lines, over),
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
        FallVoid.Collapsing => OtherCountTexts.Collapsing,
        FallVoid.UnderControl => OtherCountTexts.UnderControl,
        FallVoid.Scavengers => OtherCountTexts.Scavengers,
        _ => OtherCountTexts.NoFactorWithoutBrood,
    };

    private static FallFactors Bounds(IReadOnlyList<FallFactor> factors) =>
        new(factors.Min(factor => factor.Lowest), factors.Max(factor => factor.Highest), string.Join("; ", factors.Select(factor => factor.Factor.Source.Text)));

    private static string WhyNot(LinesInForce? lines, string scale) => lines is null
        ? OtherCountTexts.NoOwnLine
        : OtherCountTexts.FormatNotJudgedOnScale(scale);

    private string Counted(MiteFallRecord record)
    {
        var fall = Plural.Pick(
            record.Mites, record.Days == 1 ? OtherCountTexts.FormatMitesInADay(record.Mites) : OtherCountTexts.FormatMitesInDays(record.Mites, Number(record.Days)));
        return record.ShareCounted is { } counted && counted < 1 ? OtherCountTexts.FormatOfTheBoard(fall, Say.Percent(counted, culture)) : fall;
    }

    private static string Counted(OpenedBroodRecord record)
    {
        var cells = Plural.Pick(
            record.Cells,
            record.Brood == BroodKind.Drone ? OtherCountTexts.FormatDroneCellsInfested(record.Infested, record.Cells) : OtherCountTexts.FormatWorkerCellsInfested(record.Infested, record.Cells));
        return record.Mites is { } mites ? Plural.Pick(mites, OtherCountTexts.FormatWithMotherMites(cells, mites)) : cells;
    }

    private static string ADay(string number) => OtherCountTexts.FormatADay(number);

    private static string PerCentOfCells(string number) => OtherCountTexts.FormatPerCentOfCells(number);

    private string Meaning(
        RateInterval rate, int found, Func<string, string> inUnit, IReadOnlyList<string> voids, LinesInForce? lines, string? notJudged, Chance? over, Standing? standing, IReadOnlyList<LinesInForce> published,
        Func<double, Chance> overAny)
    {
        var text = found == 0 ? OtherCountTexts.FormatNoneFound(inUnit(Say.Level(rate.Upper, culture))) + " " : string.Empty;
        foreach (var reason in voids)
            text += reason + " ";
        if (notJudged is not null)
            return text + notJudged + PublishedSaid(voids, lines, published, inUnit);
        var line = inUnit(Say.Line(lines!.Deciding, culture));
        var chance = Say.InHundred(over!.Value, culture);
        return text + standing switch
        {
            Standing.Above => OtherCountTexts.FormatAboveMeaning(line, chance),
            Standing.Below when lines.Watch is { } watch && lines.Act is not null && overAny(watch) > policy.Certainty.SureBelow =>
                OtherCountTexts.FormatBelowPerhapsWatchMeaning(line, chance, Say.Line(watch, culture)),
            Standing.Below => OtherCountTexts.FormatBelowMeaning(line, chance),
            _ => OtherCountTexts.FormatUnclearMeaning(line, chance),
        };
    }

    private string PublishedSaid(IReadOnlyList<string> voids, LinesInForce? lines, IReadOnlyList<LinesInForce> published, Func<string, string> inUnit)
    {
        if (lines is not null || voids.Count > 0)
            return string.Empty;
        if (published.Count == 0)
            return " " + OtherCountTexts.NoPublishedLine;
        var least = Say.Line(published.Min(one => one.Watch ?? one.Deciding), culture);
        var most = Say.Line(published.Max(one => one.Deciding), culture);
        return " " + OtherCountTexts.FormatPublishedLines(inUnit(least == most ? least : OtherCountTexts.FormatFromTo(least, most)));
    }

    private string? TotalSaid(MiteRange? total, NaturalFall fall, bool broodless, List<FallFactor> factors)
    {
        if (total is { } range)
        {
            var bounds = Bounds(factors);
            var (low, high, least, most) = (Whole(range.Lowest), Whole(range.Highest), Number(bounds.Lowest), Number(bounds.Highest));
            if (bounds.Lowest == bounds.Highest)
                return broodless ? OtherCountTexts.FormatTotalByOneFactorBroodless(low, high, least) : OtherCountTexts.FormatTotalByOneFactor(low, high, least);
            return broodless ? OtherCountTexts.FormatTotalByFactorsBroodless(low, high, least, most) : OtherCountTexts.FormatTotalByFactors(low, high, least, most);
        }

        return fall.Voids is [FallVoid.NoBrood] ? OtherCountTexts.TotalUnknownWithoutBrood : OtherCountTexts.TotalUnknown;
    }

    private List<WorkingStep> Working(
        MiteFallRecord record, NaturalFall fall, RateInterval rate, LinesInForce? lines, Chance? over, List<FallFactor> factors, MiteRange? total)
    {
        var steps = new List<WorkingStep>
        {
            new(OtherCountTexts.FallADay, OtherCountTexts.FormatFallADayWorked(record.Mites, Number(fall.ShareCounted), Number(fall.Days), Number(rate.Value)), JudgingTexts.TheCount),
            new(JudgingTexts.FormatInterval(Say.Percent(rate.Confidence, culture)), OtherCountTexts.FormatFallInterval(Number(rate.Lower), Number(rate.Upper)), JudgingTexts.ExactPoisson),
        };
        steps.AddRange(Judged(lines, over, chance => OtherCountTexts.FormatGammaTail(chance, record.Mites)));
        if (total is { } range)
        {
            steps.Add(new(
                OtherCountTexts.AllMites,
                OtherCountTexts.FormatAllMitesWorked(
                    Number(rate.Lower), Number(factors.Min(factor => factor.Lowest)), Number(rate.Upper), Number(factors.Max(factor => factor.Highest)), Whole(range.Lowest), Whole(range.Highest)),
                string.Join("; ", factors.Select(Told))));
        }

        return steps;
    }

    private List<WorkingStep> Working(OpenedBroodRecord record, OpenedBrood brood, RateInterval rate, LinesInForce? lines, Chance? over)
    {
        var steps = new List<WorkingStep>
        {
            new(OtherCountTexts.CellsInfested, OtherCountTexts.FormatCellsInfestedWorked(record.Infested, record.Cells, Number(rate.Value)), JudgingTexts.TheCount),
            new(JudgingTexts.FormatInterval(Say.Percent(rate.Confidence, culture)), OtherCountTexts.FormatCellsInterval(Number(rate.Lower), Number(rate.Upper)), OtherCountTexts.CellsIntervalSource),
        };
        if (brood.MitesPerCell(policy.Confidence) is { } perCell)
        {
            steps.Add(new(
                OtherCountTexts.MotherMitesPerCell,
                OtherCountTexts.FormatMotherMitesPerCellWorked(record.Mites, record.Cells, Number(perCell.Value), Number(perCell.Lower), Number(perCell.Upper)),
                JudgingTexts.ExactPoisson));
        }

        steps.AddRange(Judged(lines, over, chance => OtherCountTexts.FormatBetaTail(chance, record.Infested, record.Cells - record.Infested)));
        return steps;
    }

    private IEnumerable<WorkingStep> Judged(LinesInForce? lines, Chance? over, Func<string, string> how)
    {
        if (lines is null || over is not { } chance)
            yield break;
        yield return new WorkingStep(
            JudgingTexts.FormatChanceOver(Say.Line(lines.Deciding, culture)), how(Number(chance.Value)), JudgingTexts.FormatLineSource(lines.Source));
        yield return new WorkingStep(
            JudgingTexts.Judgement, JudgingTexts.FormatJudgementRule(Number(policy.Certainty.SureBelow.Value), Number(policy.Certainty.SureAbove.Value)), JudgingTexts.NoSource);
    }

    private string Told(FallFactor factor)
    {
        var bounds = factor.Lowest == factor.Highest ? Number(factor.Lowest) : OtherCountTexts.FormatFromTo(Number(factor.Lowest), Number(factor.Highest));
        return factor.Factor.Source.Status == SourceStatus.FromMemory
            ? OtherCountTexts.FormatFactorFromMemory(factor.Title, bounds, factor.Factor.Source.Text)
            : OtherCountTexts.FormatFactorOf(factor.Title, bounds, factor.Factor.Source.Text);
    }

    private string Whole(double mites) => mites < 10 ? mites.ToString("0", culture) : Rounded(mites).ToString("#,0", culture);

    // Two figures: more would be spurious where factors differ tenfold.
    private static double Rounded(double mites)
    {
        var unit = Math.Pow(10, Math.Floor(Math.Log10(mites)) - 1);
        return Math.Round(mites / unit) * unit;
    }

    private string Number(double value) => value.ToString("0.####", culture);
}
