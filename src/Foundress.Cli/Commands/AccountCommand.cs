using System.CommandLine;
using Foundress.Accounts;
using Foundress.Book.Wording;
using Foundress.Cli.Running;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress account</c>: accounts as the owner of the server sees them. Whoever may write the data folder, or the database of the book, may do all of it.</summary>
internal static class AccountCommand
{
    internal static Command Make(Surroundings around) => new(
        "account",
        AccountCommandTexts.Account)
    {
        Add(around), Link(around), List(around), Close(around),
    };

    private static Command Add(Surroundings around)
    {
        var name = Name(AccountCommandTexts.WhoIsInvited);
        var keeper = new Option<bool>("--keeper") { Description = AccountCommandTexts.Keeper };
        var helper = new Option<bool>("--helper") { Description = AccountCommandTexts.Helper };
        var reader = new Option<bool>("--reader") { Description = AccountCommandTexts.Reader };
        var administrator = new Option<bool>("--administrator") { Description = AccountCommandTexts.Administrator };
        var operation = CommonOptions.Operation();
        var (site, data, json) = (Site(), CommonOptions.Data(), CommonOptions.Json());
        var command = new Command("add", AccountCommandTexts.Add) { name, keeper, helper, reader, administrator, operation, site, data, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            Role[] roles = [.. new[] { (keeper, Role.Keeper), (helper, Role.Helper), (reader, Role.Reader) }.Where(one => parsed.GetValue(one.Item1)).Select(one => one.Item2)];
            if (roles.Length != 1)
                throw new UsageException(AccountCommandTexts.OneRole);
            var place = SiteOf(parsed.GetValue(site)!);
            var offer = new LinkOffer(parsed.GetValue(operation), roles[0], PersonNames.Read(parsed.GetValue(name)), LinkOffer.Usual, parsed.GetValue(administrator));
            // Only now: accounts, once made, make the server ask everybody to sign in.
            var book = CommonOptions.PlaceOf(parsed.GetValue(data), around);
            using var accounts = await AccountsDatabase.OpenAsync(book.Directory, around.Time, book.Database, cancellation);
            Tell(around, parsed.GetValue(json), await new OneTimeLinks(accounts).MakeAsync(offer, null, cancellation), place, until => offer.Administrator
                ? AccountCommandTexts.FormatBecomesAdministrator(offer.ForName, RoleName(roles[0]), offer.Operation!, until)
                : AccountCommandTexts.FormatBecomes(offer.ForName, RoleName(roles[0]), offer.Operation!, until));
            return ExitCodes.Fine;
        });
        return command;
    }

    private static Command Link(Surroundings around)
    {
        var name = Name(AccountCommandTexts.WhosePassword);
        var (site, data, json) = (Site(), CommonOptions.Data(), CommonOptions.Json());
        var command = new Command("link", AccountCommandTexts.Link) { name, site, data, json };
        command.SetAction((parsed, cancellation) => WithAsync(parsed.GetValue(data), around, async accounts =>
        {
            var place = SiteOf(parsed.GetValue(site)!);
            var person = await new Registry(accounts).FindAsync(parsed.GetValue(name)!, cancellation);
            Tell(around, parsed.GetValue(json), await new OneTimeLinks(accounts).MakeAsync(new LinkOffer(null, Role.Reader, "", LinkOffer.Usual, Person: person), null, cancellation), place, until => AccountCommandTexts.FormatSetsPassword(parsed.GetValue(name)!, until));
        }, cancellation));
        return command;
    }

    private static Command List(Surroundings around)
    {
        var (data, json) = (CommonOptions.Data(), CommonOptions.Json());
        var command = new Command("list", AccountCommandTexts.List) { data, json };
        command.SetAction((parsed, cancellation) => WithAsync(parsed.GetValue(data), around, async accounts =>
        {
            var everybody = await new Registry(accounts).EverybodyAsync(cancellation);
            if (parsed.GetValue(json))
            {
                JsonOut.Write(around.Out, everybody.Select(one => new { one.Name, Administrator = one.IsAdministrator, Operations = one.Roles }));
                return;
            }

            if (everybody.Count == 0)
                around.Out.WriteLine(AccountCommandTexts.Nobody);
            foreach (var one in everybody)
            {
                var roles = one.Roles.OrderBy(role => role.Key, StringComparer.Ordinal).Select(role => AccountCommandTexts.FormatRoleOf(RoleName(role.Value), role.Key)).ToList();
                if (one.IsAdministrator)
                    roles.Add(AccountCommandTexts.AlsoAdministrator);
                around.Out.WriteLine($"{one.Name}: {(roles.Count == 0 ? AccountCommandTexts.NothingAnyMore : string.Join(", ", roles))}");
            }
        }, cancellation));
        return command;
    }

    private static Command Close(Surroundings around)
    {
        var name = Name(AccountCommandTexts.WhoseAccount);
        var data = CommonOptions.Data();
        var command = new Command("close", AccountCommandTexts.Close) { name, data };
        command.SetAction((parsed, cancellation) => WithAsync(parsed.GetValue(data), around, async accounts =>
        {
            await new Registry(accounts).CloseAsync(parsed.GetValue(name)!, cancellation);
            around.Out.WriteLine(AccountCommandTexts.FormatClosed(parsed.GetValue(name)!));
        }, cancellation));
        return command;
    }

    private static string RoleName(Role role) => role switch
    {
        Role.Keeper => AccountCommandTexts.RoleKeeper,
        Role.Helper => AccountCommandTexts.RoleHelper,
        _ => AccountCommandTexts.RoleReader,
    };

    private static Argument<string> Name(string what) => new("NAME") { Description = what };

    private static Option<string> Site() => new("--site")
    {
        Description = AccountCommandTexts.Site, HelpName = SharedTexts.WordAddress, DefaultValueFactory = _ => "http://localhost:5210/",
    };

    private static Uri SiteOf(string text) => Uri.TryCreate(text.TrimEnd('/') + "/", UriKind.Absolute, out var site) && site.Scheme is "http" or "https"
        ? site
        : throw UsageException.OfValue("--site", text, AccountCommandTexts.SiteWrong);

    private static void Tell(Surroundings around, bool json, MadeLink link, Uri site, Func<string, string> what)
    {
        if (json)
        {
            JsonOut.Write(around.Out, new { Link = link.At(site).ToString(), link.Expires });
            return;
        }

        around.Out.WriteLine(what(Say.MomentUtc(link.Expires)));
        around.Out.WriteLine(link.At(site));
        around.Out.WriteLine(AccountCommandTexts.GiveToNobody);
    }

    private static async Task<int> WithAsync(string? data, Surroundings around, Func<AccountsDatabase, Task> work, CancellationToken cancellation)
    {
        var place = CommonOptions.PlaceOf(data, around);
        if (!await AccountsDatabase.ExistAsync(place.Directory, place.Database, cancellation))
            throw new UsageException(place.Database is { } database ? AccountCommandTexts.FormatNoAccountsInDatabase(database) : AccountCommandTexts.FormatNoAccounts(place.Directory));
        using var accounts = await AccountsDatabase.OpenAsync(place.Directory, around.Time, place.Database, cancellation);
        await work(accounts);
        return ExitCodes.Fine;
    }
}
