using System.Globalization;
using System.Net.Mime;
using System.Text;
using Foundress.Book.Journal;
using Foundress.Book.Reporting;
using Foundress.Knowledge;
using Foundress.Reports.Reporting;
using Foundress.Server.Problems;
using Foundress.Storage;

namespace Foundress.Server.Endpoints;

/// <summary>The report of an operation's book over a stretch of time: the same as the command line writes.</summary>
internal static class ReportEndpoint
{
    // The printable page carries its own style sheet and nothing that runs.
    internal const string PagePolicy = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; frame-ancestors 'none'";

    public static void MapReport(this IEndpointRouteBuilder api) => api.MapGet("/operations/{operation}/report", WriteAsync);

    private static async Task<IResult> WriteAsync(string operation, HttpContext http, BookStore store, TimeProvider time, CancellationToken cancellation)
    {
        var to = RequestDay.Read(http, "to") ?? DateOnly.FromDateTime(time.GetLocalNow().DateTime);
        var from = RequestDay.Read(http, "from") ?? to.AddYears(-1).AddDays(1);
        if (from > to)
            throw new RequestProblemException(StatusCodes.Status400BadRequest, EndpointTexts.FormatFromAfterTo(RequestDay.Write(from), RequestDay.Write(to)));
        var ledger = await StoredLedger.ReadAsync(store, operation, cancellation);
        var culture = CultureInfo.CurrentCulture;
        var report = new ReportBuilder(ledger.State, KnowledgeBase.Load(), culture).Build(from, to, operation == Operations.Demo);
        switch (http.Request.Query["format"].ToString())
        {
            case "" or "html":
                http.Response.Headers.ContentSecurityPolicy = PagePolicy;
                return TypedResults.Text(HtmlReport.Write(report, culture), MediaTypeNames.Text.Html, Encoding.UTF8);
            case "json":
                return TypedResults.Text(JsonReport.Write(report), MediaTypeNames.Application.Json, Encoding.UTF8);
            case "text":
                return TypedResults.Text(TextReport.Write(report, culture), MediaTypeNames.Text.Plain, Encoding.UTF8);
            case var other:
                throw new RequestProblemException(StatusCodes.Status400BadRequest, EndpointTexts.FormatReportFormat(other));
        }
    }
}
