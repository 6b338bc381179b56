using Foundress.Accounts;
using Foundress.Accounts.Model;

namespace Foundress.Server.Accounts;

/// <summary>One's own account: signing in and out, password, devices.</summary>
internal static class AccountEndpoints
{
    public static void MapAccount(this IEndpointRouteBuilder api)
    {
        var account = api.MapGroup("/account");
        account.MapGet("", (HttpContext http) => Body.Reply(AccountReply.Of(Caller.Known(http)), AccountsJson.Default.AccountReply));
        account.MapPost("/sign-in", async (HttpContext http, Entrance entrance) =>
            Body.Reply(await entrance.WithPasswordAsync(http, await Body.ReadAsync(http, AccountsJson.Default.SignInForm)), AccountsJson.Default.AccountReply));
        account.MapPost("/sign-out", async (HttpContext http, Entrance entrance) =>
        {
            await entrance.SignOutAsync(http, Caller.Known(http));
            return TypedResults.NoContent();
        });
        account.MapPost("/password", ChangePasswordAsync);
        account.MapGet("/devices", DevicesAsync);
        account.MapPost("/devices", async (HttpContext http, Entrance entrance) =>
        {
            var form = await Body.ReadAsync(http, AccountsJson.Default.DeviceForm);
            await entrance.EnrolAsync(http, Caller.Known(http).Standing, form);
            return TypedResults.NoContent();
        });
        account.MapDelete("/devices/{device:guid}", async (Guid device, HttpContext http, Devices devices, People people) =>
        {
            await devices.RevokeAsync(Caller.Known(http).Person, device, http.RequestAborted);
            await people.EndSessionsAsync(Caller.Known(http).Person, stay: true);
            return TypedResults.NoContent();
        });
    }

    private static async Task<IResult> ChangePasswordAsync(HttpContext http, People people)
    {
        var form = await Body.ReadAsync(http, AccountsJson.Default.PasswordForm);
        await people.ChangePasswordAsync(http, Caller.Known(http), form);
        return TypedResults.NoContent();
    }

    private static async Task<IResult> DevicesAsync(HttpContext http, Devices devices)
    {
        var caller = Caller.Known(http);
        var own = await devices.OfAsync([caller.Person], http.RequestAborted);
        return Body.Reply(Lines(own[caller.Person], caller), AccountsJson.Default.IReadOnlyListDeviceLine);
    }

    internal static IReadOnlyList<DeviceLine> Lines(IEnumerable<EnrolledDevice> devices, Caller caller) =>
        [.. devices.Select(d => new DeviceLine(d.Id, d.Name, d.Label, At(d.EnrolledAt), At(d.SeenAt), d.Id == caller.DeviceId))];

    private static DateTimeOffset At(long milliseconds) => DateTimeOffset.FromUnixTimeMilliseconds(milliseconds);
}
