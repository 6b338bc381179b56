using System.Globalization;
using System.Net.Mime;
using System.Text;
using Foundress.Book.Dues;
using Foundress.Book.Journal;
using Foundress.Book.Registering;
using Foundress.Book.Seasons;
using Foundress.Book.State;
using Foundress.Calendar;
using Foundress.Knowledge;
using Foundress.Reports.Exports;
using Foundress.Reports.Registering;
using Foundress.Server.Problems;
using Foundress.Storage;

namespace Foundress.Server.Endpoints;

/// <summary>An operation's book for other programs: the register, what is due as a calendar, the apiaries as places.</summary>
internal static class BookEndpoints
{
    private const string GeoJson = "application/geo+json";

    public static void MapBook(this IEndpointRouteBuilder api)
    {
        api.MapGet("/operations/{operation}/register", RegisterAsync);
        api.MapGet("/operations/{operation}/calendar.ics", CalendarAsync);
        api.MapGet("/operations/{operation}/apiaries.geojson", ApiariesAsync);
    }

    /// <summary>The keeper's own calendar at an address short enough to type into a calendar program.</summary>
    public static void MapCalendar(this IEndpointRouteBuilder app) =>
        app.MapGet("/calendar.ics", (HttpContext http, BookStore store, TimeProvider time, CancellationToken cancellation) => CalendarAsync(Operations.Home, http, store, time, cancellation));

    private static async Task<IResult> RegisterAsync(string operation, HttpContext http, BookStore store, TimeProvider time, CancellationToken cancellation)
    {
        var ledger = await StoredLedger.ReadAsync(store, operation, cancellation);
        var today = Today(time);
        var (from, to) = (RequestDay.Read(http, "from"), RequestDay.Read(http, "to"));
        if (from > to)
            throw new RequestProblemException(StatusCodes.Status400BadRequest, EndpointTexts.FormatFromAfterTo(RequestDay.Write(from), RequestDay.Write(to)));
        var agent = http.Request.Query["agent"].ToString();
        var filter = new RegisterFilter(
            from, to, Apiary(http.Request.Query["apiary"].ToString(), ledger.State), agent.Length == 0 ? null : agent, http.Request.Query["substances"].ToString() == "only");
        var register = new Registers(ledger.Entries, ledger.State, KnowledgeBase.Load(), today, CultureInfo.CurrentCulture)
            .Of(filter, operation == Operations.Demo);
        switch (http.Request.Query["format"].ToString())
        {
            case "" or "html":
                http.Response.Headers.ContentSecurityPolicy = ReportEndpoint.PagePolicy;
                return TypedResults.Text(RegisterHtml.Page(register), MediaTypeNames.Text.Html, Encoding.UTF8);
            case "csv":
                return TypedResults.Text(RegisterCsv.Write(register), MediaTypeNames.Text.Csv, Encoding.UTF8);
            case "json":
                return TypedResults.Text(RegisterJson.Write(register), MediaTypeNames.Application.Json, Encoding.UTF8);
            case var other:
                throw new RequestProblemException(StatusCodes.Status400BadRequest, EndpointTexts.FormatRegisterFormat(other));
        }
    }

    private static async Task<IResult> CalendarAsync(string operation, HttpContext http, BookStore store, TimeProvider time, CancellationToken cancellation)
    {
        var state = (await StoredLedger.ReadAsync(store, operation, cancellation)).State;
        var knowledge = KnowledgeBase.Load();
        var items = new DueItems(state, knowledge, new SeasonStrips(state, knowledge, CultureInfo.CurrentCulture)).On(Today(time));
        var app = new Uri($"{http.Request.Scheme}://{http.Request.Host}/");
        return TypedResults.Text(DueCalendar.Write(items, state, time.GetUtcNow(), app), DueCalendar.MediaType, Encoding.UTF8);
    }

    private static async Task<IResult> ApiariesAsync(string operation, BookStore store, TimeProvider time, CancellationToken cancellation) =>
        TypedResults.Text(ApiaryGeoJson.Write((await StoredLedger.ReadAsync(store, operation, cancellation)).State, Today(time)), GeoJson, Encoding.UTF8);

    private static DateOnly Today(TimeProvider time) => DateOnly.FromDateTime(time.GetLocalNow().DateTime);

    private static ApiaryId? Apiary(string text, BookState state)
    {
        if (text.Length == 0)
            return null;
        var named = state.Apiaries.Values.Where(apiary => apiary.Id.ToString() == text || string.Equals(apiary.Name, text, StringComparison.OrdinalIgnoreCase)).ToArray();
        return named.Length == 1
            ? named[0].Id
            : throw new RequestProblemException(StatusCodes.Status400BadRequest, named.Length == 0 ? EndpointTexts.FormatApiaryUnknown(text) : EndpointTexts.FormatApiaryOfSeveral(text));
    }
}
