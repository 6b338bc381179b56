namespace Foundress.Server.Tests.Accounts;

internal static class Repository
{
    /// <summary>The folder of the clone the tests run in.</summary>
    public static string Root
    {
        get
        {
            for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            {
                if (File.Exists(Path.Combine(folder.FullName, "Foundress.slnx")))
                    return folder.FullName;
            }

            throw new DirectoryNotFoundException("No folder above the test holds Foundress.slnx.");
        }
    }
}
