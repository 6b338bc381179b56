using System.Globalization;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Science;

namespace Foundress.Book.Importing;

/// <summary>
/// Reads a CSV file of jars a row at a time and says what has to be written into the book for each. A bad row stops
/// nothing else. Ids are made from content, so importing a file again, or after a crash half-way, records every jar once.
/// </summary>
/// <remarks>
/// Apiaries and colonies are found by name (case and blanks around it do not matter); those the book does not have are
/// made. Memory does not grow with the size of the file, but for some 50 bytes a row by which duplicates are found.
/// Not safe for concurrent use.
/// </remarks>
public sealed class JarImport
{
    private readonly Ledger _book;
    private readonly JarImportRules _rules;
    private readonly CsvReader _reader;
    private readonly JarPlaces _places;
    private readonly ColumnPlaces _columns;
    private readonly Dictionary<EntryId, int> _rowOfJar = [];
    private readonly string _operation;
    private bool _read;

    private JarImport(CsvOpening opening, Ledger book, string operation, JarImportRules rules)
    {
        (_book, _operation, _rules, _reader) = (book, operation, rules, opening.Reader);
        _places = new JarPlaces(book, operation);
        Encoding = opening.Encoding;
        Columns = opening.Header;
        _columns = new ColumnPlaces(
            opening.Header, JarColumns.Required, JarColumns.Optional, ImportTexts.FormatColumnsFound(Shown(opening.Header), string.Join(", ", JarColumns.Required)));
    }

    /// <summary>The encoding found.</summary>
    public string Encoding { get; }

    /// <summary>The separator found.</summary>
    public char Separator => _reader.Separator;

    /// <summary>The file's columns as they are written in it.</summary>
    public IReadOnlyList<string> Columns { get; }

    /// <summary>Columns this program does not know and does not read; the reader of the file should be told.</summary>
    public IReadOnlyList<string> UnknownColumns => _columns.Unknown;

    /// <summary>Jars so far that the book did not have.</summary>
    public int New { get; private set; }

    /// <summary>Jars so far that the book already had from an earlier import.</summary>
    public int Known { get; private set; }

    /// <summary>Rows so far that were not taken.</summary>
    public int Rejected { get; private set; }

    /// <summary>Apiaries so far that the book did not have.</summary>
    public int NewApiaries => _places.NewApiaries;

    /// <summary>Colonies so far that the book did not have.</summary>
    public int NewColonies => _places.NewColonies;

    /// <summary>Opens a file and reads its column names.</summary>
    /// <param name="csv">The file; the caller disposes of it.</param>
    /// <param name="book">The book the jars are for. It may be added to while the rows are read.</param>
    /// <param name="operation">The operation the entries will belong to.</param>
    /// <param name="rules">What rows are checked against.</param>
    /// <exception cref="ImportFormatException">It is not a CSV file of jars: nothing of it can be taken.</exception>
    public static JarImport Open(Stream csv, Ledger book, string operation, JarImportRules rules) =>
        new(CsvOpening.Of(csv), book, operation, rules);

    /// <summary>Reads the rows; rows without any text are passed over. May be called once.</summary>
    public IEnumerable<ImportedRow> Rows()
    {
        if (_read)
            throw new InvalidOperationException("The rows of a file can be read once.");
        _read = true;
        while (_reader.Read())
        {
            if (_reader.Problem is null && _reader.Fields.All(string.IsNullOrWhiteSpace))
                continue;
            var row = _reader.Problem is { } malformed ? Reject([new FieldProblem(string.Empty, string.Empty, malformed)]) : ReadRow();
            switch (row)
            {
                case AcceptedRow { Known: true }:
                    Known++;
                    break;
                case AcceptedRow:
                    New++;
                    break;
                default:
                    Rejected++;
                    break;
            }

            yield return row;
        }
    }

    private ImportedRow ReadRow()
    {
        var problems = new List<FieldProblem>();
        CheckWidth(problems);
        Check(problems, JarColumns.Apiary, NameField.Read(Text(JarColumns.Apiary), out var apiary));
        Check(problems, JarColumns.Colony, NameField.Read(Text(JarColumns.Colony), out var colony));
        Check(problems, JarColumns.Date, DateField.Read(Text(JarColumns.Date), _rules.Today, out var day));
        Check(problems, JarColumns.Method, MethodField.Read(Text(JarColumns.Method), _rules.Methods, out var method));
        var mitesProblem = MitesField.Read(Text(JarColumns.Mites), out var mites);
        Check(problems, JarColumns.Mites, mitesProblem);
        Check(problems, JarColumns.BeesBasis, BasisField.Read(Text(JarColumns.BeesBasis), out var basis));
        Check(problems, JarColumns.Bees, BeesField.Read(Text(JarColumns.Bees), basis, Separator != ',', out var bees));
        IReadOnlyList<int> passes = [mites];
        if (Text(JarColumns.Passes).Trim().Length > 0)
        {
            var passesProblem = PassesField.Read(Text(JarColumns.Passes), out passes);
            if (passesProblem is null && mitesProblem is null && passes.Sum() != mites)
                passesProblem = ImportTexts.FormatPassesDiffer(passes.Sum(), mites);
            Check(problems, JarColumns.Passes, passesProblem);
        }

        Check(problems, JarColumns.Measure, MeasureField.Read(Text(JarColumns.Measure), _rules.Measures, out var measure));
        if (measure is not null && basis == BeeBasis.Weighed)
            problems.Add(new FieldProblem(JarColumns.Measure, measure, ImportTexts.WeighedWithMeasure));
        Check(problems, JarColumns.Note, NameField.ReadNote(Text(JarColumns.Note), out var note));
        if (problems.Count > 0)
            return Reject(problems);

        var place = _places.Find(apiary, colony, day);
        if (place.Problem is not null)
            return Reject([place.Problem]);
        var jar = new JarRecord(day, method, passes, BeesOf(basis, bees) with { Measure = measure }, place.Colony, Note: note);
        return Accept(jar, place);
    }

    private ImportedRow Accept(JarRecord jar, JarPlace place)
    {
        var id = IdOf(jar);
        if (!_rowOfJar.TryAdd(id, _reader.Row))
            return Reject([new FieldProblem(string.Empty, string.Empty, ImportTexts.FormatSameJarAsRow(_rowOfJar[id]))]);

        var known = _book.Find(id) is { } entry ? entry : null;
        if (known is not null && RecordJson.TryRead(known.Kind, known.Payload, out _) is JarRecord before && before.Bees.Basis != jar.Bees.Basis)
            return Reject([new FieldProblem(JarColumns.BeesBasis, Text(JarColumns.BeesBasis), KnownAs(before.Bees.Basis))]);

        var records = new List<NewRecord>(3);
        records.AddRange(_places.Settle(place));
        if (known is null)
            records.Add(new NewRecord(id, jar));
        return new AcceptedRow(_reader.Row, _reader.Line, id, known is not null, records);
    }

    private static string KnownAs(BeeBasis basis) => basis switch
    {
        BeeBasis.Counted => ImportTexts.KnownAsCounted,
        BeeBasis.Weighed => ImportTexts.KnownAsWeighed,
        _ => ImportTexts.KnownAsAssumed,
    };

    // How the bees are known is left out on purpose: correcting it in the file must not make a second jar.
    private EntryId IdOf(JarRecord jar) => new(NamedIds.Of(
        "imported jar", _operation, jar.Colony!.Value.ToString(), Invariant($"{jar.On:yyyy-MM-dd}"), jar.Method,
        string.Join(';', jar.Passes.Select(count => Invariant($"{count}"))), Invariant($"{jar.Bees.Count:R}"), jar.Note ?? string.Empty));

    private JarBees BeesOf(BeeBasis basis, double bees) => basis switch
    {
        BeeBasis.Weighed => new JarBees(basis, bees, _rules.WeighedLogSpread),
        BeeBasis.Assumed => new JarBees(basis, bees, _rules.AssumedLogSpread),
        _ => JarBees.Counted((int)bees),
    };

    private void CheckWidth(List<FieldProblem> problems)
    {
        for (var i = Columns.Count; i < _reader.Fields.Count; i++)
        {
            if (_reader.Fields[i].AsSpan().Trim().Length == 0)
                continue;
            problems.Add(new FieldProblem(string.Empty, string.Empty, ImportTexts.FormatTooManyFields(_reader.Fields.Count, Columns.Count)));
            return;
        }
    }

    private void Check(List<FieldProblem> problems, string column, string? problem)
    {
        if (problem is not null)
            problems.Add(new FieldProblem(column, Text(column).Trim(), problem));
    }

    private string Text(string column) =>
        _columns.Raw(column, _reader.Fields);

    private RejectedRow Reject(IReadOnlyList<FieldProblem> problems) => new(_reader.Row, _reader.Line, problems, [.. _reader.Fields]);

    private static string Shown(IReadOnlyList<string> header)
    {
        var text = string.Join(", ", header.Where(name => name.Length > 0));
        var clean = string.Concat(text.Select(character => char.IsControl(character) ? '?' : character));
        return clean.Length <= 200 ? clean : string.Concat(clean.AsSpan(0, 200), "…");
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
