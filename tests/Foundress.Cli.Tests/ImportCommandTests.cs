namespace Foundress.Cli.Tests;

public sealed class ImportCommandTests : IDisposable
{
    private const string Header = "apiary,colony,date,method,mites,bees";
    private const string Mixed = Header + "\nHome,1,2026-07-01,alcohol-wash,4,310\nHome,2,2026-07-01,alcohol-wash,-4,310\nHome,3,2026-07-01,alcohol-wash,5,310\n";

    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    [Fact]
    public async Task Import_GoodFile_IsKeptOnce()
    {
        var file = _scene.Write("jars.csv", Header + "\nHome,1,2026-07-01,alcohol-wash,4,310\n");
        Assert.Equal(0, await _scene.RunOnBookAsync("import", "jars", file));
        Assert.Equal("1 jar imported, 0 already in the book, 0 rejected; 1 new apiary, 1 new colony.\n", _scene.Out);
        Assert.Equal(0, await _scene.RunOnBookAsync("import", "jars", file, "--json"));
        Assert.Equal((0, 1), (_scene.Json().GetProperty("new").GetInt32(), _scene.Json().GetProperty("known").GetInt32()));
        Assert.Single((await _scene.LedgerAsync()).State.Jars);
    }

    [Fact]
    public async Task Import_BadRow_IsNamedAndWrittenToTheRejectFile()
    {
        var file = _scene.Write("jars.csv", Mixed);
        Assert.Equal(1, await _scene.RunOnBookAsync("import", "jars", file));
        Assert.Contains($"{file}, row 3: mites '-4': A number of mites cannot be negative.", _scene.Error, StringComparison.Ordinal);
        Assert.Equal(2, (await _scene.LedgerAsync()).State.Jars.Count);
        var rejects = Path.Combine(_scene.Folder, "jars.rejected.csv");
        var text = await File.ReadAllTextAsync(rejects, TestContext.Current.CancellationToken);
        Assert.Equal(Header + ",row,problem\r\nHome,2,2026-07-01,alcohol-wash,-4,310,3,mites '-4': A number of mites cannot be negative.\r\n", text);

        await File.WriteAllTextAsync(rejects, text.Replace(",-4,", ",4,", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        Assert.Equal(0, await _scene.RunOnBookAsync("import", "jars", rejects));
        Assert.Equal(3, (await _scene.LedgerAsync()).State.Jars.Count);
    }

    [Fact]
    public async Task Import_RejectFileThere_IsNotOverwritten()
    {
        var file = _scene.Write("jars.csv", Mixed);
        var older = _scene.Write("jars.rejected.csv", "somebody's corrections");
        Assert.Equal(1, await _scene.RunOnBookAsync("import", "jars", file, "--json"));
        Assert.Equal("somebody's corrections", await File.ReadAllTextAsync(older, TestContext.Current.CancellationToken));
        Assert.EndsWith("jars.rejected-2.csv", _scene.Json().GetProperty("rejectFile").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_Check_WritesNothing()
    {
        Assert.Equal(1, await _scene.RunOnBookAsync("import", "jars", _scene.Write("jars.csv", Mixed), "--check"));
        Assert.StartsWith("2 jars would be imported", _scene.Out, StringComparison.Ordinal);
        Assert.Equal(0, (await _scene.LedgerAsync()).Count);
        Assert.False(File.Exists(Path.Combine(_scene.Folder, "jars.rejected.csv")));
    }

    [Fact]
    public async Task Import_UnknownColumn_IsReported()
    {
        Assert.Equal(0, await _scene.RunOnBookAsync("import", "jars", _scene.Write("jars.csv", Header + ",Weather\nHome,1,2026-07-01,alcohol-wash,4,310,sun\n")));
        Assert.Contains("the column 'Weather' is not known and was not read", _scene.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("PK\u0003\u0004", "spreadsheet or zip file")]
    [InlineData("{}", "JSON")]
    [InlineData("", "empty")]
    [InlineData("a,b\n1,2\n", "Found: a, b.")]
    public async Task Import_NotJars_SaysSoAndImportsNothing(string text, string expected)
    {
        Assert.Equal(2, await _scene.RunOnBookAsync("import", "jars", _scene.Write("jars.csv", text)));
        Assert.Contains(expected, _scene.Error, StringComparison.Ordinal);
        Assert.Contains("Nothing was imported.", _scene.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_NoSuchFile_IsAUsageError()
    {
        Assert.Equal(2, await _scene.RunOnBookAsync("import", "jars", Path.Combine(_scene.Folder, "none.csv")));
        Assert.Contains("none.csv' cannot be read", _scene.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_RejectsIntoItsOwnFile_IsRefused()
    {
        var file = _scene.Write("jars.csv", Mixed);
        Assert.Equal(2, await _scene.RunOnBookAsync("import", "jars", file, "--rejects", file));
        Assert.Equal(Mixed, await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Import_DataFolderIsAFile_IsAStorageProblem()
    {
        var file = _scene.Write("jars.csv", Mixed);
        Assert.Equal(3, await _scene.RunAsync("import", "jars", file, "--data", file));
        Assert.StartsWith("foundress: ", _scene.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_DamagedBook_IsAStorageProblem()
    {
        Directory.CreateDirectory(_scene.Data);
        await File.WriteAllTextAsync(Path.Combine(_scene.Data, "foundress.db"), "not a database at all, but text", TestContext.Current.CancellationToken);
        Assert.Equal(3, await _scene.RunOnBookAsync("import", "jars", _scene.Write("jars.csv", Mixed)));
    }

    [Fact]
    public async Task Data_FromTheEnvironment_IsTaken()
    {
        _scene.Variables["FOUNDRESS_DATA"] = _scene.Data;
        Assert.Equal(1, await _scene.RunAsync("import", "jars", _scene.Write("jars.csv", Mixed)));
        Assert.Equal(2, (await _scene.LedgerAsync()).State.Jars.Count);
    }

    [Fact]
    public async Task BackupAndRestore_GiveBackTheBook()
    {
        await _scene.RunOnBookAsync("import", "jars", _scene.Write("jars.csv", Mixed));
        var before = (await _scene.LedgerAsync()).Entries.ToArray();
        var backup = Path.Combine(_scene.Folder, "copy.db");
        Assert.Equal(0, await _scene.RunOnBookAsync("backup", backup, "--json"));
        Assert.Equal(backup, _scene.Json().GetProperty("file").GetString());
        await _scene.RunOnBookAsync("import", "jars", _scene.Write("more.csv", Header + "\nHome,9,2026-07-01,alcohol-wash,4,310\n"));
        Assert.Equal(0, await _scene.RunOnBookAsync("restore", backup, "--json"));
        Assert.Equal(before.Length, _scene.Json().GetProperty("entries").GetInt32());
        Assert.Equal(before, (await _scene.LedgerAsync()).Entries);
    }

    [Fact]
    public async Task Restore_NotABackup_LeavesTheBook()
    {
        await _scene.RunOnBookAsync("import", "jars", _scene.Write("jars.csv", Mixed));
        Assert.Equal(3, await _scene.RunOnBookAsync("restore", _scene.Write("bad.db", "no backup")));
        Assert.Equal(2, (await _scene.LedgerAsync()).State.Jars.Count);
        Assert.Equal(2, await _scene.RunOnBookAsync("restore", Path.Combine(_scene.Folder, "none.db")));
    }
}
