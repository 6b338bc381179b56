using Foundress.Accounts;
using Foundress.Book.Journal;
using Foundress.Server.Security;
using Result = Foundress.Accounts.SignInResult;

namespace Foundress.Server.Accounts;

/// <summary>The secret addresses by which calendar programs read what is due: one's own, and for keepers those of their people.</summary>
internal static class CalendarLinkEndpoints
{
    public static void MapCalendarLinks(this IEndpointRouteBuilder api)
    {
        api.MapGet("/account/calendar", async (HttpContext http, CalendarLinks links) =>
        {
            var person = Caller.Known(http).Person;
            var own = await links.OfAsync([person], http.RequestAborted);
            return Body.Reply(new OwnCalendar(CalendarLine.Of(own.GetValueOrDefault(person))), AccountsJson.Default.OwnCalendar);
        });
        api.MapPost("/account/calendar", MakeAsync);
        api.MapDelete("/account/calendar", (HttpContext http, CalendarLinks links, SignInLog log) => RevokeAsync(http, Caller.Known(http).Person, links, log));
        api.MapDelete("/operations/{operation}/people/{person:guid}/calendar", async (string operation, Guid person, HttpContext http, Members members, CalendarLinks links, SignInLog log) =>
        {
            if (await members.StandingOfAsync(person, http.RequestAborted) is not { } owner || !owner.Roles.ContainsKey(operation))
                throw new AccountsException(AccountsFault.Gone, AccountTexts.FormatNoMember(operation));
            return await RevokeAsync(http, person, links, log);
        });
    }

    private static async Task<IResult> MakeAsync(HttpContext http, CalendarLinks links, SignInLog log, Reach reach)
    {
        var caller = Caller.Known(http);
        var secret = await links.MakeAsync(caller.Person, http.RequestAborted);
        await log.NoteAsync(caller.Person, SignInWay.Calendar, Result.Made, http.Connection.RemoteIpAddress, CancellationToken.None);
        var site = reach.SiteOf(http.Request);
        return Body.Reply(
            new CalendarReply([.. caller.Standing.Roles.Keys.Order(StringComparer.Ordinal).Select(operation => new CalendarAddress(operation, new Uri(site, PathOf(operation) + $"?{CalendarScheme.Field}={secret}").AbsoluteUri))]),
            AccountsJson.Default.CalendarReply, StatusCodes.Status201Created);
    }

    private static async Task<IResult> RevokeAsync(HttpContext http, Guid person, CalendarLinks links, SignInLog log)
    {
        await links.RevokeAsync(person, http.RequestAborted);
        await log.NoteAsync(person, SignInWay.Calendar, Result.Off, http.Connection.RemoteIpAddress, CancellationToken.None);
        return TypedResults.NoContent();
    }

    private static string PathOf(string operation) => operation == Operations.Home ? "calendar.ics" : $"api/v1/operations/{Uri.EscapeDataString(operation)}/calendar.ics";
}
