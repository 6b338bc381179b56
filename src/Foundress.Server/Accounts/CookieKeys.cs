using Foundress.Accounts;
using Microsoft.AspNetCore.DataProtection;

namespace Foundress.Server.Accounts;

/// <summary>The keys that cookies are sealed with, which all servers on one database share.</summary>
internal static class CookieKeys
{
    /// <summary>
    /// Makes sure that there is a key, and that this server knows it. Servers started at once would each make one of their own
    /// and not know the others'; later keys are made two days before they are used, and read again within one.
    /// </summary>
    public static Task MakeSureAsync(AccountsDatabase accounts, IServiceProvider services) => accounts.AloneInSetupAsync(() =>
    {
        services.GetRequiredService<IDataProtectionProvider>().CreateProtector(nameof(CookieKeys)).Protect([]);
        return Task.CompletedTask;
    });
}
