using Foundress.Server.Problems;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Authorization.Policy;

namespace Foundress.Server.Security;

/// <summary>
/// Asks a second time whether somebody may, once all they send is in. Sending can be drawn out for hours, and a role, a
/// session or a device that was taken away meanwhile is gone at once for this request too.
/// </summary>
internal static class StillAllowed
{
    private static readonly object Mark = new();

    /// <summary>Whether the second question is under way: it must change nothing of what the answer will say.</summary>
    public static bool IsAsking(HttpContext http) => http.Items.ContainsKey(Mark);

    /// <summary>Goes on when the caller may do now what they began, and where there are no accounts.</summary>
    /// <param name="http">The request, its body read.</param>
    /// <exception cref="RequestProblemException">They may not any more.</exception>
    public static async Task CheckAsync(HttpContext http)
    {
        var services = http.RequestServices;
        if (services.GetService<IPolicyEvaluator>() is not { } evaluator
            || await services.GetRequiredService<IAuthorizationPolicyProvider>().GetFallbackPolicyAsync() is not { } policy)
            return;
        // Who somebody is, is found out once for the services of a request: new ones find it out anew.
        await using var anew = services.CreateAsyncScope();
        http.RequestServices = anew.ServiceProvider;
        http.Items[Mark] = Mark;
        try
        {
            var caller = await evaluator.AuthenticateAsync(policy, http);
            if ((await evaluator.AuthorizeAsync(policy, caller, http, http)).Succeeded)
                return;
        }
        finally
        {
            http.RequestServices = services;
            http.Items.Remove(Mark);
        }

        var refusal = Refusal.Of(http);
        throw new RequestProblemException(refusal.Status, refusal.Detail);
    }
}
