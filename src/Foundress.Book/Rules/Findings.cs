using System.Globalization;

namespace Foundress.Book.Rules;

/// <summary>Collects the problems of one record.</summary>
internal sealed class Findings
{
    private readonly List<Problem> _problems = [];

    internal IReadOnlyList<Problem> All => _problems;

    internal void Error(string field, object? given, string message) => Add(Gravity.Error, field, given, message);

    internal void Doubt(string field, object? given, string message) => Add(Gravity.Doubt, field, given, message);

    /// <summary>A number that may be missing, but must lie in a range when given.</summary>
    internal void Range(string field, double? given, double least, double most, string what)
    {
        if (given is { } value && !(value >= least && value <= most))
            Error(field, value, $"{Show(value)} is not {what}. Give a number from {Show(least)} to {Show(most)}, or leave it out.");
    }

    /// <summary>A day must be real: not before bees were kept in books like this, and not in the future.</summary>
    internal void Day(string field, DateOnly day, DateOnly today)
    {
        if (day > today)
            Error(field, day, $"{Show(day)} is in the future (today is {Show(today)}). Give the day it happened.");
        else if (day.Year < 1980)
            Error(field, day, $"{Show(day)} is too long ago. Give the day it happened, from 1980 on.");
        else if (day < today.AddYears(-10))
            Doubt(field, day, $"{Show(day)} is more than ten years ago. Check the year.");
    }

    /// <summary>Free text must not be a whole document.</summary>
    internal void Text(string field, string? given, int most)
    {
        if (given is not null && given.Length > most)
            Error(field, given.Length, $"The text has {given.Length} characters; the most is {most}. Shorten it.");
    }

    /// <summary>A name must say something.</summary>
    internal void Name(string field, string? given, bool needed, int most = 80)
    {
        if (given is null ? needed : string.IsNullOrWhiteSpace(given))
            Error(field, given, "The name is empty. Give a name or number.");
        Text(field, given, most);
    }

    internal static string Show(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);

    internal static string Show(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private void Add(Gravity gravity, string field, object? given, string message) =>
        _problems.Add(new Problem(gravity, field, given switch
        {
            null => string.Empty,
            DateOnly day => Show(day),
            IFormattable value => value.ToString(null, CultureInfo.InvariantCulture),
            _ => given.ToString() ?? string.Empty,
        }, message));
}
