using Foundress.Server.Problems;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Authorization.Policy;
using Microsoft.Net.Http.Headers;

namespace Foundress.Server.Security;

/// <summary>Answers those who are not let through with the reason, in the form of every other problem.</summary>
internal sealed class AccessAnswers : IAuthorizationMiddlewareResultHandler
{
    public Task HandleAsync(RequestDelegate next, HttpContext context, AuthorizationPolicy policy, PolicyAuthorizationResult authorizeResult)
    {
        if (authorizeResult.Succeeded)
            return next(context);
        var refusal = Refusal.Of(context);
        if (refusal.Status == StatusCodes.Status401Unauthorized)
            context.Response.Headers[HeaderNames.WWWAuthenticate] = Refusal.Challenge;
        return ProblemAnswer.WriteAsync(context, refusal.Status, refusal.Detail);
    }
}
