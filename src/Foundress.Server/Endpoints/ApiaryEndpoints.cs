using System.Globalization;
using System.Net.Mime;
using System.Text;
using System.Text.Json;
using Foundress.Book.Dues;
using Foundress.Book.Journal;
using Foundress.Book.Seasons;
using Foundress.Knowledge;
using Foundress.Server.Books;
using Foundress.Server.Fleet;
using Foundress.Server.Problems;
using Foundress.Storage;
using Foundress.Storage.Work;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Foundress.Server.Endpoints;

/// <summary>An operation's apiaries for other programs: how they stand, what is due, and the entries of one alone.</summary>
internal static class ApiaryEndpoints
{
    private const int DefaultDues = 200;
    private const int GreatestDues = 2_000;
    private const int DefaultPage = 500;
    private const int ReadAtOnce = 200;

    public static void MapApiaries(this IEndpointRouteBuilder api)
    {
        api.MapGet("/operations/{operation}/due", DueAsync);
        api.MapGet("/operations/{operation}/apiaries", ApiariesAsync);
        api.MapGet("/operations/{operation}/apiaries/{apiary:guid}", ApiaryAsync);
        api.MapGet("/operations/{operation}/apiaries/{apiary:guid}/entries", EntriesAsync);
        api.MapGet("/operations/{operation}/apiaries/{apiary:guid}/forecast", ForecastAsync);
    }

    private static async Task<Ok<DueAnswer>> DueAsync(string operation, HttpContext http, ApiaryBooks books, TimeProvider time, CancellationToken cancellation)
    {
        EntryEndpoints.CheckOperation(operation);
        var limit = (int)EntryEndpoints.Number(http, "limit", DefaultDues, 1, GreatestDues);
        var today = Today(time);
        var summaries = await books.Of(operation).SummariesAsync(today, cancellation);
        var items = DueItems.InOrder(summaries.SelectMany(summary => summary.Dues.Select(item => (item, summary))), one => one.item);
        return TypedResults.Ok(new DueAnswer(today, summaries.Sum(summary => summary.Dues.Count), [.. items.Take(limit).Select(one => Line(one.item, one.summary))]));
    }

    private static async Task<Ok<ApiariesAnswer>> ApiariesAsync(string operation, ApiaryBooks books, TimeProvider time, CancellationToken cancellation)
    {
        EntryEndpoints.CheckOperation(operation);
        var today = Today(time);
        return TypedResults.Ok(new ApiariesAnswer(today, [.. (await books.Of(operation).SummariesAsync(today, cancellation)).Select(Line)]));
    }

    private static async Task<Ok<ApiaryAnswer>> ApiaryAsync(string operation, Guid apiary, ApiaryBooks books, TimeProvider time, CancellationToken cancellation)
    {
        EntryEndpoints.CheckOperation(operation);
        var (today, id) = (Today(time), new ApiaryId(apiary));
        if (await books.Of(operation).SummaryAsync(id, today, cancellation) is not { } summary || await books.Of(operation).StateAsync(id, cancellation) is not { } state)
            throw Unknown(apiary);
        var strips = new SeasonStrips(state, KnowledgeBase.Load(), CultureInfo.CurrentCulture);
        var colonies = state.ColoniesIn(id, today).Select(colony =>
            new ColonyLine(colony.Id.Value, colony.Name, strips.Marks(colony, today.AddYears(-1), today) is [.., var last]
                ? new LastJar(last.On, last.Level, last.Lower, last.Upper, last.Standing is { } standing ? Name(standing) : null, last.Method)
                : null));
        return TypedResults.Ok(new ApiaryAnswer(today, Line(summary), [.. colonies], [.. summary.Dues.Select(item => Line(item, summary))]));
    }

    // Asking for one that nobody asked for yet asks for it.
    private static async Task<IResult> ForecastAsync(string operation, Guid apiary, BookStore store, ApiaryBooks books, TimeProvider time, CancellationToken cancellation)
    {
        EntryEndpoints.CheckOperation(operation);
        if (store.Work is not { } queue)
            throw new RequestProblemException(StatusCodes.Status404NotFound, EndpointTexts.NoForecasts);
        var (today, id) = (Today(time), new ApiaryId(apiary));
        if (await books.Of(operation).SummaryAsync(id, today, cancellation) is null)
            throw Unknown(apiary);
        var item = await FleetWork.ForAsync(operation, id, today, books.Of(operation), store, cancellation);
        var outcome = await queue.FindAsync(item.Key, cancellation);
        if (outcome is null)
            await queue.EnqueueAsync([item], only: true, cancellation);
        return outcome switch
        {
            { State: WorkState.Done, Result: { } result } => TypedResults.Text(result, MediaTypeNames.Application.Json, Encoding.UTF8),
            { State: WorkState.Failed } => throw new RequestProblemException(
                StatusCodes.Status503ServiceUnavailable, EndpointTexts.FormatForecastFailed(outcome.Attempts, outcome.Trouble)),
            { State: WorkState.Leased } => TypedResults.Accepted((string?)null, new FleetState("working")),
            _ => TypedResults.Accepted((string?)null, new FleetState("waiting")),
        };
    }

    // For a phone that is to know one apiary of a large operation: the same form as the whole exchange, and "members", which
    // says what the part is of. When that changes the caller begins again at 0.
    private static async Task EntriesAsync(string operation, Guid apiary, HttpContext http, BookStore store, ApiaryBooks books, CancellationToken cancellation)
    {
        EntryEndpoints.CheckOperation(operation);
        var after = EntryEndpoints.Number(http, "after", 0, 0, long.MaxValue);
        var limit = (int)EntryEndpoints.Number(http, "limit", DefaultPage, 1, BookStore.GreatestPage);
        var page = await PageAsync(operation, new ApiaryId(apiary), after, limit, store, books, cancellation) ?? throw Unknown(apiary);
        await EntryPages.WriteAsync(http, store.Incarnation, page.Members, page.Entries, page.Next, page.More, cancellation);
    }

    // Null where there is no such apiary.
    private static async Task<(string Members, IReadOnlyList<Entry> Entries, long Next, bool More)?> PageAsync(
        string operation, ApiaryId apiary, long after, int limit, BookStore store, ApiaryBooks books, CancellationToken cancellation)
    {
        while (true)
        {
            if (await books.Of(operation).PartAsync(apiary, cancellation) is not ({ } sequences, { } members))
                return null;
            var left = sequences.SkipWhile(sequence => sequence <= after).ToArray();
            var (entries, characters, taken, next) = (new List<Entry>(), 0, 0, after);
            foreach (var some in left.Take(limit).Chunk(ReadAtOnce))
            {
                var read = await store.ReadAtAsync(operation, some, cancellation);
                entries.AddRange(read);
                taken += some.Length;
                next = some[^1];
                characters += read.Sum(entry => entry.Payload.Length);
                if (characters > BookStore.GreatestPageCharacters)
                    break;
            }

            // Fewer when an entry took another place meanwhile: the part knows of it when it is asked again.
            if (entries.Count == taken)
                return (members, entries, next, left.Length > taken);
        }
    }

    private static RequestProblemException Unknown(Guid apiary) => new(
        StatusCodes.Status404NotFound, EndpointTexts.FormatNoSuchApiary(apiary));

    private static ApiaryLine Line(ApiarySummary summary) => new(
        summary.Season.Apiary.Id.Value, summary.Season.Apiary.Name, Name(summary.Season.Urgency), summary.Season.Sentence, summary.Living, summary.Dues.Count);

    private static DueLine Line(DueItem item, ApiarySummary summary) => new(
        item.Key, Name(item.Kind), Name(item.Time), item.Apiary.Value, summary.Season.Apiary.Name, item.From, item.To, item.Text,
        [.. item.Colonies.Select(id => new NamedColony(id.Value, summary.Colonies.GetValueOrDefault(id)?.Name ?? "?"))],
        item.Control?.Value, item.PutOff?.Until, item.PutOff?.Reason);

    private static string Name<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());

    private static DateOnly Today(TimeProvider time) => DateOnly.FromDateTime(time.GetLocalNow().DateTime);
}
