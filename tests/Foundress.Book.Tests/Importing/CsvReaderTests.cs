using CsCheck;
using Foundress.Book.Importing;
using nietras.SeparatedValues;

namespace Foundress.Book.Tests.Importing;

public sealed class CsvReaderTests
{
    [Theory]
    [InlineData("a,b\n1,2\n", "a|b / 1|2")]
    [InlineData("a,b\r\n1,2", "a|b / 1|2")]
    [InlineData("a,b\r1,2\r", "a|b / 1|2")]
    [InlineData("a,\n,b\n", "a| / |b")]
    [InlineData("\"a,b\",c\n", "a,b|c")]
    [InlineData("\"a\nb\",c\nd\n", "a\nb|c / d")]
    [InlineData("\"a \"\"b\"\" c\",d", "a \"b\" c|d")]
    [InlineData("a, \"b,c\" ,d", "a|b,c|d")]
    [InlineData("5\" jar,b\nc,d", "5\" jar|b / c|d")]
    [InlineData("\"\",\"\"\n", "|")]
    [InlineData("", "")]
    public void Read_WellFormed_GivesFields(string text, string expected) => Assert.Equal(expected, Shown(text));

    [Theory]
    [InlineData("a,b\n1,\"2\n3,4\n5,6\n")]
    [InlineData("a,b\n1,\"2\"x\n3,4\n5,6\n")]
    [InlineData("a,b\n1,\"2\n3,4\n5,\"6\"\n")]
    public void Read_MalformedQuote_CostsOnlyItsOwnLine(string text)
    {
        var reader = new CsvReader(new StringReader(text), ',');
        var rows = new List<(int Row, int Line, string First, bool Malformed)>();
        while (reader.Read())
            rows.Add((reader.Row, reader.Line, reader.Fields[0], reader.Problem is not null));
        Assert.Equal([(1, 1, "a", false), (2, 2, "1", true), (3, 3, "3", false), (4, 4, "5", false)], rows);
    }

    [Fact]
    public void Read_LineBreakInQuotes_CountsLinesAndRowsApart()
    {
        var reader = new CsvReader(new StringReader("a\n\"x\r\ny\nz\"\nb\n"), ',');
        var at = new List<(int, int)>();
        while (reader.Read())
            at.Add((reader.Row, reader.Line));
        Assert.Equal([(1, 1), (2, 2), (3, 5)], at);
    }

    [Theory]
    [InlineData(CsvReader.GreatestRow, false)]
    [InlineData(CsvReader.GreatestRow + 1, true)]
    [InlineData(5 * CsvReader.GreatestRow, true)]
    public void Read_VeryLongLine_IsRefusedBeyondTheLimitAndReadingGoesOn(int length, bool refused)
    {
        foreach (var end in new[] { "\n", "\r\n", "\r" })
        {
            var reader = new CsvReader(new StringReader(new string('x', length) + end + "a,b" + end), ',');
            Assert.True(reader.Read());
            Assert.Equal(refused, reader.Problem is not null);
            Assert.True(reader.Read());
            Assert.Equal(["a", "b"], reader.Fields);
            Assert.Equal(2, reader.Line);
            Assert.False(reader.Read());
        }
    }

    /// <summary>Outside check: Sep 0.17.1 reads every well-formed file to the same fields.</summary>
    [Fact]
    public void Read_WellFormed_AgreesWithSep()
    {
        var field = Gen.OneOf(
            Gen.String[Gen.Char["abc 01.,;'é\t"], 0, 6].Select(text => text.Trim(' ')),
            Gen.String[Gen.Char["ab,;\"\n\r x"], 0, 8].Select(text => text.Trim(' ')));
        var file = Gen.Select(Gen.Char[",;\t"], Gen.Int[2, 5]).SelectMany(shape =>
            field.Array[shape.Item2].List[1, 20].Select(rows => (Separator: shape.Item1, Rows: rows)));
        file.Sample(
            f =>
            {
                var text = new StringWriter();
                var writer = new CsvWriter(text, f.Separator);
                foreach (var row in f.Rows)
                    writer.Write(row);
                using var sep = Sep.New(f.Separator)
                    .Reader(options => options with { HasHeader = false, Unescape = true, DisableColCountCheck = true })
                    .FromText(text.ToString());
                var expected = new List<string>();
                foreach (var row in sep)
                {
                    for (var i = 0; i < row.ColCount; i++)
                        expected.Add(row[i].ToString());
                }

                var actual = new List<string>();
                var reader = new CsvReader(new StringReader(text.ToString()), f.Separator);
                while (reader.Read())
                {
                    Assert.Null(reader.Problem);
                    actual.AddRange(reader.Fields);
                }

                Assert.Equal(expected, actual);
                Assert.Equal(f.Rows.SelectMany(row => row), actual);
            },
            iter: 3000);
    }

    private static string Shown(string text)
    {
        var reader = new CsvReader(new StringReader(text), ',');
        var rows = new List<string>();
        while (reader.Read())
        {
            Assert.Null(reader.Problem);
            rows.Add(string.Join('|', reader.Fields));
        }

        return string.Join(" / ", rows);
    }
}
