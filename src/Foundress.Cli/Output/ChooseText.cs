using System.Globalization;
using Foundress.Book.Choosing;
using Foundress.Book.Planning;
using Foundress.Book.Wording;

namespace Foundress.Cli.Output;

/// <summary>Controls on a day and plans of them, for people.</summary>
internal static class ChooseText
{
    private const string Decides = "The label, local law and licensed practice decide. No dose is told here.";

    internal static void Write(TextWriter text, ChooseOutput found)
    {
        text.WriteLine($"{found.Apiary}, {Say.Day(found.On)}: what the rules say of each control. {Decides}");
        foreach (var (workability, head) in new[] { (Workability.Workable, "Nothing known speaks against"), (Workability.NotKnown, "Something must be known first"), (Workability.RuledOut, "Ruled out") })
        {
            var some = found.Controls.Where(control => control.Workability == workability).ToArray();
            if (some.Length == 0)
                continue;
            text.WriteLine($"\n{head}:");
            foreach (var control in some)
                Write(text, control);
        }

        if (found.Plans is { } plans)
            Write(text, plans);
    }

    private static void Write(TextWriter text, ChooseControl control)
    {
        text.WriteLine($"  {control.Title} (over on {Say.Day(control.End)})");
        foreach (var reason in control.Against.Concat(control.Missing))
            text.WriteLine($"    - {reason.Text}{(reason.Source is { } source ? $" [{source}]" : null)}");
        if (control.Workability != Workability.RuledOut)
            WriteAll(text, "    ", "Mind", control.Mind);
    }

    private static void Write(TextWriter text, ControlPlans plans)
    {
        text.WriteLine($"\nPlans until {Say.Day(plans.To)}. {plans.Sentence}");
        text.WriteLine($"The chance borne: {(100 * plans.Tolerance).ToString("0.#", CultureInfo.InvariantCulture)} in 100 ({plans.ToleranceSource}).");
        var number = 0;
        foreach (var choice in plans.Choices)
        {
            text.WriteLine($"\n{++number}. {choice.Title}");
            foreach (var why in choice.Why)
                text.WriteLine($"   Shown because: {why}");
            text.WriteLine($"   {choice.Sentence}");
            foreach (var control in choice.Controls)
            {
                text.WriteLine($"   {Say.Day(control.Start)} to {Say.Day(control.End)}  {control.Title}");
                WriteAll(text, "      ", "First", control.First);
                WriteAll(text, "      ", "Mind", control.Mind);
            }

            var over = choice.Colonies.Where(colony => colony.Peak > plans.Tolerance).ToArray();
            if (over.Length > 0 && choice.Controls.Count > 0)
                text.WriteLine($"   Over the tolerance: {Say.List([.. over.Select(colony => $"{colony.Name} ({Hundred(colony.Peak)})")], 12)}.");
            if (choice.Cost is { } cost && choice.Controls.Count > 0)
                text.WriteLine(string.Create(CultureInfo.InvariantCulture, $"   Cost for a colony, by your figures: {cost:0.##}."));
        }

        if (plans.Searched.Length > 0)
            text.WriteLine($"\n{plans.Searched}");
        foreach (var dropped in plans.Dropped)
            text.WriteLine($"  - {dropped.Reason}");
        foreach (var left in plans.LeftOut)
            text.WriteLine($"  - {left}");
        text.WriteLine($"\n{Decides} A jar before each control, and after it, says more than any plan.");
    }

    private static void WriteAll(TextWriter text, string indent, string head, IReadOnlyList<string> sentences)
    {
        foreach (var sentence in sentences)
            text.WriteLine($"{indent}{head}: {sentence}");
    }

    private static string Hundred(double chance) => (100 * chance).ToString("0", CultureInfo.InvariantCulture) + " in 100";
}
