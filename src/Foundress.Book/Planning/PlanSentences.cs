using System.Globalization;
using Foundress.Book.Wording;
using Foundress.Science;
using Foundress.Science.Planning;

namespace Foundress.Book.Planning;

/// <summary>Plans in plain words.</summary>
internal sealed class PlanSentences(CultureInfo culture)
{
    internal static string Title(IReadOnlyList<PlannedControl> controls) =>
        controls.Count == 0 ? "Nothing done" : string.Join(", then ", controls.Select((control, place) => place == 0 ? control.Title : LowerFirst(control.Title)));

    internal string OfChoice(PlanFinal plan, double tolerance, DateOnly today, int count)
    {
        var reading = plan.Reading;
        var on = Say.Day(today.AddDays(reading.PeakDay));
        var whose = count == 1 ? "the colony's" : "every colony's";
        var start = reading.Holds
            ? $"By this reckoning {whose} chance of standing over the line stays within {Hundred(tolerance)}: at most {Hundred(reading.Peak)}, around {on}."
            : $"By this reckoning {Over(reading, tolerance, count)}: up to {Hundred(reading.Peak)}, around {on}.";
        return $"{start} On average a colony stands over the line for {reading.DaysOver.ToString(reading.DaysOver < 9.95 ? "0.#" : "0", culture)} of {Say.Count((reading.Days - 1) * reading.Step, "day", "days")}.";
    }

    internal string Why(PlanVirtue virtue, PlanFinal plan, PlanFinal nothing, bool anyHolds, double tolerance) => virtue switch
    {
        PlanVirtue.Nothing => plan.Reading.Holds ? "Nothing needs to be done to stay within your tolerance." : "What the others are held against.",
        PlanVirtue.Fewest => $"No plan with fewer controls was found that keeps within {Hundred(tolerance)}.",
        PlanVirtue.Gentlest => $"The least hazard for people, bees and comb among those that keep within {Hundred(tolerance)}.",
        PlanVirtue.LeastWork => $"The least work among those that keep within {Hundred(tolerance)}.",
        PlanVirtue.Cheapest => $"The least cost, by your own figures, among those that keep within {Hundred(tolerance)}.",
        PlanVirtue.Another => "Another way within your tolerance: it uses none of the controls of the plan with the fewest.",
        PlanVirtue.Surest => anyHolds ? "The lowest chance of standing over the line among those looked at closely." : "None found keeps within your tolerance; this one comes nearest.",
        PlanVirtue.NonChemical when plan.Reading.DaysOver > 0.95 * nothing.Reading.DaysOver => "The best found in which no substance is given; on the days there are for it, it changes hardly anything.",
        PlanVirtue.NonChemical => plan.Reading.Holds ? "No substance is given, and it keeps within your tolerance." : "The best found in which no substance is given; it does not keep within your tolerance.",
        _ => throw new ArgumentOutOfRangeException(nameof(virtue), virtue, "This virtue has no words."),
    };

    internal string OfAll(IReadOnlyList<PlanFinal> finals, PlanFinal nothing, double tolerance, DateOnly today, DateOnly to, DateOnly judgedFrom, int jars)
    {
        var words = new List<string>();
        var holding = finals.Where(plan => plan.Reading.Holds && plan.Uses.Count > 0).ToArray();
        if (nothing.Reading.Holds)
            words.Add($"If nothing is done the chance of standing over the line stays within {Hundred(tolerance)} until {Say.Day(to)}: no plan is needed by this reckoning. Jars decide.");
        else if (holding.Length > 0)
            words.Add($"{Say.Count(holding.Min(plan => plan.Weight.Controls), "control keeps", "controls keep")} the chance of standing over the line within {Hundred(tolerance)} until {Say.Day(to)}; there is more than one way, and the choice is yours.");
        else
            words.Add($"No plan that the rules allow keeps the chance of standing over the line within {Hundred(tolerance)} until {Say.Day(to)}; those shown come nearest.");
        if (judgedFrom > today)
            words.Add($"The tolerance is passed before any control could have worked, so chances count from {Say.Day(judgedFrom)} on.");
        if (jars == 0)
            words.Add("No jar was taken yet: this rests on the season alone and is very wide. Take jars first.");
        return string.Join(' ', words);
    }

    internal static string Searched(PlanTally tally, int starts, int looked, int closely) =>
        $"{Say.Count(looked, "start", "starts")} of controls were held against the rules and {starts} left; up to three of them in a row make {Number(tally.Conceivable)} plans. {Number(tally.Run)} were worked out, {closely} of them again with every colony and every course; the others were dropped for the reasons below. "
        + (tally.Complete ? "By the search's own reckoning none of those dropped does better." : "Where a first reckoning chose, a plan as good may have been missed.");

    private static string Over(PlanReading reading, double tolerance, int count)
    {
        if (count == 1)
            return "the colony's chance of standing over the line does not stay within your tolerance";
        var over = Enumerable.Range(0, reading.Colonies).Count(colony => reading.PeakOf(colony) > tolerance);
        return over == reading.Colonies
            ? "no colony's chance of standing over the line stays within your tolerance"
            : $"{over} of {reading.Colonies} colonies pass your tolerance for standing over the line";
    }

    private static string Number(double count) => count.ToString(count < 1e7 ? "#,0" : "0.#E+0", CultureInfo.InvariantCulture);

    private static string LowerFirst(string title) => char.ToLowerInvariant(title[0]) + title[1..];

    private string Hundred(double chance) => Say.InHundred(Chance.Of(Math.Clamp(chance, 0, 1)), culture);
}
