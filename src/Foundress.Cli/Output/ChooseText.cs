using System.Globalization;
using Foundress.Book.Choosing;
using Foundress.Book.Planning;
using Foundress.Book.Wording;

namespace Foundress.Cli.Output;

/// <summary>Controls on a day and plans of them, for people.</summary>
internal static class ChooseText
{
    internal static void Write(TextWriter text, ChooseOutput found, CultureInfo culture)
    {
        text.WriteLine($"{OutputTexts.FormatChooseHead(found.Apiary, Say.Day(found.On))} {OutputTexts.Decides}");
        foreach (var (workability, head) in new[] { (Workability.Workable, OutputTexts.WorkableHead), (Workability.NotKnown, OutputTexts.NotKnownHead), (Workability.RuledOut, OutputTexts.RuledOutHead) })
        {
            var some = found.Controls.Where(control => control.Workability == workability).ToArray();
            if (some.Length == 0)
                continue;
            text.WriteLine("\n" + head);
            foreach (var control in some)
                Write(text, control);
        }

        if (found.Plans is { } plans)
            Write(text, plans, culture);
    }

    private static void Write(TextWriter text, ChooseControl control)
    {
        text.WriteLine("  " + OutputTexts.FormatOverOn(control.Title, Say.Day(control.End)));
        foreach (var reason in control.Against.Concat(control.Missing))
            text.WriteLine($"    - {reason.Text}{(reason.Source is { } source ? $" [{source}]" : null)}");
        if (control.Workability != Workability.RuledOut)
            WriteAll(text, "    ", control.Mind, OutputTexts.FormatMind);
    }

    private static void Write(TextWriter text, ControlPlans plans, CultureInfo culture)
    {
        text.WriteLine("\n" + OutputTexts.FormatPlansUntil(Say.Day(plans.To), plans.Sentence));
        text.WriteLine(OutputTexts.FormatChanceBorne((100 * plans.Tolerance).ToString("0.#", culture), plans.ToleranceSource));
        var number = 0;
        foreach (var choice in plans.Choices)
        {
            text.WriteLine($"\n{++number}. {choice.Title}");
            foreach (var why in choice.Why)
                text.WriteLine("   " + OutputTexts.FormatShownBecause(why));
            text.WriteLine($"   {choice.Sentence}");
            foreach (var control in choice.Controls)
            {
                text.WriteLine("   " + OutputTexts.FormatPlanControl(Say.Day(control.Start), Say.Day(control.End), control.Title));
                WriteAll(text, "      ", control.First, OutputTexts.FormatFirst);
                WriteAll(text, "      ", control.Mind, OutputTexts.FormatMind);
            }

            var over = choice.Colonies.Where(colony => colony.Peak > plans.Tolerance).ToArray();
            if (over.Length > 0 && choice.Controls.Count > 0)
                text.WriteLine("   " + OutputTexts.FormatOverTolerance(Say.List([.. over.Select(colony => OutputTexts.FormatColonyChance(colony.Name, (100 * colony.Peak).ToString("0", culture)))], 12)));
            if (choice.Cost is { } cost && choice.Controls.Count > 0)
                text.WriteLine("   " + OutputTexts.FormatPlanCost(cost.ToString("0.##", culture)));
        }

        if (plans.Searched.Length > 0)
            text.WriteLine($"\n{plans.Searched}");
        foreach (var dropped in plans.Dropped)
            text.WriteLine($"  - {dropped.Reason}");
        foreach (var left in plans.LeftOut)
            text.WriteLine($"  - {left}");
        text.WriteLine($"\n{OutputTexts.Decides} {OutputTexts.JarsSayMore}");
    }

    private static void WriteAll(TextWriter text, string indent, IReadOnlyList<string> sentences, Func<object, string> say)
    {
        foreach (var sentence in sentences)
            text.WriteLine(indent + say(sentence));
    }
}
