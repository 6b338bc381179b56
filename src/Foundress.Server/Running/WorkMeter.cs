using Foundress.Server.Exchange;
using Foundress.Server.Problems;

namespace Foundress.Server.Running;

/// <summary>Measures exchanges and backups that are asked for, from beside: the endpoints know nothing of it.</summary>
internal sealed class WorkMeter(ServerMeters meters, TimeProvider time) : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var method = context.HttpContext.Request.Method;
        var route = RequestLog.Route(context.HttpContext.GetEndpoint());
        var isExchange = route.EndsWith("/{operation}/entries", StringComparison.Ordinal);
        var isBackup = route.EndsWith("/backups", StringComparison.Ordinal) && HttpMethods.IsPost(method);
        if (!isExchange && !isBackup)
            return await next(context);

        var begun = time.GetTimestamp();
        var end = WorkEnd.Failed;
        try
        {
            var answer = await next(context);
            end = WorkEnd.Done;
            if (answer is IValueHttpResult { Value: ExchangeAnswer sent })
                meters.Sent(sent);
            return answer;
        }
        catch (Exception error) when (error is RequestProblemException or BadHttpRequestException)
        {
            end = WorkEnd.Refused;
            throw;
        }
        finally
        {
            var took = time.GetElapsedTime(begun);
            if (isExchange)
                meters.Exchanged(HttpMethods.IsPost(method), end, took);
            else
                meters.BackedUp(end, took);
        }
    }
}
