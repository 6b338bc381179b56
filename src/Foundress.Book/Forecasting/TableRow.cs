using System.Globalization;
using Foundress.Book.Importing;

namespace Foundress.Book.Forecasting;

/// <summary>A row of a file, with what is wrong with it so far.</summary>
public sealed class TableRow
{
    private readonly ColumnPlaces _columns;
    private readonly IReadOnlyList<string> _fields;
    private readonly bool _decimalComma;
    private readonly List<FieldProblem> _problems = [];

    internal TableRow(int row, ColumnPlaces columns, IReadOnlyList<string> fields, bool decimalComma) =>
        (Row, _columns, _fields, _decimalComma) = (row, columns, fields, decimalComma);

    /// <summary>The row, as a spreadsheet numbers it.</summary>
    public int Row { get; }

    /// <summary>What is wrong with it.</summary>
    public IReadOnlyList<FieldProblem> Problems => _problems;

    /// <summary>A field without the blanks around it; empty when it is not there.</summary>
    public string Text(string column) => _columns.Text(column, _fields);

    /// <summary>Notes that a field is wrong.</summary>
    /// <param name="column">The column; empty for the row as a whole.</param>
    /// <param name="fix">What is wrong and how to put it right; null when nothing is.</param>
    public void Check(string column, string? fix)
    {
        if (fix is not null)
            _problems.Add(new FieldProblem(column, column.Length == 0 ? string.Empty : Text(column), fix));
    }

    /// <summary>A name that must be there.</summary>
    public string Name(string column)
    {
        Check(column, NameField.Read(Text(column), out var name));
        return name;
    }

    /// <summary>A day that must be there.</summary>
    public DateOnly Day(string column, DateOnly latest)
    {
        Check(column, DateField.Read(Text(column), latest, out var day));
        return day;
    }

    /// <summary>A number within limits that must be there.</summary>
    public double Number(string column, double least, double most) => OptionalNumber(column, least, most) ?? Missing(column, least, most);

    /// <summary>A number within limits, or null where the field is empty.</summary>
    public double? OptionalNumber(string column, double least, double most)
    {
        var text = Text(column);
        if (text.Length == 0)
            return null;
        var plain = _decimalComma ? text.Replace(',', '.') : text;
        if (double.TryParse(plain, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
            && number >= least && number <= most)
            return number;
        Check(column, TableTexts.FormatWriteNumber(Plain(least), Plain(most)));
        return least;
    }

    private double Missing(string column, double least, double most)
    {
        Check(column, TableTexts.FormatNumberMissing(Plain(least), Plain(most)));
        return least;
    }

    private static string Plain(double number) => number.ToString(CultureInfo.InvariantCulture);
}
