using System.CommandLine;
using Foundress.Accounts;
using Foundress.Cli.Running;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress account</c>: accounts as the owner of the server sees them. Whoever may write the data folder, or the database of the book, may do all of it.</summary>
internal static class AccountCommand
{
    internal static Command Make(Surroundings around) => new(
        "account",
        """
        Accounts of a server for several people.

        Example, which makes the first keeper's link:
          foundress account add "Your name" --keeper --administrator --site https://bees.example.org/
        """)
    {
        Add(around), Link(around), List(around), Close(around),
    };

    private static Command Add(Surroundings around)
    {
        var name = Name("Who the link is for.");
        var keeper = new Option<bool>("--keeper") { Description = "Makes a keeper: everything in the operation." };
        var helper = new Option<bool>("--helper") { Description = "Makes a helper: reads and records." };
        var reader = new Option<bool>("--reader") { Description = "Makes a reader: reads only." };
        var administrator = new Option<bool>("--administrator") { Description = "Also looks after the server: backups and everybody's sign-ins." };
        var operation = CommonOptions.Operation();
        var (site, data, json) = (Site(), CommonOptions.Data(), CommonOptions.Json());
        var command = new Command("add", "Make a link that lets somebody in once, within seven days. They choose their name and password.") { name, keeper, helper, reader, administrator, operation, site, data, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            Role[] roles = [.. new[] { (keeper, Role.Keeper), (helper, Role.Helper), (reader, Role.Reader) }.Where(one => parsed.GetValue(one.Item1)).Select(one => one.Item2)];
            if (roles.Length != 1)
                throw new UsageException("Say what the person is to be: one of --keeper, --helper, --reader.");
            var place = SiteOf(parsed.GetValue(site)!);
            var offer = new LinkOffer(parsed.GetValue(operation), roles[0], PersonNames.Read(parsed.GetValue(name)), LinkOffer.Usual, parsed.GetValue(administrator));
            // Only now: accounts, once made, make the server ask everybody to sign in.
            var book = CommonOptions.PlaceOf(parsed.GetValue(data), around);
            using var accounts = await AccountsDatabase.OpenAsync(book.Directory, around.Time, book.Database, cancellation);
            Tell(around, parsed.GetValue(json), await new OneTimeLinks(accounts).MakeAsync(offer, null, cancellation), place, $"{offer.ForName} becomes {roles[0].ToString().ToLowerInvariant()} of '{offer.Operation}'{(offer.Administrator ? " and administrator" : "")}");
            return ExitCodes.Fine;
        });
        return command;
    }

    private static Command Link(Surroundings around)
    {
        var name = Name("Whose password it is.");
        var (site, data, json) = (Site(), CommonOptions.Data(), CommonOptions.Json());
        var command = new Command("link", "Make a link by which somebody who is known sets a new password, once. It takes their devices and passkeys off.") { name, site, data, json };
        command.SetAction((parsed, cancellation) => WithAsync(parsed.GetValue(data), around, async accounts =>
        {
            var place = SiteOf(parsed.GetValue(site)!);
            var person = await new Registry(accounts).FindAsync(parsed.GetValue(name)!, cancellation);
            Tell(around, parsed.GetValue(json), await new OneTimeLinks(accounts).MakeAsync(new LinkOffer(null, Role.Reader, "", LinkOffer.Usual, Person: person), null, cancellation), place, $"{parsed.GetValue(name)} sets a new password");
        }, cancellation));
        return command;
    }

    private static Command List(Surroundings around)
    {
        var (data, json) = (CommonOptions.Data(), CommonOptions.Json());
        var command = new Command("list", "Show who has an account, and what they may do where.") { data, json };
        command.SetAction((parsed, cancellation) => WithAsync(parsed.GetValue(data), around, async accounts =>
        {
            var everybody = await new Registry(accounts).EverybodyAsync(cancellation);
            if (parsed.GetValue(json))
            {
                JsonOut.Write(around.Out, everybody.Select(one => new { one.Name, Administrator = one.IsAdministrator, Operations = one.Roles }));
                return;
            }

            if (everybody.Count == 0)
                around.Out.WriteLine("Nobody has an account yet.");
            foreach (var one in everybody)
            {
                var roles = one.Roles.OrderBy(role => role.Key, StringComparer.Ordinal).Select(role => $"{role.Value.ToString().ToLowerInvariant()} of {role.Key}").ToList();
                if (one.IsAdministrator)
                    roles.Add("administrator");
                around.Out.WriteLine($"{one.Name}: {(roles.Count == 0 ? "nothing any more" : string.Join(", ", roles))}");
            }
        }, cancellation));
        return command;
    }

    private static Command Close(Surroundings around)
    {
        var name = Name("Whose account it is.");
        var data = CommonOptions.Data();
        var command = new Command("close", "Take everything from somebody at once: roles, devices, sign-ins, password. What they recorded stays in the book.") { name, data };
        command.SetAction((parsed, cancellation) => WithAsync(parsed.GetValue(data), around, async accounts =>
        {
            await new Registry(accounts).CloseAsync(parsed.GetValue(name)!, cancellation);
            around.Out.WriteLine($"{parsed.GetValue(name)} can no longer sign in, and their devices are taken off.");
        }, cancellation));
        return command;
    }

    private static Argument<string> Name(string what) => new("NAME") { Description = what };

    private static Option<string> Site() => new("--site")
    {
        Description = "Where people open the server.", HelpName = "ADDRESS", DefaultValueFactory = _ => "http://localhost:5210/",
    };

    private static Uri SiteOf(string text) => Uri.TryCreate(text.TrimEnd('/') + "/", UriKind.Absolute, out var site) && site.Scheme is "http" or "https"
        ? site
        : throw new UsageException($"--site '{text}': is not an address. Write it as https://bees.example.org/.");

    private static void Tell(Surroundings around, bool json, MadeLink link, Uri site, string what)
    {
        if (json)
        {
            JsonOut.Write(around.Out, new { Link = link.At(site).ToString(), link.Expires });
            return;
        }

        around.Out.WriteLine($"{what} by opening this link once, before {link.Expires:yyyy-MM-dd HH:mm}Z:");
        around.Out.WriteLine(link.At(site));
        around.Out.WriteLine("Give it to nobody else. A server that was running without accounts must be started again.");
    }

    private static async Task<int> WithAsync(string? data, Surroundings around, Func<AccountsDatabase, Task> work, CancellationToken cancellation)
    {
        var place = CommonOptions.PlaceOf(data, around);
        if (!await AccountsDatabase.ExistAsync(place.Directory, place.Database, cancellation))
            throw new UsageException($"There are no accounts in {(place.Database is { } database ? $"the PostgreSQL database {database}" : place.Directory)}. foundress account add makes the first, or name another place with --data or --database.");
        using var accounts = await AccountsDatabase.OpenAsync(place.Directory, around.Time, place.Database, cancellation);
        await work(accounts);
        return ExitCodes.Fine;
    }
}
