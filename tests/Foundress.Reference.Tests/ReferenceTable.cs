using System.Globalization;

namespace Foundress.Reference.Tests;

/// <summary>A committed table of outside values: lines of '#' say what made it, then a header, then tab-separated rows.</summary>
internal sealed class ReferenceTable
{
    private readonly Dictionary<string, int> _columns;

    private ReferenceTable(Dictionary<string, int> columns, List<string[]> rows) => (_columns, Rows) = (columns, rows);

    public List<string[]> Rows { get; }

    public static ReferenceTable Read(string file)
    {
        string[] lines = [.. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Tables", file)).Where(line => !line.StartsWith('#'))];
        var columns = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (string name in lines[0].Split('\t'))
            columns.Add(name, columns.Count);
        return new(columns, [.. lines.Skip(1).Select(line => line.Split('\t'))]);
    }

    public string Text(string[] row, string column) => row[_columns[column]];

    public double Number(string[] row, string column) => double.Parse(Text(row, column), NumberStyles.Float, CultureInfo.InvariantCulture);

    public int Whole(string[] row, string column) => int.Parse(Text(row, column), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
}
