using System.Text;
using Foundress.Book.Dues;
using Foundress.Book.State;
using Foundress.Book.Wording;

namespace Foundress.Cli.Output;

/// <summary>What is due, a line each.</summary>
internal static class DueText
{
    internal static string Of(IReadOnlyList<DueItem> items, BookState state)
    {
        if (items.Count == 0)
            return OutputTexts.NothingIsDue + "\n";
        var text = new StringBuilder();
        foreach (var item in items)
        {
            var when = item.Time switch
            {
                DueTime.Overdue => OutputTexts.FormatOverdue(Say.Day(item.To)),
                DueTime.Now when item.Kind is DueKind.Decide or DueKind.SampleAgain or DueKind.Inspect => OutputTexts.DueNow,
                DueTime.Now => item.To == item.From ? OutputTexts.DueToday : OutputTexts.FormatDueNowUntil(Say.Day(item.To)),
                DueTime.PutOff => OutputTexts.FormatDuePutOff(Say.Day(item.PutOff!.Until), item.PutOff.Reason),
                _ => item.To == item.From ? OutputTexts.FormatDueOn(Say.Day(item.From)) : OutputTexts.FormatDueBetween(Say.Day(item.From), Say.Day(item.To)),
            };
            text.Append(state.Apiaries.GetValueOrDefault(item.Apiary)?.Name ?? "?").Append(", ").Append(when).Append(": ").Append(item.Text).Append('\n');
        }

        return text.ToString();
    }
}
