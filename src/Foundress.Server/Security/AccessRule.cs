namespace Foundress.Server.Security;

/// <summary>What one address needs.</summary>
/// <param name="Method">The HTTP method; <c>*</c> for any.</param>
/// <param name="Pattern">The address with its parameters.</param>
/// <param name="Access">What somebody must be.</param>
/// <param name="Pace">How often it may be asked.</param>
/// <param name="Operation">The operation it is about, where the address does not name one.</param>
/// <param name="ByCalendarLink">Whether the secret in a calendar program's address is taken for the person who made it.</param>
internal sealed record AccessRule(string Method, string Pattern, Access Access, Pace Pace = Pace.Free, string? Operation = null, bool ByCalendarLink = false)
{
    /// <summary>Method and pattern.</summary>
    public string Key => $"{Method} {Pattern}";
}
