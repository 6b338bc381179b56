using System.Globalization;
using Foundress.Book.Seasons;
using Foundress.Book.Wording;

namespace Foundress.Reports.Drawing;

/// <summary>Refuses a strip that cannot be drawn honestly, with a message that names the jar or the day.</summary>
internal static class StripCheck
{
    /// <summary>Checks days, levels and intervals.</summary>
    /// <exception cref="ArgumentException">A value cannot be drawn.</exception>
    public static void Require(SeasonStrip strip)
    {
        if (strip.To < strip.From)
            throw new ArgumentException($"The strip of {strip.Apiary} ends on {Day(strip.To)}, before it begins on {Day(strip.From)}.", nameof(strip));
        foreach (var jar in strip.Jars)
        {
            Require(jar);
            if (jar.On < strip.From || jar.On > strip.To)
                throw Wrong(jar, $"lies outside the strip's days {Day(strip.From)} to {Day(strip.To)}: leave it out or widen the strip");
        }

        foreach (var other in strip.Others)
        {
            Require(other);
            if (other.On < strip.From || other.On > strip.To)
                throw new ArgumentException($"The count of colony {other.ColonyName} on {Day(other.On)} lies outside the strip's days {Day(strip.From)} to {Day(strip.To)}: leave it out or widen the strip.", nameof(strip));
        }

        foreach (var point in strip.Fan)
        {
            if (!IsLevel(point.Low) || !IsLevel(point.High) || !(point.Low <= point.LowerQuarter && point.LowerQuarter <= point.Middle && point.Middle <= point.UpperQuarter && point.UpperQuarter <= point.High))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The forecast of {Day(point.On)} runs {point.Low}, {point.LowerQuarter}, {point.Middle}, {point.UpperQuarter}, {point.High}: all must be finite, not negative and rising."), nameof(strip));
        }

        foreach (var line in strip.Lines)
        {
            if (!IsLevel(line.Act) || (line.Watch is { } watch && !IsLevel(watch)))
                throw new ArgumentException(
                    string.Create(CultureInfo.InvariantCulture, $"The line from {Day(line.From)} (watch {line.Watch}, act {line.Act}) must be finite and not negative."), nameof(strip));
        }

        foreach (var bar in strip.Controls)
        {
            if (bar.To < bar.From || bar.To < strip.From || bar.From > strip.To)
                throw new ArgumentException($"{bar.Title} runs from {Day(bar.From)} to {Day(bar.To)}, which must touch {Day(strip.From)} to {Day(strip.To)}.", nameof(strip));
        }

        foreach (var due in strip.Dues)
        {
            if (due.On < strip.From || due.On > strip.To || due.To < due.From)
                throw new ArgumentException(
                    $"'{due.Text}' is due on {Day(due.On)} (window {Day(due.From)} to {Day(due.To)}), which must lie within {Day(strip.From)} to {Day(strip.To)}.", nameof(strip));
        }
    }

    /// <summary>Checks one jar's numbers.</summary>
    /// <exception cref="ArgumentException">A number cannot be drawn.</exception>
    public static void Require(JarMark jar)
    {
        if (!IsLevel(jar.Level) || !IsLevel(jar.Lower) || !IsLevel(jar.Upper) || jar.Lower > jar.Upper || !double.IsFinite(jar.Bees))
            throw Wrong(jar, string.Create(CultureInfo.InvariantCulture, $"has level {jar.Level} with interval {jar.Lower} to {jar.Upper} from {jar.Bees} bees: all must be finite and not negative, the lower end first"));
    }

    /// <summary>Checks the numbers of one count on another scale.</summary>
    /// <exception cref="ArgumentException">A number cannot be shown.</exception>
    public static void Require(OtherMark other)
    {
        var rate = other.Reading.Rate;
        if (!IsLevel(rate.Value) || !IsLevel(rate.Lower) || !IsLevel(rate.Upper) || rate.Lower > rate.Upper)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"The count of colony {other.ColonyName} on {Day(other.On)} has rate {rate.Value} with interval {rate.Lower} to {rate.Upper}: all must be finite and not negative, the lower end first."), nameof(other));
    }

    /// <summary>Whether a number can be a level.</summary>
    public static bool IsLevel(double value) => double.IsFinite(value) && value >= 0;

    private static ArgumentException Wrong(JarMark jar, string what) =>
        new($"The jar of colony {jar.ColonyName} on {Day(jar.On)} {what}.", nameof(jar));

    private static string Day(DateOnly day) => Say.IsoDay(day);
}
