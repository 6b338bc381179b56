using Foundress.Book;
using Foundress.Book.Demo;
using Foundress.Book.Journal;
using Foundress.Knowledge;
using Foundress.Storage;

namespace Foundress.Cli.Tests;

/// <summary>A whole book out and in again.</summary>
public sealed class BookFileCommandTests : IDisposable
{
    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    [Theory]
    [InlineData("book.jsonl")]
    [InlineData("book.jsonl.gz")]
    public async Task ExportImport_IntoAnotherBook_GivesTheSameEntriesAndFile(string name)
    {
        await FillAsync();
        var (first, second) = (Path.Combine(_scene.Folder, name), Path.Combine(_scene.Folder, "again-" + name));
        Assert.Equal(0, await _scene.RunOnBookAsync("export", first, "--json"));
        var digest = _scene.Json().GetProperty("sha256").GetString();
        var other = Path.Combine(_scene.Folder, "other");
        Assert.Equal(0, await _scene.RunAsync("import", "book", first, "--data", other));
        Assert.Equal(0, await _scene.RunAsync("export", second, "--data", other, "--json"));
        Assert.Equal(digest, _scene.Json().GetProperty("sha256").GetString());
        Assert.Equal(await File.ReadAllBytesAsync(first), await File.ReadAllBytesAsync(second));
        // Again: nothing twice.
        Assert.Equal(0, await _scene.RunAsync("import", "book", first, "--data", other));
        Assert.StartsWith("0 entries taken in", _scene.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_DamagedFile_IsRefusedWholeOrReadWithoutTheDamagedLine()
    {
        await FillAsync();
        var file = Path.Combine(_scene.Folder, "book.jsonl");
        Assert.Equal(0, await _scene.RunOnBookAsync("export", file));
        var lines = await File.ReadAllLinesAsync(file);
        lines[7] = lines[7][..30];
        await File.WriteAllLinesAsync(file, lines);
        var other = Path.Combine(_scene.Folder, "other");
        Assert.Equal(2, await _scene.RunAsync("import", "book", file, "--data", other));
        Assert.Contains("line 8:", _scene.Error, StringComparison.Ordinal);
        Assert.Contains("nothing was taken in", _scene.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(other));
        Assert.Equal(1, await _scene.RunAsync("import", "book", file, "--data", other, "--leave-out-damaged"));
        Assert.Contains($"{lines.Length - 3} entries taken in", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("1 damaged line left out", _scene.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_FileCutOff_IsRefused()
    {
        await FillAsync();
        var file = Path.Combine(_scene.Folder, "book.jsonl");
        Assert.Equal(0, await _scene.RunOnBookAsync("export", file));
        var lines = await File.ReadAllLinesAsync(file);
        await File.WriteAllLinesAsync(file, lines[..^10]);
        Assert.Equal(2, await _scene.RunAsync("import", "book", file, "--data", Path.Combine(_scene.Folder, "other")));
        Assert.Contains("breaks off", _scene.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("colony,date\n1,2026-06-01\n", "book.jsonl", "not a file of a Foundress book")]
    [InlineData("no gzip", "book.jsonl.gz", "packing is damaged")]
    [InlineData("{\"file\":\"foundress-book\",\"form\":1,\"operation\":\"club\"}\n", "book.jsonl", "--operation club")]
    public async Task Import_AnotherFile_SaysWhatIsWrong(string text, string name, string words)
    {
        Assert.Equal(2, await _scene.RunOnBookAsync("import", "book", _scene.Write(name, text)));
        Assert.Contains(words, _scene.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Export_FileExists_IsLeftAsItIs()
    {
        await FillAsync();
        var file = _scene.Write("book.jsonl", "mine");
        Assert.Equal(2, await _scene.RunOnBookAsync("export", file));
        Assert.Equal("mine", await File.ReadAllTextAsync(file));
    }

    private async Task FillAsync()
    {
        using var store = await BookStore.OpenAsync(_scene.Data);
        var ledger = new Ledger();
        ledger.Add(DemoBook.Entries(KnowledgeBase.Load(), DemoBook.DefaultSeed, new DateOnly(2026, 9, 1)).Select(entry => entry with { Operation = "home" }));
        var newer = ledger.Entries.First() with { Id = new EntryId(Guid.CreateVersion7()), Kind = "of-tomorrow", Schema = 7, Payload = "{\n \"kept\" : 1.0 }" };
        await store.AppendAsync("home", [.. ledger.Entries, newer]);
    }
}
