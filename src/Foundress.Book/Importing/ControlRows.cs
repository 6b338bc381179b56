using System.Globalization;
using Foundress.Book.Controls;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Book.Wording;

namespace Foundress.Book.Importing;

/// <summary>Reads the rows of a file of controls against the book.</summary>
internal sealed class ControlRows(CsvReader reader, ColumnPlaces columns, BookState state, ControlList controls, DateOnly today, bool keepUnknown)
{
    private readonly ILookup<string, Apiary> _apiaries = state.Apiaries.Values.ToLookup(apiary => NameField.Key(apiary.Name), StringComparer.Ordinal);

    /// <summary>The row the reader stands on.</summary>
    internal (ControlRow? Row, RejectedRow? Rejected) Read()
    {
        if (reader.Problem is { } malformed)
            return (null, Reject([new(string.Empty, string.Empty, malformed)]));
        var problems = new List<FieldProblem>();
        var agent = Agent(problems);
        Check(problems, ControlColumns.Start, DateField.Read(Text(ControlColumns.Start), today, out var start));
        DateOnly? end = null;
        if (Text(ControlColumns.End).Length > 0)
        {
            var wrong = DateField.Read(Text(ControlColumns.End), today.AddYears(1), out var last);
            if (wrong is null && last < start)
                wrong = ImportTexts.FormatEndBeforeStart(Say.Day(start));
            Check(problems, ControlColumns.End, wrong);
            end = last;
        }

        var ending = Ending(problems);
        int? withdrawal = null;
        if (Text("withdrawal_days") is { Length: > 0 } days)
        {
            if (int.TryParse(days, NumberStyles.None, CultureInfo.InvariantCulture, out var whole) && whole <= 3650)
                withdrawal = whole;
            else
                problems.Add(new("withdrawal_days", days, ImportTexts.WithdrawalDays));
        }

        var texts = new string?[ControlRow.TextColumns.Length];
        for (var i = 0; i < texts.Length; i++)
            Check(problems, ControlRow.TextColumns[i], NameField.ReadNote(Text(ControlRow.TextColumns[i]), out texts[i]));
        var colonies = Colonies(problems, start);
        return problems.Count > 0
            ? (null, Reject(problems))
            : (new(reader.Row, reader.Line, [.. reader.Fields], Text(ControlColumns.Apiary), colonies, agent, start, end, ending, texts, withdrawal), null);
    }

    private string Agent(List<FieldProblem> problems)
    {
        var name = Text(ControlColumns.Agent);
        if (name.Length is 0 or > 80)
        {
            problems.Add(new(ControlColumns.Agent, name, ImportTexts.ControlMissing));
            return name;
        }

        var found = controls.Named(name);
        if (found.Count == 1)
            return found[0].Id;
        if (found.Count > 1)
            problems.Add(new(ControlColumns.Agent, name, ImportTexts.FormatControlEither(found.Select(agent => agent.Id).Aggregate(ImportTexts.FormatEither))));
        else if (!keepUnknown)
            problems.Add(new(ControlColumns.Agent, name, ImportTexts.ControlUnknown));
        return name;
    }

    private ControlEnding Ending(List<FieldProblem> problems)
    {
        var text = Text(ControlColumns.Ending);
        switch (JarColumns.Normal(text))
        {
            case "" or "as_planned":
                return ControlEnding.AsPlanned;
            case "stopped_early":
                return ControlEnding.StoppedEarly;
            case "partial":
                return ControlEnding.Partial;
            default:
                problems.Add(new(ControlColumns.Ending, text, ImportTexts.EndingWords));
                return ControlEnding.AsPlanned;
        }
    }

    private ColonyId[] Colonies(List<FieldProblem> problems, DateOnly start)
    {
        var place = Text(ControlColumns.Apiary);
        var apiaries = _apiaries[NameField.Key(place)].ToArray();
        if (apiaries.Length != 1)
        {
            problems.Add(new(ControlColumns.Apiary, place, apiaries.Length == 0
                ? ImportTexts.ApiaryUnknown
                : ImportTexts.ApiaryAmbiguous));
            return [];
        }

        var names = Text(ControlColumns.Colony).Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var here = state.Colonies.Values.Where(colony => colony.ApiaryOn(start) == apiaries[0].Id && (colony.End is null || colony.End.On >= start)).ToArray();
        if (names is ["all" or "ALL" or "All"])
            return here.Length > 0 ? [.. here.Select(colony => colony.Id)] : None(problems, "all", ImportTexts.NoColonyThere);
        if (names.Length == 0)
            return None(problems, string.Empty, ImportTexts.ColoniesMissing);
        var found = new List<ColonyId>();
        foreach (var name in names)
        {
            var named = here.Where(colony => NameField.Key(colony.Name) == NameField.Key(name)).ToArray();
            if (named.Length == 1)
                found.Add(named[0].Id);
            else
                problems.Add(new(ControlColumns.Colony, name, named.Length == 0 ? ImportTexts.ColonyNotThere : ImportTexts.ColonyAmbiguousThere));
        }

        return [.. found.Distinct()];
    }

    private static ColonyId[] None(List<FieldProblem> problems, string given, string fix)
    {
        problems.Add(new(ControlColumns.Colony, given, fix));
        return [];
    }

    private string Text(string column) => columns.Text(column, reader.Fields);

    private void Check(List<FieldProblem> problems, string column, string? problem)
    {
        if (problem is not null)
            problems.Add(new(column, Text(column), problem));
    }

    private RejectedRow Reject(IReadOnlyList<FieldProblem> problems) => new(reader.Row, reader.Line, problems, [.. reader.Fields]);
}
