namespace Foundress.Server.Accounts;

/// <summary>What to do while nobody can sign in.</summary>
internal static class FirstAccount
{
    public static string Advice(ServerOptions options) =>
        $"Nobody has an account yet. Open the link that was made for the first keeper, or make one: foundress account add NAME --keeper --administrator --site ADDRESS --data \"{options.Data}\"{(options.Database is null ? "" : " with the same --database")} (ADDRESS: where people open the server, as https://bees.example.org/)";
}
