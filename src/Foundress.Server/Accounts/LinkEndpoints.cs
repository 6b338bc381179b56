using Foundress.Accounts;

namespace Foundress.Server.Accounts;

/// <summary>One-time links, for those who hold one. By POST, since addresses end up in logs.</summary>
internal static class LinkEndpoints
{
    public static void MapLinks(this IEndpointRouteBuilder api)
    {
        api.MapPost("/account/link", LookAsync);
        api.MapPost("/account/join", async (HttpContext http, People people) =>
            Body.Reply(await people.JoinAsync(http, await Body.ReadAsync(http, AccountsJson.Default.JoinForm)), AccountsJson.Default.AccountReply));
    }

    private static async Task<IResult> LookAsync(HttpContext http, OneTimeLinks links, Members members)
    {
        var link = await links.LookAsync((await Body.ReadAsync(http, AccountsJson.Default.LinkForm)).Secret, http.RequestAborted);
        var expires = DateTimeOffset.FromUnixTimeMilliseconds(link.ExpiresAt);
        var reply = link.PersonId is { } person
            ? new LinkReply("password", null, null, (await members.StandingOfAsync(person, http.RequestAborted))?.Name ?? "", expires)
            : new LinkReply("invitation", link.Operation, link.Role, link.ForName, expires);
        return Body.Reply(reply, AccountsJson.Default.LinkReply);
    }
}
