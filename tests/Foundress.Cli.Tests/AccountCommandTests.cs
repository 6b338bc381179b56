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
        Assert.StartsWith("Anna Keeper becomes keeper of 'north' and administrator by opening this link once, before 2026-09-08", _scene.Out, StringComparison.Ordinal);
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

    private Task<AccountsDatabase> OpenAsync() =>
        AccountsDatabase.OpenAsync(_scene.Data, new FakeTimeProvider(new DateTimeOffset(2026, 9, 1, 9, 0, 0, TimeSpan.Zero)));
}
