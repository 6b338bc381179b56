using System.Net.Mime;
using Foundress.Book.Exchanging;

namespace Foundress.Server.OpenApi;

/// <summary>Every address of the server in plain words, in one place.</summary>
internal static class ApiNotes
{
    internal const string Exchange = "Exchange";
    internal const string Reading = "Reading the book";
    internal const string Keeping = "Keeping";
    internal const string People = "People";

    private const string Api = "/api/v1";
    private const string Operation = Api + "/operations/{operation}";
    private const string Account = Api + "/account";
    private const string Apiary = Operation + "/apiaries/{apiary}";
    private const string Day = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$";

    private static readonly ApiQuery[] None = [];
    private static readonly ApiQuery From = new("from", "The first day, as 2026-08-31.", Day);
    private static readonly ApiQuery To = new("to", "The last day, as 2026-08-31.", Day);
    private static readonly ApiQuery Key = new("key", "The secret of a calendar link, for programs that cannot sign in; only a server with accounts looks at it.");
    private static readonly ApiAnswer BadQuery = new(400, "A field of the query is not as it should be; the detail names it.");
    private static readonly ApiAnswer Unknown = new(404, "No such apiary is in this book.");
    private static readonly ApiAnswer Locked = new(503, "The book cannot be read or written now; nothing acknowledged is lost.");

    public static IReadOnlyList<ApiNote> All { get; } =
    [
        new("GET", Api + "/about", "about", Exchange, "What the server says of itself: its version, the life of its book, its time, and the operations it holds.", None,
            new(200, "What it says."), Locked),
        new("GET", Operation + "/entries", "takeEntries", Exchange,
            "Entries after a position in the order they came in. Read on with after = next. Where incarnation is another than last time, begin at 0 and send everything again.",
            [new("after", "The position to read on from; without it 0, the beginning.", "^[0-9]+$"), new("limit", "The most entries wanted, 1 to 2,000; without it 500.", "^[0-9]+$")],
            new(200, "A page of entries.", MediaTypeNames.Application.Json), BadQuery, Locked),
        new("POST", Operation + "/entries", "giveEntries", Exchange,
            "Gives entries: a JSON array of at most 2,000 entries and 8 MB, which may be packed (Content-Encoding: gzip, br or deflate; the limit counts unpacked). Entries are known by id, so sending again does no harm.",
            None, new(200, "All but the refused are safely on disk.", MediaTypeNames.Application.Json),
            new(400, "The body is no array of entries, or is not whole. Nothing of it was kept."), new(413, "It is too long, packed or unpacked. Nothing of it was kept."),
            new(415, "It is not JSON, or packed in a way that is not known."), new(403, "A page of another site asked."), Locked,
            new(507, "The disk is full. Nothing of this exchange was kept; everything acknowledged before is.")),
        new("DELETE", Operation, "removeDemo", Keeping, "Removes the invented records. Only the operation demo can be removed.", None,
            new(200, "They are gone."), new(403, "It is a keeper's own book, or a page of another site asked."), Locked),
        new("GET", Operation + "/book", "exportBook", Reading, "Every entry of a book as JSON Lines, with the number and the SHA-256 of them in the last line.", None,
            new(200, "The file.", BookFile.MediaType), Locked),
        new("GET", Operation + "/report", "report", Reading, "The report over a stretch of time.",
            [From, To, new("format", "html (without it), json or text.", "^(html|json|text)$")],
            new(200, "The report.", MediaTypeNames.Text.Html, MediaTypeNames.Application.Json, MediaTypeNames.Text.Plain), BadQuery, Locked),
        new("GET", Operation + "/register", "register", Reading, "The register of controls, with what was struck.",
            [From, To, new("apiary", "The name or id of one apiary."), new("agent", "The id of one agent."), new("substances", "only: leave out controls without a substance.", "^only$"), new("format", "html (without it), csv or json.", "^(html|csv|json)$")],
            new(200, "The register.", MediaTypeNames.Text.Html, MediaTypeNames.Text.Csv, MediaTypeNames.Application.Json), BadQuery, Locked),
        new("GET", Operation + "/due", "due", Reading, "What is due in all apiaries: decisions first, then what is overdue, due now and coming; what was put off last.",
            [new("limit", "The most lines wanted, 1 to 2,000; without it 200.", "^[0-9]+$")], new(200, "What is due."), BadQuery, Locked),
        new("GET", Operation + "/apiaries", "seasons", Reading, "How every apiary stands today, those that need their keeper first.", None, new(200, "The apiaries."), Locked),
        new("GET", Apiary, "season", Reading, "How one apiary stands: its colonies with their last jars, and what is due.", None, new(200, "The apiary."), Unknown, Locked),
        new("GET", Apiary + "/entries", "takePart", Exchange,
            "The entries that say how one apiary stands, for a phone that is to know it alone. Read on as with all entries; where members is another than last time, older entries may have come into the part: begin at 0.",
            [new("after", "The position to read on from; without it 0, the beginning.", "^[0-9]+$"), new("limit", "The most entries wanted, 1 to 2,000; without it 500.", "^[0-9]+$")],
            new(200, "A page of entries.", MediaTypeNames.Application.Json), BadQuery, Unknown, Locked),
        new("GET", Apiary + "/forecast", "forecast", Reading, "Where the colonies of an apiary are heading, worked out ahead by the servers on one PostgreSQL database (--forecasts).", None,
            new(200, "The forecast.", MediaTypeNames.Application.Json), new(202, "It is asked for, or being worked out."), new(404, "No such apiary is in this book, or this server works no forecasts out ahead."), Locked),
        new("GET", Operation + "/calendar.ics", "calendar", Reading, "What is due as iCalendar.", [Key], new(200, "The calendar.", "text/calendar"), Locked),
        new("GET", Operation + "/apiaries.geojson", "apiaries", Reading, "The apiaries that have a place, as GeoJSON.", None, new(200, "The places.", "application/geo+json"), Locked),
        new("GET", "/calendar.ics", "homeCalendar", Reading, "The calendar of the operation home at a short address.", [Key], new(200, "The calendar.", "text/calendar"), Locked),
        new("GET", Api + "/schemas/entry.json", "entrySchema", Reading, "The JSON Schema (2020-12) of entries.", None, new ApiAnswer(200, "The schema.", "application/schema+json")),
        new("GET", Api + "/backups", "backups", Keeping, "The dated backups, newest first.", None, new(200, "The backups."), Locked),
        new("POST", Api + "/backups", "makeBackup", Keeping, "Makes a backup while the book stays in use.", None,
            new(201, "It is made, checked and on disk."), new(403, "A page of another site asked."), Locked, new(507, "The disk is full.")),
        ..OfPeople(),
        new("GET", "/health/live", "live", Keeping, "Whether the program runs.", None, new ApiAnswer(200, "It does.")),
        new("GET", "/health/ready", "ready", Keeping, "Whether the book can be read and written.", None, new(200, "It can."), Locked),
    ];

    // Only where the server has accounts.
    private static IEnumerable<ApiNote> OfPeople()
    {
        ApiAnswer ok = new(200, "The answer."), done = new(204, "It is done."), bad = new(400, "A field is not as it should be; the detail names it."), nobody = new(401, "Sign in first."), no = new(403, "Not for this role, or a page of another site asked.");
        ApiNote Note(string method, string path, string name, string words, ApiAnswer first) => new(method, path, name, People, words, None, first, bad, nobody, no);
        yield return Note("GET", Account, "account", "Who the server takes the caller for, and their roles.", ok);
        yield return Note("POST", Account + "/sign-in", "signIn", "Signs in with a name and a password.", ok);
        yield return Note("POST", Account + "/sign-out", "signOut", "Ends the sign-in.", done);
        yield return Note("POST", Account + "/password", "changePassword", "Changes the password.", done);
        yield return Note("GET", Account + "/devices", "devices", "The devices enrolled as one's own.", ok);
        yield return Note("POST", Account + "/devices", "enrol", "Enrols this device.", done);
        yield return Note("DELETE", Account + "/devices/{device}", "dropDevice", "Takes a device off.", done);
        yield return Note("GET", Account + "/calendar", "calendarLink", "Whether one has a calendar link, since when, and when it was last read.", ok);
        yield return Note("POST", Account + "/calendar", "makeCalendarLink", "Makes one's calendar link, told this once; the one there was ends. It reads the calendars of one's operations and nothing else.", new(201, "The addresses."));
        yield return Note("DELETE", Account + "/calendar", "dropCalendarLink", "Takes one's calendar link off.", done);
        yield return Note("GET", Account + "/passkeys", "passkeys", "One's own passkeys.", ok);
        yield return Note("POST", Account + "/passkeys", "addPasskey", "Adds a passkey.", done);
        yield return Note("DELETE", Account + "/passkeys/{passkey}", "dropPasskey", "Removes a passkey.", done);
        yield return Note("POST", Account + "/passkeys/options", "passkeyOptions", "What a browser needs to make a passkey.", ok);
        yield return Note("POST", Account + "/passkeys/challenge", "passkeyChallenge", "What a browser needs to sign in with a passkey.", ok);
        yield return Note("POST", Account + "/passkeys/sign-in", "passkeySignIn", "Signs in with a passkey.", ok);
        yield return Note("POST", Account + "/link", "lookAtLink", "What a one-time link is for.", ok);
        yield return Note("POST", Account + "/join", "join", "Uses a one-time link.", ok);
        yield return Note("GET", Operation + "/people", "people", "Members, their devices and open invitations.", ok);
        yield return Note("PUT", Operation + "/people/{person}", "setRole", "Gives a member a role.", done);
        yield return Note("DELETE", Operation + "/people/{person}", "removePerson", "Removes a member.", done);
        yield return Note("DELETE", Operation + "/people/{person}/devices/{device}", "revokeDevice", "Takes a member's device off.", done);
        yield return Note("DELETE", Operation + "/people/{person}/calendar", "revokeCalendarLink", "Takes a member's calendar link off.", done);
        yield return Note("POST", Operation + "/invitations", "invite", "Makes a one-time link that gives a role.", new(201, "The link."));
        yield return Note("DELETE", Operation + "/invitations/{invitation}", "withdraw", "Withdraws an invitation.", done);
        yield return Note("GET", Operation + "/sign-ins", "signIns", "Who signed in, of this operation's members.", ok);
        yield return Note("GET", Operation + "/passed-on", "passedOn", "Which records were given by another than their writer.", ok);
        yield return Note("GET", Api + "/sign-ins", "allSignIns", "Every sign-in, for the administrator.", ok);
    }
}
