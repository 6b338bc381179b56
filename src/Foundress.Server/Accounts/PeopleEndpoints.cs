using Foundress.Accounts;
using Foundress.Server.Problems;
using Foundress.Server.Security;

namespace Foundress.Server.Accounts;

/// <summary>The people of an operation, for its keepers.</summary>
internal static class PeopleEndpoints
{
    public static void MapPeople(this IEndpointRouteBuilder api)
    {
        var operation = api.MapGroup("/operations/{operation}");
        operation.MapGet("/people", PeopleAsync);
        operation.MapPut("/people/{person:guid}", async (string operation, Guid person, HttpContext http, Members members) =>
        {
            await members.ChangeAsync(operation, person, (await Body.ReadAsync(http, AccountsJson.Default.RoleForm)).Role, http.RequestAborted);
            return TypedResults.NoContent();
        });
        operation.MapDelete("/people/{person:guid}", async (string operation, Guid person, HttpContext http, Members members) =>
        {
            await members.RemoveAsync(operation, person, http.RequestAborted);
            return TypedResults.NoContent();
        });
        operation.MapDelete("/people/{person:guid}/devices/{device:guid}", RevokeAsync);
        operation.MapPost("/invitations", InviteAsync);
        operation.MapDelete("/invitations/{invitation:guid}", async (string operation, Guid invitation, HttpContext http, OneTimeLinks links) =>
        {
            await links.WithdrawAsync(operation, invitation, http.RequestAborted);
            return TypedResults.NoContent();
        });
        operation.MapGet("/sign-ins", async (string operation, HttpContext http, SignInLog log) =>
            Body.Reply(await log.OfOperationAsync(operation, http.RequestAborted), AccountsJson.Default.IReadOnlyListSeenSignIn));
        operation.MapGet("/passed-on", PassedOnAsync);
        api.MapGet("/sign-ins", async (HttpContext http, SignInLog log) =>
            Body.Reply(await log.AllAsync(http.RequestAborted), AccountsJson.Default.IReadOnlyListSeenSignIn));
    }

    private static async Task<IResult> PeopleAsync(string operation, HttpContext http, Members members, Devices devices, CalendarLinks calendars, OneTimeLinks links)
    {
        var caller = Caller.Known(http);
        var people = await members.OfAsync(operation, http.RequestAborted);
        var theirs = await devices.OfAsync([.. people.Select(member => member.Person)], http.RequestAborted);
        var read = await calendars.OfAsync([.. people.Select(member => member.Person)], http.RequestAborted);
        var open = await links.OpenOfAsync(operation, http.RequestAborted);
        return Body.Reply(
            new PeopleReply(
                [.. people.Select(member => new PersonLine(member.Person, member.Name, member.Role, member.Since, AccountEndpoints.Lines(theirs[member.Person], caller), CalendarLine.Of(read.GetValueOrDefault(member.Person))))],
                [.. open.Select(link => new InvitationLine(link.Id, link.Role, link.ForName, DateTimeOffset.FromUnixTimeMilliseconds(link.ExpiresAt)))]),
            AccountsJson.Default.PeopleReply);
    }

    private static async Task<IResult> RevokeAsync(string operation, Guid person, Guid device, HttpContext http, Members members, Devices devices, People people)
    {
        var caller = Caller.Known(http);
        var owner = await members.StandingOfAsync(person, http.RequestAborted);
        if (owner is null || !owner.Roles.ContainsKey(operation))
            throw new AccountsException(AccountsFault.Gone, AccountTexts.FormatNoMember(operation));
        // A device serves every operation of its owner, so it takes a keeper of them all.
        if (owner.Roles.Keys.FirstOrDefault(other => !caller.Standing.Has(other, Role.Keeper)) is not null)
            throw new AccountsException(AccountsFault.Forbidden, AccountTexts.FormatOtherOperationToo(owner.Name, operation));
        await devices.RevokeAsync(person, device, http.RequestAborted);
        await people.EndSessionsAsync(person, stay: person == caller.Person);
        return TypedResults.NoContent();
    }

    private static async Task<IResult> InviteAsync(string operation, HttpContext http, OneTimeLinks links, Reach reach)
    {
        var form = await Body.ReadAsync(http, AccountsJson.Default.InvitationForm);
        if (form.Days is < 1 or > 31)
            throw new RequestProblemException(StatusCodes.Status400BadRequest, AccountTexts.FormatInvitationDays(form.Days));
        var name = string.IsNullOrWhiteSpace(form.ForName) ? "" : PersonNames.Read(form.ForName);
        var link = await links.MakeAsync(
            new LinkOffer(operation, form.Role, name, form.Days is { } days ? TimeSpan.FromDays(days) : LinkOffer.Usual), Caller.Known(http).Person, http.RequestAborted);
        return Body.Reply(new InvitationReply(link.Id, link.At(reach.SiteOf(http.Request)).ToString(), link.Expires), AccountsJson.Default.InvitationReply, StatusCodes.Status201Created);
    }

    private static async Task<IResult> PassedOnAsync(string operation, HttpContext http, PassedOnLog log) => Body.Reply(
        [.. (await log.OfAsync(operation, http.RequestAborted)).Select(p => new PassedOnLine(p.EntryId, p.PersonId, p.Device, DateTimeOffset.FromUnixTimeMilliseconds(p.At)))],
        AccountsJson.Default.IReadOnlyListPassedOnLine);
}
