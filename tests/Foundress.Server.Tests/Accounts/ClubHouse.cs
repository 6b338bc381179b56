using Foundress.Server.Security;

namespace Foundress.Server.Tests.Accounts;

/// <summary>A club's server for one test alone, on the same kind of database as another.</summary>
internal sealed class ClubHouse(ClubSite like, RateLimits? limits = null) : IAsyncDisposable
{
    private readonly ClubSite _site = new(like.OnPostgres, limits);

    public async Task<ClubSite> OpenAsync()
    {
        await _site.InitializeAsync();
        return _site;
    }

    public ValueTask DisposeAsync() => _site.DisposeAsync();
}
