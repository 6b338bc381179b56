using System.Globalization;
using Foundress.Book.Controls;
using Foundress.Book.Journal;
using Foundress.Book.Proving;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;

namespace Foundress.Book.Registering;

/// <summary>
/// Draws up the register: every record of a use of a control that was ever written, with the fields of Regulation (EU)
/// 2019/6, Article 108(2), and its equals elsewhere. What was struck out or put right stays in it, marked.
/// </summary>
/// <param name="entries">Every entry of the book.</param>
/// <param name="state">What the same book says today.</param>
/// <param name="knowledge">The known controls.</param>
/// <param name="today">The reader's day.</param>
/// <param name="culture">How numbers are written in sentences.</param>
public sealed class Registers(IEnumerable<Entry> entries, BookState state, KnowledgeBase knowledge, DateOnly today, CultureInfo culture)
{
    private readonly ControlList _controls = ControlList.Of(state, knowledge);
    private readonly ControlProofs _proofs = new(state, knowledge, today, culture);

    /// <summary>The register.</summary>
    /// <param name="filter">Which part of it.</param>
    /// <param name="invented">Whether the book is made up.</param>
    public Register Of(RegisterFilter filter, bool invented = false)
    {
        var read = entries.Select(entry => (Entry: entry, Record: IsOurs(entry.Kind) ? RecordJson.TryRead(entry.Kind, entry.Payload, out _) : null)).ToArray();
        var ends = read.Where(one => one.Record is ControlEnded).Select(one => (one.Entry, Facts: (ControlEnded)one.Record!)).ToLookup(one => one.Facts.Control);
        var rows = new List<RegisterRow>();
        foreach (var (entry, record) in read)
        {
            if (record is ControlRecord facts && Wanted(facts, filter))
                rows.Add(Row(entry, facts, ends[facts.Control]));
        }

        return new(
            state.Policy.OperationName ?? RegisterTexts.NoName, today, filter, Text(filter),
            [.. rows.OrderBy(row => row.Facts.Start).ThenBy(row => row.Facts.Control.Value).ThenBy(row => row.Written)], invented);
    }

    private static bool IsOurs(string kind) => kind is RecordKinds.Control or RecordKinds.ControlEnded;

    private bool Wanted(ControlRecord facts, RegisterFilter filter)
    {
        if (filter.To is { } to && facts.Start > to)
            return false;
        if (filter.From is { } from && Last(facts) is { } last && last < from)
            return false;
        if (filter.Agent is { } agent && facts.Agent != agent)
            return false;
        if (filter.SubstancesOnly && _controls.Find(facts.Agent) is { IsNonChemical: true })
            return false;
        return filter.Apiary is not { } apiary || facts.Colonies.Any(id => state.Colonies.TryGetValue(id, out var colony) && colony.ApiaryOn(facts.Start) == apiary);
    }

    // The last day it was at work, or is to be; null while nobody knows.
    private DateOnly? Last(ControlRecord facts)
    {
        if (!state.Controls.TryGetValue(facts.Control, out var use))
            return facts.PlannedEnd ?? facts.Start;
        var courses = state.CoursesOf(use);
        return courses.Any(course => course.End is null) ? null : courses.Select(course => course.End!.Value).DefaultIfEmpty(facts.Start).Max();
    }

    private RegisterRow Row(Entry entry, ControlRecord facts, IEnumerable<(Entry Entry, ControlEnded Facts)> ends)
    {
        var use = state.Controls.GetValueOrDefault(facts.Control);
        var holds = use is not null && use.Entry.Id == entry.Id;
        var strike = StrikeOf(entry) ?? (holds || use is null ? null : new RegisterStrike(use.Entry.Author, use.Entry.Clock.Instant, RegisterTexts.PutRight));
        var agent = _controls.Find(facts.Agent);
        var end = holds ? Last(facts) : null;
        var withdrawal = facts.WithdrawalDays ?? _controls.WithdrawalDays(facts.Agent);
        var colonies = facts.Colonies.Distinct().Select(id => state.Colonies.GetValueOrDefault(id)).ToArray();
        var places = colonies.OfType<Colony>().Select(colony => state.Apiaries.GetValueOrDefault(colony.ApiaryOn(facts.Start))).OfType<Apiary>().Distinct().ToArray();
        return new RegisterRow
        {
            Entry = entry.Id,
            Facts = facts,
            State = StrikeOf(entry) is not null ? RegisterState.Struck : strike is not null ? RegisterState.Replaced : RegisterState.Holds,
            Struck = strike,
            Apiaries = [.. places.Select(place => place.Name)],
            Place = places is [{ Latitude: { } latitude, Longitude: { } longitude }] ? (latitude, longitude) : null,
            Colonies = [.. colonies.Select(colony => colony?.Name ?? "?").Order(NaturalOrder.Instance)],
            Control = agent?.Title ?? facts.Agent,
            Ingredient = agent?.Ingredient ?? string.Empty,
            IsSubstance = agent is not { IsNonChemical: true },
            Ends = [.. ends.OrderBy(one => one.Facts.On).Select(one => End(one.Entry, one.Facts))],
            End = end,
            WithdrawalDays = withdrawal,
            WithdrawalOver = withdrawal is { } days && end is { } over ? over.AddDays(days + 1) : null,
            Reason = Reason(facts),
            Outcome = holds ? _proofs.Of(use!).Sentence : string.Empty,
            Author = entry.Author,
            Written = entry.Clock.Instant,
        };
    }

    private RegisterEnd End(Entry entry, ControlEnded facts) => new(
        facts.On, facts.Ending, [.. (facts.Colonies ?? []).Select(id => state.Colonies.GetValueOrDefault(id)?.Name ?? "?")], facts.Reason, facts.Note, StrikeOf(entry));

    private RegisterStrike? StrikeOf(Entry entry) =>
        state.Struck.TryGetValue(entry.Id, out var struck) ? new(struck.StruckBy.Author, struck.StruckBy.Clock.Instant, struck.Reason) : null;

    private string Reason(ControlRecord facts)
    {
        var parts = new List<string>();
        var wanted = (facts.ReasonJars ?? []).ToHashSet();
        var jars = wanted.Count == 0 ? [] : state.Jars.Where(jar => wanted.Contains(jar.Id)).ToArray();
        if (jars.Length > 0)
        {
            var mites = jars.Sum(jar => jar.Facts.Mites);
            var bees = jars.Sum(jar => jar.Facts.Bees.Count);
            var days = jars.Select(jar => jar.Facts.On).Distinct().Order().ToArray();
            var (number, level) = (bees.ToString("0", culture), Say.Level(100 * mites / bees, culture));
            parts.Add(days.Length > 1
                ? RegisterTexts.FormatJarsOfDays(Say.Jars(jars.Length), Say.Day(days[0]), Say.Day(days[^1]), Say.Mites(mites), number, level)
                : RegisterTexts.FormatJarsOfDay(Say.Jars(jars.Length), Say.Day(days[0]), Say.Mites(mites), number, level));
        }

        if (!string.IsNullOrWhiteSpace(facts.Reason))
            parts.Add(facts.Reason.Trim());
        return string.Join(" ", parts);
    }

    private string Text(RegisterFilter filter)
    {
        var parts = new List<string>
        {
            (filter.From, filter.To) switch
            {
                ({ } from, { } to) => RegisterTexts.FormatFromTo(Say.Day(from), Say.Day(to)),
                ({ } from, null) => RegisterTexts.FormatFrom(Say.Day(from)),
                (null, { } to) => RegisterTexts.FormatUntil(Say.Day(to)),
                _ => RegisterTexts.AllDays,
            },
            filter.Apiary is { } apiary && state.Apiaries.TryGetValue(apiary, out var known) ? known.Name : RegisterTexts.AllApiaries,
            filter.Agent is { } agent ? _controls.TitleOf(agent) : filter.SubstancesOnly ? RegisterTexts.AllSubstances : RegisterTexts.AllControls,
        };
        return string.Join("; ", parts);
    }
}
