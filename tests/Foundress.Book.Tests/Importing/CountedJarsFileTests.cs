using System.Text;
using Foundress.Book.Importing;
using Foundress.Book.Records;
using Foundress.Science.Estimation;

namespace Foundress.Book.Tests.Importing;

public sealed class CountedJarsFileTests
{
    [Fact]
    public void Read_ObserverMeasureBees_GivesEachJar() => Assert.Equal(
        [new CountedJar("Anna", "half-cup-us", 310), new CountedJar("Ben", "", 287)],
        Read("Observer;Measure;Bees\nAnna;half-cup-us;310\n\nBen;;287\n"));

    [Fact]
    public void Read_BeesAlone_IsEnough() => Assert.Equal([310, 290], Read("bees\n310\n290\n").Select(jar => jar.Bees));

    [Theory]
    [InlineData("measure\nhalf-cup-us\n", "The column bees is missing")]
    [InlineData("bees\n310\n0\n", "Row 3, bees '0'")]
    [InlineData("bees\n310.5\n", "Row 2, bees '310.5'")]
    [InlineData("bees\n", "no counted jar")]
    [InlineData("", "empty")]
    public void Read_BadFile_NamesRowAndFix(string text, string said) =>
        Assert.Contains(said, Assert.Throws<ImportFormatException>(() => Read(text)).Message, StringComparison.Ordinal);

    [Fact]
    public void Import_MeasureColumn_IsKeptWithTheJar()
    {
        var scene = new ImportScene();
        var import = JarImport.Open(
            new MemoryStream(Encoding.UTF8.GetBytes($"{ImportScene.Header},bees_basis,measure\nHome,1,2026-07-13,alcohol-wash,3,310,counted,Half-Cup-US\nHome,2,2026-07-13,alcohol-wash,3,310,,thimble\nHome,3,2026-07-13,alcohol-wash,3,310,weighed,own\n")),
            scene.Book, "home", JarImportRules.From(TestBook.Knowledge, new PolicyRecord(), ImportScene.Today));
        var rows = import.Rows().ToList();
        var jar = Assert.IsType<AcceptedRow>(rows[0]).Records.Select(record => record.Record).OfType<JarRecord>().Single();
        Assert.Equal(JarBees.Counted(310, "half-cup-us"), jar.Bees);
        Assert.Contains("no such measure", Assert.IsType<RejectedRow>(rows[1]).Problems[0].ToString(), StringComparison.Ordinal);
        Assert.Contains("needs no measure", Assert.IsType<RejectedRow>(rows[2]).Problems[0].ToString(), StringComparison.Ordinal);
    }

    private static IReadOnlyList<CountedJar> Read(string text) => CountedJarsFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));
}
