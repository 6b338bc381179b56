using Foundress.Book.Controls;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Book.Wording;
using Foundress.Knowledge;

namespace Foundress.Book.Importing;

/// <summary>
/// Reads a CSV file of controls. Rows that differ in the colony alone are one use. Ids are made from content, so a file
/// imported again records nothing twice, and a use that the book has keeps the colonies it has there.
/// </summary>
public static class ControlImport
{
    /// <summary>More rows than any operation's controls of many years (product choice).</summary>
    public const int MostRows = 100_000;

    /// <summary>Reads a file.</summary>
    /// <param name="csv">The file; left open.</param>
    /// <param name="book">The book the controls are for; its apiaries and colonies are not added to.</param>
    /// <param name="operation">The operation the entries will belong to.</param>
    /// <param name="knowledge">The known controls.</param>
    /// <param name="today">No control may have started later.</param>
    /// <param name="keepUnknown">True to keep controls that are not known, as they are written.</param>
    /// <exception cref="ImportFormatException">It is not a CSV file of controls: nothing of it can be taken.</exception>
    public static ControlFile Read(Stream csv, Ledger book, string operation, KnowledgeBase knowledge, DateOnly today, bool keepUnknown = false)
    {
        var opening = CsvOpening.Of(csv, [.. ControlColumns.Required, .. ControlColumns.Optional]);
        var columns = new ColumnPlaces(opening.Header, ControlColumns.Required, ControlColumns.Optional, ImportTexts.FormatColumnsNeeded(string.Join(", ", ControlColumns.Required)), Aliases);
        var rows = new ControlRows(opening.Reader, columns, book.State, ControlList.Of(book.State, knowledge), today, keepUnknown);
        var groups = new Dictionary<string, List<ControlRow>>(StringComparer.Ordinal);
        var order = new List<string>();
        var rejected = new List<RejectedRow>();
        var count = 0;
        while (opening.Reader.Read())
        {
            if (opening.Reader.Problem is null && opening.Reader.Fields.All(string.IsNullOrWhiteSpace))
                continue;
            if (++count > MostRows)
                throw new ImportFormatException(ImportTexts.FormatTooManyRows(MostRows));
            var (row, bad) = rows.Read();
            if (bad is not null)
            {
                rejected.Add(bad);
                continue;
            }

            var key = row!.Key();
            if (!groups.TryGetValue(key, out var group))
            {
                groups[key] = group = [];
                order.Add(key);
            }

            group.Add(row);
        }

        var uses = new List<ControlUse>();
        foreach (var key in order)
        {
            if (Use(groups[key], key, book, operation, knowledge, today, rejected) is { } use)
                uses.Add(use);
        }

        return new(uses, [.. rejected.OrderBy(row => row.Row)], opening.Header, columns.Unknown, opening.Reader.Separator);
    }

    private static IReadOnlyDictionary<string, string> Aliases { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["colonies"] = ControlColumns.Colony,
        ["control"] = ControlColumns.Agent,
        ["date"] = ControlColumns.Start,
        ["by"] = "given_by",
    };

    private static ControlUse? Use(
        List<ControlRow> rows, string key, Ledger book, string operation, KnowledgeBase knowledge, DateOnly today, List<RejectedRow> rejected)
    {
        var control = new ControlId(NamedIds.Of("imported control", operation, key));
        var named = rows.SelectMany(row => row.Colonies).Distinct().ToArray();
        // A use the book has keeps its colonies: a file with a part of them must not take the others out.
        var before = book.State.Controls.GetValueOrDefault(control);
        ColonyId[] colonies = [.. (before?.Facts.Colonies ?? []).Union(named)];
        var first = rows[0];
        var record = before is null ? first.Record(control, colonies) : before.Facts with { Colonies = colonies };
        var problems = RecordRules.Check(record, book.State, knowledge, today);
        var errors = problems.Where(problem => problem.Gravity == Gravity.Error).Select(problem => new FieldProblem(problem.Field, problem.Given, problem.Message)).ToArray();
        if (errors.Length > 0)
        {
            rejected.AddRange(rows.Select(row => new RejectedRow(row.Row, row.Line, errors, row.Fields)));
            return null;
        }

        var records = new List<NewRecord>();
        var id = new EntryId(NamedIds.Of("imported use", control.ToString(), string.Join(',', named.Select(colony => colony.ToString()).Order(StringComparer.Ordinal))));
        var grown = before is null || colonies.Length > before.Facts.Colonies.Distinct().Count();
        if (!book.Contains(id) && grown)
            records.Add(new(id, record));
        if (first.End is { } end && end <= today && end > first.Start)
        {
            // Kept in the book like any note: in the language of whoever imported the file.
            var ended = new ControlEnded(control, end, first.Ending, null, first.Ending == ControlEnding.AsPlanned ? null : first.Reason ?? ImportTexts.NoReasonInFile);
            var endId = new EntryId(NamedIds.Of("imported end", control.ToString(), Say.IsoDay(end)));
            if (!book.Contains(endId))
                records.Add(new(endId, ended));
        }

        return new([.. rows.Select(row => row.Row)], control, records.Count == 0, records,
            [.. problems.Where(problem => problem.Gravity == Gravity.Doubt).Select(problem => problem.Message)]);
    }
}
