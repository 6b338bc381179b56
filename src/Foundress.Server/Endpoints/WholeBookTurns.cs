namespace Foundress.Server.Endpoints;

/// <summary>
/// Lets few requests at a time read a whole book: a large one takes a good part of the server's memory, and many at once
/// would take all of it. The others wait.
/// </summary>
internal sealed class WholeBookTurns : IEndpointFilter
{
    private const int AtOnce = 2;

    private static readonly SemaphoreSlim Turns = new(AtOnce, AtOnce);

    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        await Turns.WaitAsync(context.HttpContext.RequestAborted);
        try
        {
            return await next(context);
        }
        finally
        {
            Turns.Release();
        }
    }
}
