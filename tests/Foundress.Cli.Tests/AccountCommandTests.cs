using Foundress.Accounts;
using Microsoft.Extensions.Time.Testing;

namespace Foundress.Cli.Tests;

/// <summary>Accounts from the console of the server.</summary>
public sealed class AccountCommandTests : IDisposable
{
    private readonly CliScene _scene = new();

    public void Dispose() => _scene.Dispose();

    [Fact]
    public async Task Add_Keeper_PrintsALinkThatDoesWhatItSays()
    {
        Assert.Equal(0, await _scene.RunOnBookAsync("account", "add", "Anna  Keeper", "--keeper", "--administrator", "--operation", "north", "--site", "https://bees.example"));
        Assert.StartsWith("Anna Keeper becomes keeper of 'north' and administrator by opening this link once, before 8 Sep 2026", _scene.Out, StringComparison.Ordinal);
        var link = new Uri(_scene.Out.Split('\n')[1]);
        Assert.Equal("https://bees.example/account.html", link.GetLeftPart(UriPartial.Path));
        using var accounts = await OpenAsync();
        var found = await new OneTimeLinks(accounts).LookAsync(link.Fragment[1..]);
        Assert.Equal(("north", Role.Keeper, true, "Anna Keeper"), (found.Operation, found.Role, found.Administrator, found.ForName));
        // What lies on the disk does not open anything.
        Assert.DoesNotContain(link.Fragment[1..], found.Hash, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("one of --keeper, --helper, --reader", "add", "Anna")]
    [InlineData("one of --keeper, --helper, --reader", "add", "Anna", "--keeper", "--reader")]
    [InlineData("is not an address", "add", "Anna", "--keeper", "--site", "bees")]
    [InlineData("no name is given", "add", " ", "--keeper")]
    [InlineData("There are no accounts in", "list")]
    [InlineData("There are no accounts in", "link", "Anna")]
    [InlineData("There are no accounts in", "close", "Anna")]
    public async Task Command_ThatCannotBe_SaysSoAndMakesNoAccounts(string words, params string[] args)
    {
        Assert.Equal(2, await _scene.RunOnBookAsync(["account", .. args]));
        Assert.Contains(words, _scene.Error, StringComparison.Ordinal);
        // A file of accounts would make the server ask everybody to sign in.
        Assert.False(AccountsDatabase.IsIn(_scene.Data));
    }

    [Fact]
    public async Task Link_ForNobody_SaysWhoThereIs()
    {
        await _scene.RunOnBookAsync("account", "add", "Anna", "--keeper");
        Assert.Equal(2, await _scene.RunOnBookAsync("account", "link", "Bert"));
        Assert.Contains("Nobody here is called 'Bert'", _scene.Error, StringComparison.Ordinal);
        Assert.Equal(0, await _scene.RunOnBookAsync("account", "list"));
        Assert.Equal("Nobody has an account yet.\n", _scene.Out);
    }

    [Fact]
    public async Task BackupAndRestore_TakeTheAccountsAlongUnlessAskedNotTo()
    {
        await _scene.RunOnBookAsync("import", "jars", _scene.Write("jars.csv", "apiary,colony,date,method,mites,bees\nHome,1,2026-06-01,alcohol-wash,4,310\n"));
        var backup = Path.Combine(_scene.Folder, "copy.db");
        Assert.Equal(0, await _scene.RunOnBookAsync("backup", backup));
        Assert.DoesNotContain("accounts", _scene.Out, StringComparison.Ordinal);
        // Before there were any: those there are stay.
        await _scene.RunOnBookAsync("account", "add", "Anna", "--keeper");
        Assert.Equal(0, await _scene.RunOnBookAsync("restore", backup));
        Assert.Contains("Accounts were left as they are.", _scene.Out, StringComparison.Ordinal);
        Assert.Contains("fingerprint of backup and book  ", _scene.Out, StringComparison.Ordinal);

        var second = Path.Combine(_scene.Folder, "second.db");
        Assert.Equal(0, await _scene.RunOnBookAsync("backup", second));
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(second + ".accounts"));
        await _scene.RunOnBookAsync("account", "add", "Bert", "--helper");
        Assert.Equal(0, await _scene.RunOnBookAsync("restore", second, "--book-only"));
        Assert.Equal(["Anna", "Bert"], await NamesAsync());
        Assert.Equal(0, await _scene.RunOnBookAsync("restore", second, "--json"));
        var kept = _scene.Json().GetProperty("accounts").GetProperty("kept").GetString()!;
        Assert.Equal(_scene.Json().GetProperty("kept").GetString() + ".accounts", kept);
        Assert.Equal(["Anna"], await NamesAsync());
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(_scene.Data, AccountsDatabase.FileName)));
        // What was kept brings back what was there.
        Assert.Equal(0, await _scene.RunOnBookAsync("restore", kept[..^".accounts".Length]));
        Assert.Equal(["Anna", "Bert"], await NamesAsync());
    }

    [Theory]
    [InlineData("no database at all")]
    [InlineData("")]
    public async Task Restore_AccountsDamaged_ChangesNothing(string text)
    {
        await _scene.RunOnBookAsync("import", "jars", _scene.Write("jars.csv", "apiary,colony,date,method,mites,bees\nHome,1,2026-06-01,alcohol-wash,4,310\n"));
        await _scene.RunOnBookAsync("account", "add", "Anna", "--keeper");
        var backup = Path.Combine(_scene.Folder, "copy.db");
        await _scene.RunOnBookAsync("backup", backup);
        await File.WriteAllTextAsync(backup + ".accounts", text);
        Assert.Equal(3, await _scene.RunOnBookAsync("restore", backup));
        Assert.Contains(backup + ".accounts cannot be restored", _scene.Error, StringComparison.Ordinal);
        Assert.Contains("--book-only", _scene.Error, StringComparison.Ordinal);
        Assert.Equal(["Anna"], await NamesAsync());
        Assert.False(Directory.Exists(Path.Combine(_scene.Data, "backups")) && Directory.GetFiles(Path.Combine(_scene.Data, "backups"), "*before-restore*").Length > 0);
        Assert.Empty(Directory.GetFiles(_scene.Data, "*.restoring"));
    }

    private async Task<IEnumerable<string>> NamesAsync()
    {
        using var accounts = await OpenAsync();
        await using var context = accounts.Open();
        return [.. context.Set<Accounts.Model.OneTimeLink>().OrderBy(link => link.ForName).Select(link => link.ForName)];
    }

    private Task<AccountsDatabase> OpenAsync() =>
        AccountsDatabase.OpenAsync(_scene.Data, new FakeTimeProvider(new DateTimeOffset(2026, 9, 1, 9, 0, 0, TimeSpan.Zero)));
}
