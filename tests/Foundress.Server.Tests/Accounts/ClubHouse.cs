using Foundress.Server.Security;

namespace Foundress.Server.Tests.Accounts;

/// <summary>A club's server for one test alone.</summary>
internal sealed class ClubHouse(RateLimits? limits = null) : IAsyncDisposable
{
    private readonly ClubSite _site = limits is null ? new ClubSite() : new ClubSite(limits);

    public async Task<ClubSite> OpenAsync()
    {
        await _site.InitializeAsync();
        return _site;
    }

    public ValueTask DisposeAsync() => _site.DisposeAsync();
}
