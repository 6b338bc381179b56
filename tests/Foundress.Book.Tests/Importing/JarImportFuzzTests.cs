using System.Text;
using CsCheck;
using Foundress.Book.Importing;
using Foundress.Book.Records;
using Foundress.Science;

namespace Foundress.Book.Tests.Importing;

public sealed class JarImportFuzzTests
{
    private const string Valid =
        "apiary;colony;date;method;mites;bees;bees_basis;passes;note\r\n"
        + "Home;1;2026-07-01;alcohol-wash;20;310;counted;\"18;2\";\"two\nlines, and \"\"quotes\"\"\"\r\n"
        + "Süd;2;2026-08-01;sugar-shake;0;290,5;weighed;;\r\n"
        + "Hill;3;2025-12-31;ether-roll;7;300;assumed;;x\r\n";

    [Fact]
    public void Rows_RandomBytes_NeverBreak() => Gen.Byte.Array[0, 600].Sample(CheckFile, iter: 2000);

    [Fact]
    public void Rows_RandomTextBehindAHeader_NeverBreak() =>
        Gen.String[Gen.OneOf(Gen.Char[",;\t\"\n\r 0123456789-.ab"], Gen.Char), 0, 300]
            .Sample(text => CheckFile(Encoding.UTF8.GetBytes(ImportScene.Header + ",passes,note\n" + text)), iter: 2000);

    [Fact]
    public void Rows_MutatedFile_NeverBreak()
    {
        var bytes = Encoding.UTF8.GetBytes(Valid);
        var edit = Gen.Select(Gen.Int[0, bytes.Length - 1], Gen.Byte, Gen.Int[0, 3]);
        edit.List[1, 8].Sample(
            edits =>
            {
                var mutated = bytes.ToList();
                foreach (var (at, value, how) in edits)
                {
                    if (at >= mutated.Count)
                        continue;
                    if (how == 0)
                        mutated.RemoveAt(at);
                    else if (how == 1)
                        mutated.Insert(at, value);
                    else if (how == 2)
                        mutated[at] = value;
                    else
                        mutated.RemoveRange(at, mutated.Count - at);
                }

                CheckFile([.. mutated]);
            },
            iter: 4000);
    }

    [Fact]
    public void Rows_SeveralMegabytes_AreReadWithoutKeepingTheFile()
    {
        var file = new EndlessRows(ImportScene.Header + "\n", "Home,1,2026-07-01,alcohol-wash,oops,300\n", bytes: 40_000_000);
        var import = JarImport.Open(file, new Ledger(), "home", ImportScene.Rules);
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var rows = import.Rows().Count();
        var after = GC.GetTotalMemory(forceFullCollection: true);
        Assert.Equal(file.RowsGiven, rows);
        Assert.Equal(rows, import.Rejected);
        // Other tests run meanwhile in the same process: half the file leaves room for what they hold.
        Assert.True(after - before < 20_000_000, $"{after - before} bytes are still held.");
        GC.KeepAlive(import);
    }

    private static void CheckFile(byte[] bytes)
    {
        var scene = new ImportScene();
        JarImport import;
        try
        {
            import = scene.Open(bytes);
        }
        catch (ImportFormatException)
        {
            return;
        }

        foreach (var row in import.Rows())
        {
            if (row is RejectedRow rejected)
            {
                Assert.NotEmpty(rejected.Problems);
                Assert.All(rejected.Problems, problem => Assert.NotEmpty(problem.Fix));
                continue;
            }

            foreach (var record in Assert.IsType<AcceptedRow>(row).Records)
                CheckRecord(record.Record);
        }
    }

    private static void CheckRecord(Foundress.Book.Records.Record record)
    {
        // What is stored must come back.
        Assert.NotNull(RecordJson.TryRead(RecordKinds.Of(record), RecordJson.Write(record), out _));
        if (record is not JarRecord jar)
            return;
        Assert.InRange(jar.On, new DateOnly(1980, 1, 1), ImportScene.Today);
        Assert.Contains(jar.Method, ImportScene.Rules.Methods);
        Assert.InRange(jar.Passes.Count, 1, 10);
        Assert.All(jar.Passes, mites => Assert.InRange(mites, 0, 10_000));
        Assert.InRange(jar.Bees.Count, 1, 5_000);
        Assert.True(jar.Bees.Basis != BeeBasis.Counted || jar.Bees.Count == Math.Floor(jar.Bees.Count));
        Assert.Equal(jar.Bees.Basis, jar.Bees.AsBeeCount.Basis);
    }
}
