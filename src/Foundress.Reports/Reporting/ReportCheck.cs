using System.Globalization;
using Foundress.Book.Reporting;
using Foundress.Book.Wording;
using Foundress.Reports.Drawing;

namespace Foundress.Reports.Reporting;

/// <summary>Refuses a report with a number that cannot be shown, before anything is written.</summary>
internal static class ReportCheck
{
    /// <summary>Checks confidence, strips, day totals and jars.</summary>
    /// <exception cref="ArgumentException">A number cannot be shown; the message names it.</exception>
    public static void Require(SeasonReport report)
    {
        if (report.Confidence is not (> 0 and < 1))
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The report's confidence is {report.Confidence}, but must lie between 0 and 1, for example 0.95."), nameof(report));
        foreach (var apiary in report.Apiaries)
        {
            StripCheck.Require(apiary.Strip);
            foreach (var day in apiary.Days)
            {
                if (!StripCheck.IsLevel(day.Level) || !StripCheck.IsLevel(day.Lower ?? 0) || !StripCheck.IsLevel(day.Upper ?? 0)
                    || !StripCheck.IsLevel(day.Bees) || day.Lower is null != day.Upper is null || day.Lower > day.Upper)
                {
                    throw new ArgumentException(
                        string.Create(CultureInfo.InvariantCulture, $"The total of {apiary.Name} on {Say.IsoDay(day.On)} has level {day.Level} with interval {day.Lower} to {day.Upper}: all must be finite and not negative, the lower end first, and both ends or none given."),
                        nameof(report));
                }
            }

            foreach (var colony in apiary.Colonies)
            {
                foreach (var jar in colony.Jars)
                    StripCheck.Require(jar);
                foreach (var other in colony.Others)
                    StripCheck.Require(other);
            }
        }
    }
}
