using System.Globalization;
using Foundress.Book.Wording;
using Foundress.Science;
using Foundress.Science.Planning;

namespace Foundress.Book.Planning;

/// <summary>Plans in plain words.</summary>
internal sealed class PlanSentences(CultureInfo culture)
{
    internal static string Title(IReadOnlyList<PlannedControl> controls) =>
        controls.Count == 0 ? PlanTexts.TitleNothing : controls.Skip(1).Aggregate(controls[0].Title, (before, control) => PlanTexts.FormatTitleThen(before, Midway.FirstSmall(control.Title)));

    internal string OfChoice(PlanFinal plan, double tolerance, DateOnly today, int count)
    {
        var reading = plan.Reading;
        var on = Say.Day(today.AddDays(reading.PeakDay));
        var peak = Hundred(reading.Peak);
        var over = Enumerable.Range(0, reading.Colonies).Count(colony => reading.PeakOf(colony) > tolerance);
        var start = (reading.Holds, count) switch
        {
            (true, 1) => PlanTexts.FormatHoldsOne(Hundred(tolerance), peak, on),
            (true, _) => PlanTexts.FormatHoldsMany(Hundred(tolerance), peak, on),
            (false, 1) => PlanTexts.FormatPassesOne(peak, on),
            _ when over == reading.Colonies => PlanTexts.FormatPassesAll(peak, on),
            _ => PlanTexts.FormatPassesSome(over, reading.Colonies, peak, on),
        };
        var days = (reading.Days - 1) * reading.Step;
        return $"{start} {Plural.Pick(days, PlanTexts.FormatMeanDays(reading.DaysOver.ToString(reading.DaysOver < 9.95 ? "0.#" : "0", culture), days))}";
    }

    internal string Why(PlanVirtue virtue, PlanFinal plan, PlanFinal nothing, bool anyHolds, double tolerance) => virtue switch
    {
        PlanVirtue.Nothing => plan.Reading.Holds ? PlanTexts.WhyNothingHolds : PlanTexts.WhyNothing,
        PlanVirtue.Fewest => PlanTexts.FormatWhyFewest(Hundred(tolerance)),
        PlanVirtue.Gentlest => PlanTexts.FormatWhyGentlest(Hundred(tolerance)),
        PlanVirtue.LeastWork => PlanTexts.FormatWhyLeastWork(Hundred(tolerance)),
        PlanVirtue.Cheapest => PlanTexts.FormatWhyCheapest(Hundred(tolerance)),
        PlanVirtue.Another => PlanTexts.WhyAnother,
        PlanVirtue.Surest => anyHolds ? PlanTexts.WhySurest : PlanTexts.WhyNearest,
        PlanVirtue.NonChemical when plan.Reading.DaysOver > 0.95 * nothing.Reading.DaysOver => PlanTexts.WhyNoSubstanceIdle,
        PlanVirtue.NonChemical => plan.Reading.Holds ? PlanTexts.WhyNoSubstanceHolds : PlanTexts.WhyNoSubstance,
        _ => throw new ArgumentOutOfRangeException(nameof(virtue), virtue, "This virtue has no words."),
    };

    internal string OfAll(IReadOnlyList<PlanFinal> finals, PlanFinal nothing, double tolerance, DateOnly today, DateOnly to, DateOnly judgedFrom, int jars)
    {
        var words = new List<string>();
        var holding = finals.Where(plan => plan.Reading.Holds && plan.Uses.Count > 0).ToArray();
        if (nothing.Reading.Holds)
            words.Add(PlanTexts.FormatAllWithoutPlan(Hundred(tolerance), Say.Day(to)));
        else if (holding.Length > 0)
            words.Add(AllHold(holding.Min(plan => plan.Weight.Controls), tolerance, to));
        else
            words.Add(PlanTexts.FormatNoneHolds(Hundred(tolerance), Say.Day(to)));
        if (judgedFrom > today)
            words.Add(PlanTexts.FormatJudgedFrom(Say.Day(judgedFrom)));
        if (jars == 0)
            words.Add(PlanTexts.NoJarYet);
        return string.Join(' ', words);
    }

    internal static string Searched(PlanTally tally, int starts, int looked, int closely)
    {
        var numbers = Plural.Pick(looked, PlanTexts.FormatSearched(looked, starts, Number(tally.Conceivable), Number(tally.Run), closely));
        return $"{numbers} {(tally.Complete ? PlanTexts.SearchComplete : PlanTexts.SearchIncomplete)}";
    }

    private string AllHold(int fewest, double tolerance, DateOnly to) => Plural.Pick(fewest, PlanTexts.FormatAllHold(fewest, Hundred(tolerance), Say.Day(to)));

    private static string Number(double count) => count.ToString(count < 1e7 ? "#,0" : "0.#E+0", CultureInfo.CurrentCulture);

    // A title within a sentence. Other languages keep its first letter: German writes nouns with a capital.

    private string Hundred(double chance) => Say.InHundred(Chance.Of(Math.Clamp(chance, 0, 1)), culture);
}
