using Foundress.Accounts;
using Foundress.Accounts.Model;
using Foundress.Server.Problems;
using Microsoft.AspNetCore.Identity;
using Result = Foundress.Accounts.SignInResult;

namespace Foundress.Server.Accounts;

/// <summary>Makes accounts and changes them.</summary>
internal sealed class People(AccountsContext context, UserManager<Person> users, SignInManager<Person> signIn, OneTimeLinks links, Devices devices, CalendarLinks calendars, Entrance entrance, AccountsDatabase database)
{
    /// <summary>Uses a one-time link: everything it leads to comes about, or the link stays unused.</summary>
    public async Task<AccountReply> JoinAsync(HttpContext http, JoinForm form)
    {
        Person person;
        await using (var transaction = await database.BeginAloneAsync(context, http.RequestAborted))
        {
            OneTimeLink link;
            try
            {
                link = await links.LookAsync(context, form.Secret, http.RequestAborted);
                person = link.PersonId is { } known
                    ? await users.FindByIdAsync(known.ToString()) ?? throw new AccountsException(AccountsFault.Gone, AccountTexts.AccountGone)
                    : Caller.Of(http) is { HasSignedIn: true } caller ? (await users.FindByIdAsync(caller.Person.ToString()))! : await MakeAsync(form);
                link = await links.UseAsync(context, form.Secret, person.Id, http.RequestAborted);
            }
            catch (AccountsException error) when (error.Fault == AccountsFault.Gone)
            {
                await transaction.RollbackAsync(CancellationToken.None);
                throw await entrance.RefuseAsync(http, null, SignInWay.Link, Result.Wrong, error.Message);
            }

            // Before anything is kept: a device that cannot be enrolled leaves the link unused.
            if (form.Device is { } device)
                await Devices.CheckAsync(context, device.Name, person.Id, http.RequestAborted);
            if (link.PersonId is not null)
                await SetPasswordAsync(person, form.Password);
            await links.GrantAsync(context, link, person, http.RequestAborted);
            if (link.PersonId is not null)
            {
                await devices.RevokeAllAsync(context, person.Id, CancellationToken.None);
                await calendars.RevokeAllAsync(context, person.Id, CancellationToken.None);
            }

            await transaction.CommitAsync(CancellationToken.None);
        }

        return await entrance.LetInAsync(http, person, SignInWay.Link, form.Device);
    }

    public async Task ChangePasswordAsync(HttpContext http, Caller caller, PasswordForm form)
    {
        var person = (await users.FindByIdAsync(caller.Person.ToString()))!;
        var check = await signIn.CheckPasswordSignInAsync(person, form.Present, lockoutOnFailure: true);
        if (!check.Succeeded)
            throw await entrance.RefuseAsync(http, person.Id, SignInWay.Password, check.IsLockedOut ? Result.Waiting : Result.Wrong, AccountTexts.PresentWrong);
        Check(await users.ChangePasswordAsync(person, form.Present, form.New));
        // The new stamp ends every other session; this one goes on.
        await signIn.RefreshSignInAsync(person);
    }

    /// <summary>Ends a person's sign-ins everywhere: a device that was taken off may still be signed in.</summary>
    /// <param name="id">The person.</param>
    /// <param name="stay">Whether the sign-in this is asked from goes on.</param>
    public async Task EndSessionsAsync(Guid id, bool stay)
    {
        var person = (await users.FindByIdAsync(id.ToString()))!;
        Check(await users.UpdateSecurityStampAsync(person));
        if (stay)
            await signIn.RefreshSignInAsync(person);
    }

    private async Task<Person> MakeAsync(JoinForm form)
    {
        var person = new Person { Id = Guid.CreateVersion7(database.Time.GetUtcNow()), UserName = PersonNames.Read(form.Name), MadeAt = database.Now };
        Check(await users.CreateAsync(person, form.Password ?? ""));
        return person;
    }

    private async Task SetPasswordAsync(Person person, string? password)
    {
        if (await users.HasPasswordAsync(person))
            Check(await users.RemovePasswordAsync(person));
        Check(await users.AddPasswordAsync(person, password ?? ""));
        foreach (var passkey in await users.GetPasskeysAsync(person))
            Check(await users.RemovePasskeyAsync(person, passkey.CredentialId));
        Check(await users.SetLockoutEndDateAsync(person, null));
        Check(await users.ResetAccessFailedCountAsync(person));
        Check(await users.UpdateSecurityStampAsync(person));
    }

    private static void Check(IdentityResult result)
    {
        if (result.Succeeded)
            return;
        var taken = result.Errors.Any(error => error.Code == nameof(IdentityErrorDescriber.DuplicateUserName));
        throw taken
            ? new RequestProblemException(StatusCodes.Status409Conflict, AccountTexts.NameTaken)
            : new RequestProblemException(StatusCodes.Status400BadRequest, string.Join(" ", result.Errors.Select(error => error.Description)));
    }
}
