using Foundress.Accounts;
using Foundress.Server.Security;
using Foundress.Storage;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Mvc;

namespace Foundress.Server.Problems;

/// <summary>Turns errors into answers of the form of RFC 9457, with a message for the person who reads it.</summary>
internal sealed partial class ProblemHandler(ILogger<ProblemHandler> log) : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(HttpContext http, Exception exception, CancellationToken cancellationToken)
    {
        var (status, title, detail) = exception switch
        {
            RequestProblemException error => (error.Status, ProblemTexts.Title, error.Message),
            BadHttpRequestException { StatusCode: StatusCodes.Status413PayloadTooLarge } => (
                StatusCodes.Status413PayloadTooLarge, ProblemTexts.TooLongTitle,
                ProblemTexts.FormatTooLong(FoundressServer.GreatestBody / (1024 * 1024))),
            BadHttpRequestException error => (error.StatusCode, ProblemTexts.Title, error.Message),
            StorageException error => (
                error.Fault == StorageFault.DiskFull ? StatusCodes.Status507InsufficientStorage : StatusCodes.Status503ServiceUnavailable,
                ProblemTexts.BookTitle, IsStranger(http) ? ProblemTexts.ReasonOnServer : error.Message),
            _ when AccountsTrouble.Of(exception) is { } trouble => (
                trouble.Fault == AccountsFault.NoRoom ? StatusCodes.Status507InsufficientStorage : StatusCodes.Status503ServiceUnavailable,
                ProblemTexts.AccountsTitle, trouble.Message),
            AccountsException error => (
                error.Fault switch
                {
                    AccountsFault.Conflict => StatusCodes.Status409Conflict,
                    AccountsFault.Gone => StatusCodes.Status404NotFound,
                    AccountsFault.Forbidden => StatusCodes.Status403Forbidden,
                    AccountsFault.Store => StatusCodes.Status503ServiceUnavailable,
                    AccountsFault.NoRoom => StatusCodes.Status507InsufficientStorage,
                    _ => StatusCodes.Status400BadRequest,
                },
                ProblemTexts.Title, error.Message),
            _ => (StatusCodes.Status500InternalServerError, ProblemTexts.ServerTitle, ProblemTexts.NothingLost),
        };
        if (exception is StorageException storage)
            LogStorage(storage.Fault);
        else if (status == StatusCodes.Status500InternalServerError && !http.RequestAborted.IsCancellationRequested)
            LogUnforeseen(exception.GetType(), exception.StackTrace);
        if (status == StatusCodes.Status401Unauthorized)
            http.Response.Headers.WWWAuthenticate = Refusal.Challenge;
        // In this form whatever form the caller likes best: a calendar program or a browser must see the reason, too.
        await TypedResults.Problem(new ProblemDetails { Status = status, Title = title, Detail = detail }).ExecuteAsync(http);
        return true;
    }

    // The message names where the book lies, which is of no use to somebody unknown, or of the wrong use.
    private static bool IsStranger(HttpContext http) =>
        http.RequestServices.GetService<AccountsDatabase>() is not null && Accounts.Caller.Of(http) is null;

    [LoggerMessage(1, LogLevel.Error, "The book could not be read or written: {Fault}")]
    private partial void LogStorage(StorageFault fault);

    // Without the message, which can hold what was recorded.
    [LoggerMessage(2, LogLevel.Error, "An error nobody foresaw: {Type}\n{Place}")]
    private partial void LogUnforeseen(Type type, string? place);
}
