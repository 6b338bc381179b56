namespace Foundress.Server.Security;

/// <summary>Why somebody was not let through.</summary>
/// <param name="Status">The HTTP status.</param>
/// <param name="Detail">The message.</param>
internal sealed record Refusal(int Status, string Detail)
{
    /// <summary>The header that every answer of status 401 must have (RFC 9110, 11.6.1).</summary>
    public const string Challenge = "Bearer realm=\"Foundress\"";

    /// <summary>Why the access rules did not let a request through.</summary>
    public static Refusal Of(HttpContext http) => http.Features.Get<Refusal>() ?? new Refusal(StatusCodes.Status403Forbidden, AccessTexts.NobodyMay);
}
