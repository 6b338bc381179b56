using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;

namespace Foundress.Accounts.Model;

/// <summary>
/// What the tables of ASP.NET Core Identity are made from. Identity looks for the version of its tables among the services of
/// the program, and without it leaves passkeys out: so that no program can forget, the context brings its own.
/// </summary>
internal static class ModelServices
{
    public static IServiceProvider Provider { get; } = new ServiceCollection()
        .Configure<IdentityOptions>(identity => identity.Stores.SchemaVersion = IdentitySchemaVersions.Version3)
        .BuildServiceProvider();
}
