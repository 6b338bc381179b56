using Foundress.Accounts;
using Foundress.Accounts.Model;
using Foundress.Server.Problems;
using Foundress.Storage;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Identity;
using Result = Foundress.Accounts.SignInResult;

namespace Foundress.Server.Accounts;

/// <summary>Lets people in: looks at what they show, notes the try, and enrols the device they come on.</summary>
internal sealed class Entrance(
    UserManager<Person> people, SignInManager<Person> signIn, Members members, Devices devices, SignInLog log, BookStore store)
{
    // One answer for a wrong name, a wrong password and a waiting account, so that nobody learns which names there are.
    private static string NotRight => AccountTexts.NotRight;

    // Compared with where there is no password to compare with, so that the answer takes as long.
    private static readonly Person Nobody = new() { UserName = "nobody" };
    private static readonly string NobodysHash = new PasswordHasher<Person>().HashPassword(Nobody, Secrets.New());

    public async Task<AccountReply> WithPasswordAsync(HttpContext http, SignInForm form)
    {
        var person = form.Password.Length > PasswordRules.Most ? null : await people.FindByNameAsync(form.Name);
        // Of an account that waits or was closed the password is not looked at, which would tell that there is one of that name.
        if (person is null || person.PasswordHash is null || await people.IsLockedOutAsync(person))
            people.PasswordHasher.VerifyHashedPassword(Nobody, NobodysHash, form.Password[..Math.Min(form.Password.Length, PasswordRules.Most)]);
        if (person is null)
            throw await RefuseAsync(http, null, SignInWay.Password, Result.Unknown, NotRight);

        var result = await signIn.CheckPasswordSignInAsync(person, form.Password, lockoutOnFailure: true);
        if (!result.Succeeded)
            throw await RefuseAsync(http, person.Id, SignInWay.Password, result.IsLockedOut ? Result.Waiting : Result.Wrong, NotRight);
        return await LetInAsync(http, person, SignInWay.Password, form.Device);
    }

    public async Task<AccountReply> WithPasskeyAsync(HttpContext http, PasskeySignInForm form)
    {
        var shown = await PasskeyOf(form.Credential);
        if (!shown.Succeeded)
            throw await RefuseAsync(http, null, SignInWay.Passkey, Result.Wrong, AccountTexts.PasskeyNotAccepted);
        await people.AddOrUpdatePasskeyAsync(shown.User, shown.Passkey);
        return await LetInAsync(http, shown.User, SignInWay.Passkey, form.Device);
    }

    /// <summary>Signs somebody in who has shown who they are.</summary>
    public async Task<AccountReply> LetInAsync(HttpContext http, Person person, SignInWay way, DeviceForm? device)
    {
        var standing = (await members.StandingOfAsync(person.Id, http.RequestAborted))!;
        // Before the sign-in, so that a device that cannot be enrolled leaves nothing half done.
        if (device is not null)
            await EnrolAsync(http, standing, device);
        await signIn.SignInAsync(person, isPersistent: true);
        await log.NoteAsync(person.Id, way, Result.Let, http.Connection.RemoteIpAddress, CancellationToken.None);
        return AccountReply.Of(standing, signedIn: true, device?.Name);
    }

    /// <summary>Enrols a device for somebody.</summary>
    public async Task EnrolAsync(HttpContext http, Standing standing, DeviceForm device)
    {
        if (!await devices.IsBoundToAsync(device.Name, standing.Person, http.RequestAborted))
        {
            // Otherwise a helper could take the name of a device that somebody else has written on, and write in its place.
            foreach (var (operation, _) in standing.Roles.Where(role => role.Value < Role.Keeper))
            {
                if (await store.HasDeviceAsync(operation, device.Name, http.RequestAborted))
                    throw new AccountsException(AccountsFault.Conflict, AccountTexts.FormatDeviceHasRecords(operation));
            }
        }

        DeviceCookie.Write(http, await devices.EnrolAsync(standing.Person, device.Name, device.Label ?? "", http.RequestAborted));
    }

    public async Task SignOutAsync(HttpContext http, Caller caller)
    {
        if (caller.DeviceId is { } device)
            await devices.RevokeAsync(caller.Person, device, http.RequestAborted);
        DeviceCookie.Remove(http);
        await http.SignOutAsync(IdentityConstants.ApplicationScheme);
    }

    public async Task<RequestProblemException> RefuseAsync(HttpContext http, Guid? person, SignInWay way, Result result, string message)
    {
        await log.NoteAsync(person, way, result, http.Connection.RemoteIpAddress, CancellationToken.None);
        return new RequestProblemException(StatusCodes.Status401Unauthorized, message);
    }

    private async Task<PasskeyAssertionResult<Person>> PasskeyOf(string credential)
    {
        try
        {
            return await signIn.PerformPasskeyAssertionAsync(credential);
        }
        catch (InvalidOperationException)
        {
            // There is no challenge under way: it has run out, or the cookie that holds it was not sent.
            return PasskeyAssertionResult.Fail<Person>(new PasskeyException("No challenge is under way."));
        }
    }
}
