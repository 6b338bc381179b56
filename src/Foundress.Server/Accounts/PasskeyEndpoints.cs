using System.Buffers.Text;
using System.Net.Mime;
using System.Text;
using Foundress.Accounts;
using Foundress.Accounts.Model;
using Foundress.Server.Problems;
using Microsoft.AspNetCore.Identity;

namespace Foundress.Server.Accounts;

/// <summary>Passkeys (WebAuthn): signing in with one, and one's own list of them.</summary>
internal static class PasskeyEndpoints
{
    private const int Most = 10;

    public static void MapPasskeys(this IEndpointRouteBuilder api)
    {
        var passkeys = api.MapGroup("/account/passkeys");
        passkeys.MapPost("/challenge", async (SignInManager<Person> signIn) => Json(await signIn.MakePasskeyRequestOptionsAsync(null)));
        passkeys.MapPost("/sign-in", async (HttpContext http, Entrance entrance) =>
            Body.Reply(await entrance.WithPasskeyAsync(http, await Body.ReadAsync(http, AccountsJson.Default.PasskeySignInForm)), AccountsJson.Default.AccountReply));
        passkeys.MapPost("/options", async (HttpContext http, SignInManager<Person> signIn) =>
        {
            var caller = Caller.Known(http);
            return Json(await signIn.MakePasskeyCreationOptionsAsync(
                new PasskeyUserEntity { Id = caller.Person.ToString(), Name = caller.Standing.Name, DisplayName = caller.Standing.Name }));
        });
        passkeys.MapGet("", async (HttpContext http, UserManager<Person> users) => Body.Reply(
            [.. (await users.GetPasskeysAsync(await PersonAsync(http, users))).Select(p => new PasskeyLine(Base64Url.EncodeToString(p.CredentialId), p.Name ?? "", p.CreatedAt))],
            AccountsJson.Default.IReadOnlyListPasskeyLine));
        passkeys.MapPost("", AddAsync);
        passkeys.MapDelete("/{passkey}", RemoveAsync);
    }

    private static async Task<IResult> AddAsync(HttpContext http, SignInManager<Person> signIn, UserManager<Person> users)
    {
        var form = await Body.ReadAsync(http, AccountsJson.Default.PasskeyForm);
        var person = await PersonAsync(http, users);
        if ((await users.GetPasskeysAsync(person)).Count >= Most)
            throw new RequestProblemException(StatusCodes.Status409Conflict, AccountTexts.FormatMostPasskeys(Most));
        PasskeyAttestationResult shown;
        try
        {
            shown = await signIn.PerformPasskeyAttestationAsync(form.Credential);
        }
        catch (InvalidOperationException)
        {
            throw new RequestProblemException(StatusCodes.Status400BadRequest, AccountTexts.PasskeyTooLong);
        }

        if (!shown.Succeeded)
            throw new RequestProblemException(StatusCodes.Status400BadRequest, AccountTexts.FormatPasskeyNotAdded(shown.Failure.Message));
        shown.Passkey.Name = string.IsNullOrWhiteSpace(form.Label) ? "Passkey" : PersonNames.Read(form.Label);
        Done(await users.AddOrUpdatePasskeyAsync(person, shown.Passkey));
        return TypedResults.NoContent();
    }

    private static async Task<IResult> RemoveAsync(string passkey, HttpContext http, UserManager<Person> users)
    {
        var person = await PersonAsync(http, users);
        if (!Base64Url.IsValid(passkey) || await users.GetPasskeyAsync(person, Base64Url.DecodeFromChars(passkey)) is not { } held)
            throw new AccountsException(AccountsFault.Gone, AccountTexts.NoSuchPasskey);
        Done(await users.RemovePasskeyAsync(person, held.CredentialId));
        return TypedResults.NoContent();
    }

    // Two changes of one account at once: the second is not made.
    private static void Done(IdentityResult result)
    {
        if (!result.Succeeded)
            throw new RequestProblemException(StatusCodes.Status409Conflict, AccountTexts.ChangedMeanwhile);
    }

    private static async Task<Person> PersonAsync(HttpContext http, UserManager<Person> users) =>
        (await users.FindByIdAsync(Caller.Known(http).Person.ToString()))!;

    private static IResult Json(string text) => TypedResults.Text(text, MediaTypeNames.Application.Json, Encoding.UTF8);
}
