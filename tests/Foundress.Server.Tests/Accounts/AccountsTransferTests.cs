using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Foundress.Accounts;
using Foundress.Accounts.Model;
using Foundress.Accounts.Moving;
using Foundress.PostgresForTests;
using Foundress.Server.Security;
using Foundress.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Time.Testing;

namespace Foundress.Server.Tests.Accounts;

/// <summary>Accounts of a data folder taken along into the PostgreSQL database of the book.</summary>
public sealed class AccountsTransferTests : IAsyncLifetime
{
    private readonly ClubSite _file = new();
    private PostgresAddress? _database;

    public async ValueTask InitializeAsync()
    {
        Assert.SkipWhen(PostgresPrograms.Missing is not null, PostgresPrograms.Missing ?? "");
        await _file.InitializeAsync();
        _database = await (await PostgresCluster.Shared).BookAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await _file.DisposeAsync();
        if (_database is not null)
            await (await PostgresCluster.Shared).DropAsync(_database);
    }

    [Fact]
    public async Task Transfer_ThenServedFromTheDatabase_EverybodyGoesOnAsBefore()
    {
        var keeper = await _file.JoinAsync("Keeper", "home", Role.Keeper, administrator: true);
        var helper = await _file.JoinAsync("Hélper \U0001f41d", "home", Role.Helper);
        Assert.Equal(HttpStatusCode.OK, (await keeper.SendAsync("home", keeper.Entry(1) with { Device = "another", Author = helper.Name })).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await helper.PostAsync("account/devices", new { name = "odd\u0000\u001aname", label = "second" })).StatusCode);
        using var key = new SoftKey("localhost", $"http://127.0.0.1:{_file.Server.Address.Port}");
        await PasskeyTests.AddAsync(helper, key);
        for (var n = 0; n < 5; n++)
            await _file.Stranger().PostAsync("account/sign-in", new { name = "Keeper", password = "not the password" });
        var open = await _file.LinkAsync("home", Role.Reader);
        var signIns = await new SignInLog(_file.Server.Accounts!).AllAsync();
        await _file.StopAsync();

        var done = await AccountsTransfer.RunAsync(_file.Data, _database!, _file.Time);
        Assert.False(done!.WereThere);
        Assert.All(done.Tables, table => Assert.True(table.IsSame && table.Rows == table.RowsThere, table.Table));
        Assert.Equal(
            new Dictionary<string, long> { ["people"] = 2, ["passkeys"] = 1, ["memberships"] = 2, ["devices"] = 3, ["links"] = 3, ["sign-ins"] = 7, ["passed-on records"] = 1, ["keys of cookies"] = 1 },
            done.Tables.Where(table => table.Rows > 0).ToDictionary(table => table.Table, table => table.Rows, StringComparer.Ordinal));
        // Once more: they are left as they are.
        Assert.True((await AccountsTransfer.RunAsync(_file.Data, _database!, _file.Time))!.WereThere);

        await _file.StartOnAsync(_database!);
        Assert.Null(_file.Server.Accounts!.File);
        using var again = keeper.MovedTo(_file.Server.Address);
        using var phone = helper.MovedTo(_file.Server.Address).ByDeviceAlone();
        Assert.Equal(HttpStatusCode.OK, (await again.GetAsync("operations/home/people")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await phone.GetAsync("operations/home/entries")).StatusCode);
        key.Origin = $"http://127.0.0.1:{_file.Server.Address.Port}";
        Assert.Equal(signIns, await new SignInLog(_file.Server.Accounts!).AllAsync());
        // Still waiting after five wrong passwords, and the open invitation still opens.
        Assert.Equal(HttpStatusCode.Unauthorized, (await _file.Stranger().PostAsync("account/sign-in", new { name = "Keeper", password = ClubSite.Password })).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await _file.Stranger().PostAsync("account/join", new { secret = open, name = "New", password = ClubSite.Password })).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await _file.Stranger().PostAsync("account/sign-in", new { name = helper.Name, password = ClubSite.Password })).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await PasskeyTests.SignInAsync(_file.Stranger(), key)).StatusCode);
        // What comes after has numbers of its own.
        Assert.Equal("New", (await new SignInLog(_file.Server.Accounts!).AllAsync())[2].Name);
    }

    // Otherwise a book that moved without its accounts would be open to whoever comes.
    [Fact]
    public async Task Accounts_InTheFolderOnly_AreNeitherPassedOverNorUsed()
    {
        await _file.JoinAsync("Keeper", "home", Role.Keeper);
        await _file.StopAsync();
        var error = await Assert.ThrowsAsync<AccountsException>(() => FoundressServer.StartAsync(new ServerOptions(0, _file.Data, Demo: false, _database), storage: new BookStoreOptions { BackupAtStart = false }));
        Assert.Equal(AccountsFault.Store, error.Fault);
        Assert.Contains("foundress transfer", error.Message, StringComparison.Ordinal);
        Assert.True(await AccountsDatabase.ExistAsync(_file.Data, _database));
    }

    [Fact]
    public async Task Tables_EveryOneOfTheModel_IsCopied()
    {
        await using var context = _file.Server.Accounts!.Open();
        Assert.Equal(
            context.Model.GetEntityTypes().Where(table => !table.IsOwned()).Select(table => table.ClrType.FullName).Order(),
            AccountsCopy.Kinds.Select(kind => kind.FullName).Order());
    }

    [Fact]
    public async Task Migrations_OfTheFile_HaveATwinInPostgres()
    {
        using var there = await AccountsDatabase.OpenAsync(Path.Combine(_file.Data, "none"), _file.Time, _database);
        await using AccountsContext file = _file.Server.Accounts!.Open(), postgres = there.Open();
        static IEnumerable<string> Names(AccountsContext context) => context.Database.GetMigrations().Select(migration => migration[(migration.IndexOf('_', StringComparison.Ordinal) + 1)..]);
        Assert.Equal(Names(file), Names(postgres));
    }
}
