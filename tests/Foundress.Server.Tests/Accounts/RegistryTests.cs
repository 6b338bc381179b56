using System.Net;
using Foundress.Accounts;

namespace Foundress.Server.Tests.Accounts;

/// <summary>What the owner of the server does from its console while it runs.</summary>
public abstract class RegistryTests(ClubSite site)
{
    [Fact]
    public async Task Close_WhileSignedIn_EndsEverythingAndKeepsTheName()
    {
        var anna = await site.JoinAsync("Anna", "home", Role.Keeper, administrator: true);
        using var phone = anna.ByDeviceAlone();
        var invited = await anna.PostAsync("operations/home/invitations", new { role = "keeper" });
        var link = System.Text.Json.JsonDocument.Parse(await invited.Content.ReadAsStringAsync()).RootElement.GetProperty("link").GetString()!;
        await new Registry(site.Server.Accounts!).CloseAsync("anna");
        foreach (var guest in new[] { anna, phone })
            Assert.Equal(HttpStatusCode.Unauthorized, (await guest.GetAsync("account")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await site.Stranger().PostAsync("account/sign-in", new { name = "Anna", password = ClubSite.Password })).StatusCode);
        // Nor is there a way back in that they made themselves.
        Assert.Equal(HttpStatusCode.NotFound, (await site.Stranger().PostAsync("account/link", new { secret = new Uri(link).Fragment[1..] })).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await site.Stranger().PostAsync("account/join", new { secret = await site.LinkAsync("home", Role.Helper), name = "ANNA", password = ClubSite.Password })).StatusCode);
        var left = Assert.Single(await new Registry(site.Server.Accounts!).EverybodyAsync());
        Assert.Equal(("Anna", false, 0), (left.Name, left.IsAdministrator, left.Roles.Count));
    }
}

public sealed class RegistryTestsOnSqlite(ClubSite site) : RegistryTests(site), IClassFixture<ClubSite>;

public sealed class RegistryTestsOnPostgres(PostgresClubSite site) : RegistryTests(site.Required()), IClassFixture<PostgresClubSite>;
