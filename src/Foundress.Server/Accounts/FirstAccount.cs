namespace Foundress.Server.Accounts;

/// <summary>What to do while nobody can sign in.</summary>
internal static class FirstAccount
{
    public static string Advice(ServerOptions options) =>
        $"Nobody has an account yet. Make the first keeper's link: foundress account add NAME --keeper --administrator --site ADDRESS --data \"{options.Data}\"{(options.Database is null ? "" : " with the same --database")} (ADDRESS: where people open the server, as https://bees.example.org/)";
}
