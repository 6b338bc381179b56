using System.Globalization;
using Foundress.Book.Wording;

namespace Foundress.Book.Rules;

/// <summary>Collects the problems of one record.</summary>
internal sealed class Findings
{
    private readonly List<Problem> _problems = [];

    internal IReadOnlyList<Problem> All => _problems;

    internal void Error(string field, object? given, string message) => Add(Gravity.Error, field, given, message);

    internal void Doubt(string field, object? given, string message) => Add(Gravity.Doubt, field, given, message);

    /// <summary>A number that may be missing, but must lie in a range when given; what it is comes from <see cref="QuantityTexts"/>.</summary>
    internal void Range(string field, double? given, double least, double most, string what)
    {
        if (given is { } value && !(value >= least && value <= most))
            Error(field, value, RuleTexts.FormatNotInRange(Show(value), what, Show(least), Show(most)));
    }

    /// <summary>A day must be real: not before bees were kept in books like this, and not in the future.</summary>
    internal void Day(string field, DateOnly day, DateOnly today)
    {
        if (day > today)
            Error(field, day, RuleTexts.FormatDayInFuture(Show(day), Show(today)));
        else if (day.Year < 1980)
            Error(field, day, RuleTexts.FormatDayTooOld(Show(day)));
        else if (day < today.AddYears(-10))
            Doubt(field, day, RuleTexts.FormatDayTenYearsAgo(Show(day)));
    }

    /// <summary>Free text must not be a whole document.</summary>
    internal void Text(string field, string? given, int most)
    {
        if (given is not null && given.Length > most)
            Error(field, given.Length, RuleTexts.FormatTextTooLong(given.Length, most));
    }

    /// <summary>A name must say something.</summary>
    internal void Name(string field, string? given, bool needed, int most = 80)
    {
        if (given is null ? needed : string.IsNullOrWhiteSpace(given))
            Error(field, given, RuleTexts.NameEmpty);
        Text(field, given, most);
    }

    internal static string Show(double value) => value.ToString("0.######", CultureInfo.CurrentCulture);

    internal static string Show(DateOnly day) => Say.Day(day);

    private void Add(Gravity gravity, string field, object? given, string message) =>
        _problems.Add(new Problem(gravity, field, given switch
        {
            null => string.Empty,
            DateOnly day => Say.IsoDay(day),
            IFormattable value => value.ToString(null, CultureInfo.CurrentCulture),
            _ => given.ToString() ?? string.Empty,
        }, message));
}
