namespace Foundress.Accounts;

/// <summary>A link just made.</summary>
/// <param name="Id">Its id, which is no secret.</param>
/// <param name="Secret">Its secret, told this once.</param>
/// <param name="Expires">Until when it can be used.</param>
public sealed record MadeLink(Guid Id, string Secret, DateTimeOffset Expires)
{
    /// <summary>The address that opens it. The secret stands behind the #, which browsers do not send to servers or proxies.</summary>
    public Uri At(Uri site) => new(site, "account.html#" + Secret);
}
