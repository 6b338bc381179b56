using System.Text;
using Foundress.Book.Importing;
using Foundress.Book.Records;
using Foundress.Science;

namespace Foundress.Book.Tests.Importing;

public sealed class JarImportTests
{
    private readonly ImportScene _scene = new();

    [Fact]
    public void Rows_NewNames_MakeApiariesColoniesAndJars()
    {
        var import = _scene.Import(
            """
            apiary,colony,date,method,mites,bees,bees_basis,passes,note
            Home,1,2026-07-01,alcohol-wash,20,310,,18;2,by the hedge
            home , 1 ,2026-08-01,Alcohol Wash,3,300,assumed,,
            Home,2,2026-08-01,sugar-shake,0,290.5,weighed,,
            Hill,1,2026-08-01,sugar-shake,5,290,counted,,
            """,
            out var rejected);

        Assert.Empty(rejected);
        Assert.Equal((4, 0, 0, 2, 3), (import.New, import.Known, import.Rejected, import.NewApiaries, import.NewColonies));
        var state = _scene.Book.State;
        Assert.Equal(["Hill", "Home"], state.ApiariesByName.Select(apiary => apiary.Name));
        var colony = state.ColoniesIn(state.ApiariesByName[1].Id, ImportScene.Today)[0];
        var jars = state.JarsOf(colony.Id).Select(jar => jar.Facts).ToArray();
        Assert.Equal([18, 2], jars[0].Passes);
        Assert.Equal(("by the hedge", 20, JarBees.Counted(310)), (jars[0].Note, jars[0].Mites, jars[0].Bees));
        Assert.Equal(("alcohol-wash", new JarBees(BeeBasis.Assumed, 300, 0.2)), (jars[1].Method, jars[1].Bees));
        Assert.Contains(state.Jars, jar => jar.Facts.Bees == new JarBees(BeeBasis.Weighed, 290.5, 0.08));
    }

    [Fact]
    public void Rows_SameFileAgain_RecordsNothingNew()
    {
        const string file = ImportScene.Header + "\nHome,1,2026-07-01,alcohol-wash,4,310\nHome,2,2026-07-01,alcohol-wash,4,310\n";
        _scene.Import(file, out _);
        var entries = _scene.Book.Count;

        var again = _scene.Import(file, out var rejected);

        Assert.Empty(rejected);
        Assert.Equal((0, 2), (again.New, again.Known));
        Assert.Equal(entries, _scene.Book.Count);
    }

    [Fact]
    public void Rows_AfterACrashAnywhere_EndInTheSameBook()
    {
        const string file = ImportScene.Header + "\nHome,1,2026-07-01,alcohol-wash,4,310\nHome,2,2026-07-01,alcohol-wash,5,310\nHill,1,2026-07-02,alcohol-wash,6,310\n";
        _scene.Import(file, out _);
        var whole = _scene.Book.Entries.Select(entry => (entry.Id, entry.Payload)).ToHashSet();
        var inOrder = _scene.Book.Entries.ToArray();
        for (var kept = 0; kept <= inOrder.Length; kept++)
        {
            var crashed = new ImportScene();
            crashed.Book.Add(inOrder.Take(kept));
            crashed.Import(file, out var rejected);
            Assert.Empty(rejected);
            Assert.Equal(whole, crashed.Book.Entries.Select(entry => (entry.Id, entry.Payload)).ToHashSet());
        }
    }

    [Fact]
    public void Rows_BadRowAmongGood_StopsNothingElse()
    {
        var import = _scene.Import(
            ImportScene.Header + "\nHome,1,2026-07-01,alcohol-wash,4,310\nHome,2,2026-07-01,alcohol-wash,-4,310\nHome,3,2026-07-01,alcohol-wash,4,310\n",
            out var rejected);
        Assert.Equal((2, 1), (import.New, import.Rejected));
        Assert.Equal((3, "mites '-4': A number of mites cannot be negative."), (rejected[0].Row, rejected[0].Problems[0].ToString()));
    }

    [Theory]
    [InlineData("Home,1,2026-07-01,alcohol-wash,3.5,310", "mites '3.5': Mites are counted whole")]
    [InlineData("Home,1,2026-07-01,alcohol-wash,10001,310", "mites '10001': No jar gives more than 10000 mites")]
    [InlineData("Home,1,2026-07-01,alcohol-wash,,310", "mites: The number of mites is missing: write 0")]
    [InlineData("Home,1,2026-07-01,alcohol-wash,1e3,310", "mites '1e3': Write a whole number")]
    [InlineData("Home,1,2026-07-01,alcohol-wash,99999999999999999999,310", "Write a whole number")]
    [InlineData("Home,1,2026-07-01,alcohol-wash,4,0", "bees '0': A jar without bees says nothing")]
    [InlineData("Home,1,2026-07-01,alcohol-wash,4,-300", "bees '-300': A number of bees cannot be negative")]
    [InlineData("Home,1,2026-07-01,alcohol-wash,4,300.5", "bees '300.5': Counted bees are whole")]
    [InlineData("Home,1,2026-07-01,alcohol-wash,4,5001", "No jar holds more than 5000 bees")]
    [InlineData("Home,1,2026-07-01,alcohol-wash,4,\"1,200\"", "decimal point and without thousands marks")]
    [InlineData("Home,1,2026-07-01,alcohol-wash,4,", "bees: The number of bees is missing")]
    [InlineData("Home,1,13/07/2026,alcohol-wash,4,310", "date '13/07/2026': Write days as yyyy-MM-dd")]
    [InlineData("Home,1,2026-07-01 10:30,alcohol-wash,4,310", "Leave out the time")]
    [InlineData("Home,1,2026-02-30,alcohol-wash,4,310", "no such day")]
    [InlineData("Home,1,46204,alcohol-wash,4,310", "spreadsheet's own day number")]
    [InlineData("Home,1,2026-09-02,alcohol-wash,4,310", "future (today is 1 Sep 2026)")]
    [InlineData("Home,1,1979-12-31,alcohol-wash,4,310", "before 1 Jan 1980")]
    [InlineData("Home,1,2026-07-01,alcohol wahs,4,310", "did you mean 'alcohol-wash'?")]
    [InlineData("Home,1,2026-07-01,guesswork,4,310", "This method is not known. Known are alcohol-wash, sugar-shake, ether-roll.")]
    [InlineData(",1,2026-07-01,alcohol-wash,4,310", "apiary: The name is missing")]
    [InlineData("Home,,2026-07-01,alcohol-wash,4,310", "colony: The name is missing")]
    [InlineData("Home,1,2026-07-01,alcohol-wash,4", "bees: The number of bees is missing")]
    [InlineData("Home,1,2026-07-01,alcohol-wash,4,310,left, over", "The row has 8 fields, the header 6")]
    [InlineData("Ho\\ume,1,2026-07-01,alcohol-wash,4,310", "control character (U+000B)")]
    [InlineData("Home,1,2026-07-01,alcohol-wash,4,\"310", "never closed")]
    public void Rows_BadValue_NamesColumnValueAndFix(string row, string expected) => Assert.Contains(expected, _scene.ProblemOf(row.Replace("\\u", "\v")), StringComparison.Ordinal);

    [Theory]
    [InlineData("20,310,18;3", "passes '18;3': The passes add up to 21, but the column mites says 20")]
    [InlineData("11,310,1;1;1;1;1;1;1;1;1;1;1", "11 passes are given; at most 10")]
    [InlineData("20,310,18;x", "Pass 2 ('x')")]
    [InlineData("20,310,;", "Write the mites of each pass")]
    public void Rows_BadPasses_SayWhy(string end, string expected) =>
        Assert.Contains(expected, _scene.ProblemOf("Home,1,2026-07-01,alcohol-wash," + end, ",passes"), StringComparison.Ordinal);

    [Fact]
    public void Rows_Duplicate_NamesTheFirstRow()
    {
        _scene.Import(
            ImportScene.Header + ",note\nHome,1,2026-07-01,alcohol-wash,4,310,\nHome,1,2026-07-01,alcohol-wash,4,310,second jar\nHOME,1,2026-07-01,alcohol-wash,4,310,\n",
            out var rejected);
        Assert.Equal(4, Assert.Single(rejected).Row);
        Assert.Contains("The same jar as in row 2", rejected[0].Problems[0].Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_JarKnownWithAnotherBasis_AreNotRecordedTwice()
    {
        _scene.Import(ImportScene.Header + "\nHome,1,2026-07-01,alcohol-wash,4,310\n", out _);
        _scene.Import(ImportScene.Header + ",bees_basis\nHome,1,2026-07-01,alcohol-wash,4,310,assumed\n", out var rejected);
        Assert.Contains("strike that jar out", Assert.Single(rejected).Problems[0].Fix, StringComparison.Ordinal);
        Assert.Single(_scene.Book.State.Jars);
    }

    [Fact]
    public void Rows_NamesTheBookHas_AreFound()
    {
        var apiary = _scene.AddApiary("Home Yard");
        var colony = _scene.AddColony(apiary, "Q7");
        var import = _scene.Import(ImportScene.Header + "\n home yard ,q7,2026-07-01,alcohol-wash,4,310\n", out var rejected);
        Assert.Empty(rejected);
        Assert.Equal((0, 0), (import.NewApiaries, import.NewColonies));
        Assert.Single(_scene.Book.State.JarsOf(colony));
    }

    [Fact]
    public void Rows_ColonyMovedAway_IsRefusedAfterTheMoveAndTakenBefore()
    {
        var home = _scene.AddApiary("Home");
        var hill = _scene.AddApiary("Hill");
        var colony = _scene.AddColony(home, "7");
        _scene.Write(new ColonyMoved(colony, hill, new DateOnly(2026, 6, 1)));
        _scene.Import(ImportScene.Header + "\nHome,7,2026-05-01,alcohol-wash,4,310\nHome,7,2026-07-01,alcohol-wash,4,310\nHill,7,2026-07-01,alcohol-wash,4,310\n", out var rejected);
        Assert.Contains("On 1 Jul 2026 this colony stood in 'Hill', not in 'Home'", Assert.Single(rejected).Problems[0].Fix, StringComparison.Ordinal);
        Assert.Equal(2, _scene.Book.State.JarsOf(colony).Count);
    }

    [Fact]
    public void Rows_ColonyDied_IsRefusedAfterItsEnd()
    {
        var home = _scene.AddApiary("Home");
        var colony = _scene.AddColony(home, "7");
        _scene.Write(new ColonyDied(colony, new DateOnly(2026, 6, 1)));
        Assert.Contains("This colony ended on 1 Jun 2026", _scene.ProblemOf("Home,7,2026-07-01,alcohol-wash,4,310"), StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_ApiaryStruckOut_IsNotSilentlyLost()
    {
        const string file = ImportScene.Header + "\nHome,1,2026-07-01,alcohol-wash,4,310\n";
        _scene.Import(file, out _);
        _scene.Write(new Strike(_scene.Book.Entries.First(entry => entry.Kind == RecordKinds.Apiary).Id, "wrong name"));
        _scene.Import(file, out var rejected);
        Assert.Contains("struck out", Assert.Single(rejected).Problems[0].Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_UnknownColumns_AreReported()
    {
        var import = _scene.Open("row,apiary,colony,date,method,mites,bees,Weather,problem\n");
        Assert.Equal(["Weather"], import.UnknownColumns);
    }

    [Theory]
    [InlineData("apiary,colony,date,mites\n", "The columns method, bees are missing. Found: apiary, colony, date, mites.")]
    [InlineData("apiary,colony,date,method,mites,bees,Bees\n", "The column 'bees' is there twice (columns 6 and 7)")]
    [InlineData("", "empty")]
    [InlineData(" \n\n ", "empty")]
    [InlineData("{\"jars\":[]}", "JSON")]
    [InlineData("<html>", "web page")]
    [InlineData("PK\u0003\u0004zip", "spreadsheet or zip")]
    [InlineData("%PDF-1.7", "PDF")]
    [InlineData("a\0b", "not a text file")]
    [InlineData("just some words", "Found: just some words")]
    [InlineData("apiary,\"colony,date\n", "malformed")]
    public void Open_NotJars_SaysWhatItIs(string text, string expected) =>
        Assert.Contains(expected, Assert.Throws<ImportFormatException>(() => _scene.Open(text)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("utf-8-bom")]
    [InlineData("utf-16")]
    [InlineData("utf-16BE")]
    public void Open_ByteOrderMark_IsUnderstood(string form)
    {
        var encoding = form == "utf-8-bom" ? new UTF8Encoding(true) : Encoding.GetEncoding(form);
        byte[] bytes = [.. encoding.GetPreamble(), .. encoding.GetBytes(ImportScene.Header + "\r\nSüd,1,2026-07-01,alcohol-wash,4,310\r\n")];
        var row = Assert.IsType<AcceptedRow>(Assert.Single(_scene.Open(bytes).Rows()));
        Assert.Equal("Süd", Assert.IsType<ApiaryRecord>(row.Records[0].Record).Name);
    }

    [Fact]
    public void Rows_BytesThatAreNotUtf8_AreReportedWithTheirRow()
    {
        var rows = _scene.Open(Encoding.Latin1.GetBytes(ImportScene.Header + "\nHome,1,2026-07-01,alcohol-wash,4,310\nSüd,1,2026-07-01,alcohol-wash,4,310\n")).Rows().ToArray();
        Assert.IsType<AcceptedRow>(rows[0]);
        var rejected = Assert.IsType<RejectedRow>(rows[1]);
        Assert.Equal((3, "apiary"), (rejected.Row, rejected.Problems[0].Column));
        Assert.Contains("UTF-8", rejected.Problems[0].Fix, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(';', "290,5")]
    [InlineData(';', "290.5")]
    [InlineData('\t', "290,5")]
    public void Open_OtherSeparators_AreFoundAndTakeDecimalCommas(char separator, string bees)
    {
        var text = $"sep={separator}\nApiary, Colony,date,method,mites,BEES,bees basis\nHome,1,2026-07-01,alcohol-wash,4,@,weighed\n".Replace(',', separator).Replace("@", bees);
        var import = _scene.Open(text);
        var row = Assert.IsType<AcceptedRow>(Assert.Single(import.Rows()));
        Assert.Equal(separator, import.Separator);
        Assert.Equal(290.5, Assert.IsType<JarRecord>(row.Records[^1].Record).Bees.Count);
        Assert.Equal(3, row.Row);
    }

    [Fact]
    public void RejectFile_PutRight_ImportsAsItIs()
    {
        var import = _scene.Open(ImportScene.Header + ",note,Weather\nHome,1,2026-07-01,alcohol-wash,x,310,\"a, b\",sun\nHome,2,2026-07-01,alcohol-wash,4,310,,,extra\n");
        var text = new StringWriter();
        var file = new RejectFile(text, import);
        foreach (var row in import.Rows())
            file.Write(Assert.IsType<RejectedRow>(row));

        var written = text.ToString();
        Assert.StartsWith("apiary,colony,date,method,mites,bees,note,Weather,row,problem\r\nHome,1,2026-07-01,alcohol-wash,x,310,\"a, b\",sun,2,", written, StringComparison.Ordinal);
        Assert.Contains("The rest of the row was: extra", written, StringComparison.Ordinal);
        var again = _scene.Import(written.Replace(",x,", ",4,"), out var rejected);
        Assert.Empty(rejected);
        Assert.Equal((2, "Weather"), (again.New, Assert.Single(again.UnknownColumns)));
    }
}
