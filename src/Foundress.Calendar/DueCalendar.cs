using System.Globalization;
using Foundress.Book.Dues;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;

namespace Foundress.Calendar;

/// <summary>
/// Writes what is due as iCalendar (RFC 5545): whole days, each with an id that stays the same from one fetch to the next, so
/// that a calendar which takes it by subscription moves a date rather than doubling it.
/// </summary>
public static class DueCalendar
{
    /// <summary>The media type.</summary>
    public const string MediaType = "text/calendar";

    /// <summary>The calendar's text.</summary>
    /// <param name="items">What is due.</param>
    /// <param name="state">The book, for the names of apiaries.</param>
    /// <param name="stamp">When it is written.</param>
    /// <param name="app">Where the app is opened, so that each date leads to its page; null for none.</param>
    public static string Write(IReadOnlyList<DueItem> items, BookState state, DateTimeOffset stamp, Uri? app = null)
    {
        ArgumentNullException.ThrowIfNull(items);
        ArgumentNullException.ThrowIfNull(state);
        var calendar = new Ical.Net.Calendar { ProductId = $"-//Foundress//Dates of the apiary//{Languages.Current.Code.ToUpperInvariant()}", Method = "PUBLISH" };
        calendar.AddProperty("X-WR-CALNAME", state.Policy.OperationName ?? "Foundress");
        foreach (var item in items)
            calendar.Events.Add(Event(item, state, stamp, app));
        return new CalendarSerializer().SerializeToString(calendar)
            ?? throw new InvalidOperationException("The calendar could not be written.");
    }

    private static CalendarEvent Event(DueItem item, BookState state, DateTimeOffset stamp, Uri? app)
    {
        // What was put off stands on the day it comes back; what is open stands from its first day to its last.
        var from = item.PutOff is { } snoozed ? snoozed.Until : item.From;
        var to = item.PutOff is null && item.To >= from ? item.To : from;
        var place = state.Apiaries.GetValueOrDefault(item.Apiary);
        var dated = new CalendarEvent
        {
            Uid = string.Create(CultureInfo.InvariantCulture, $"{item.Key.Replace(':', '-')}@foundress"),
            DtStamp = new CalDateTime(stamp.UtcDateTime, "UTC"),
            Start = Day(from),
            // The day after the last: the end of whole days is not part of them.
            End = Day(to.AddDays(1)),
            Summary = $"{place?.Name ?? "?"}: {item.Text}",
            Location = place?.Name,
            Description = item.PutOff is { } off ? $"{item.Text} {CalendarTexts.FormatPutOff(OfferedWords.Shown(off.Reason))}" : item.Text,
            Categories = [Word(item.Kind)],
            // A date of this list takes up no time of the day.
            Transparency = TransparencyType.Transparent,
        };
        if (place is { Latitude: { } latitude, Longitude: { } longitude })
            dated.GeographicLocation = new GeographicLocation(latitude, longitude);
        if (app is not null)
            dated.Url = new Uri(app, item.Control is { } control ? $"control/{control}" : $"apiary/{item.Apiary}");
        return dated;
    }

    private static CalDateTime Day(DateOnly day) => new(day);

    private static string Word(DueKind kind) => kind switch
    {
        DueKind.Decide => CalendarTexts.Decide,
        DueKind.TakeOut => CalendarTexts.TakeOut,
        DueKind.SampleAgain => CalendarTexts.SampleAgain,
        DueKind.Planned => CalendarTexts.PlannedControl,
        DueKind.Prove => CalendarTexts.Prove,
        DueKind.Sample => CalendarTexts.Sample,
        DueKind.Inspect => CalendarTexts.Inspect,
        DueKind.SupersBack or DueKind.SupersOn => CalendarTexts.Supers,
        DueKind.Harvest => CalendarTexts.Harvest,
        _ => CalendarTexts.Withdrawal,
    };
}
