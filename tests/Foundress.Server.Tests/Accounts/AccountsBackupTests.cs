using System.Net;
using Foundress.Accounts;
using Foundress.Accounts.Moving;
using Foundress.Storage;

namespace Foundress.Server.Tests.Accounts;

/// <summary>Accounts in the backups of the book, and back from there.</summary>
public abstract class AccountsBackupTests(bool onPostgres)
{
    [Fact]
    public async Task Backup_WhileServed_BringsEverybodyBackElsewhere()
    {
        await using var own = new ClubSite(onPostgres);
        await own.Required().InitializeAsync();
        var anna = await own.JoinAsync("Anna", "home", Role.Keeper, administrator: true);
        var ben = await own.JoinAsync("Ben", "home", Role.Helper);
        var open = await own.LinkAsync("home", Role.Keeper);
        Assert.Equal(HttpStatusCode.OK, (await anna.SendAsync("home", anna.Entry(1))).StatusCode);
        Assert.Equal(HttpStatusCode.Created, (await anna.PostAsync("backups", new { })).StatusCode);
        var listed = (await anna.ReadAsync("backups")).GetProperty("backups")[0];
        Assert.True(listed.GetProperty("accounts").GetBoolean());
        var backup = Path.Combine(own.Data, "backups", listed.GetProperty("name").GetString()!);
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(backup + ".accounts"));
        // After the backup: gone again when it is restored.
        await own.JoinAsync("Late", "home", Role.Helper);

        using var elsewhere = new Running.TempData();
        await BookStore.RestoreAsync(elsewhere.Path, backup);
        using (var restore = (await AccountsRestore.TakeAsync(backup, elsewhere.Path, null, own.Time))!)
            Assert.Equal(new RestoredAccounts(2, null), await restore.PutAsync(null));
        await using var server = await FoundressServer.StartAsync(new ServerOptions(0, elsewhere.Path, Demo: false), storage: new BookStoreOptions { BackupAtStart = false, Time = own.Time });
        Assert.NotNull(server.Accounts);
        using var phone = ben.MovedTo(server.Address).ByDeviceAlone();
        Assert.Equal(HttpStatusCode.OK, (await phone.SendAsync("home", ben.Entry(2))).StatusCode);
        // Sign-ins of then, and links that may have been used since, open nothing.
        using var session = anna.MovedTo(server.Address).BySessionAlone();
        Assert.Equal(HttpStatusCode.Unauthorized, (await session.GetAsync("account")).StatusCode);
        using var stranger = new Guest(new UriBuilder(server.Address) { Host = "127.0.0.1" }.Uri);
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.PostAsync("account/link", new { secret = open })).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await stranger.PostAsync("account/sign-in", new { name = "Late", password = ClubSite.Password })).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await stranger.PostAsync("account/sign-in", new { name = "Anna", password = ClubSite.Password })).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await stranger.GetAsync("operations/home/people")).StatusCode);
    }

    [Fact]
    public async Task Restore_OverAccountsInUse_IsRefused()
    {
        await using var own = new ClubSite(onPostgres);
        await own.Required().InitializeAsync();
        var anna = await own.JoinAsync("Anna", "home", Role.Keeper, administrator: true);
        Assert.Equal(HttpStatusCode.Created, (await anna.PostAsync("backups", new { })).StatusCode);
        var backup = Directory.GetFiles(Path.Combine(own.Data, "backups"), "*.db")[0];
        async Task RestoreAsync()
        {
            using var restore = (await AccountsRestore.TakeAsync(backup, own.Data, own.Database, own.Time))!;
            await restore.PutAsync(null);
        }

        Assert.Equal(onPostgres ? StorageFault.NotEmpty : StorageFault.InUse, (await Assert.ThrowsAsync<StorageException>(RestoreAsync)).Fault);
        Assert.Equal(HttpStatusCode.OK, (await anna.GetAsync("account")).StatusCode);
        Assert.Empty(Directory.GetFiles(own.Data, "*.restoring"));
    }
}

public sealed class AccountsBackupTestsOnSqlite() : AccountsBackupTests(onPostgres: false);

public sealed class AccountsBackupTestsOnPostgres() : AccountsBackupTests(onPostgres: true);
