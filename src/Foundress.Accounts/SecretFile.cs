namespace Foundress.Accounts;

/// <summary>Files that hold hashes of passwords and the keys of session cookies: nobody else's business on a computer with several users.</summary>
internal static class SecretFile
{
    /// <summary>Makes an empty file that only its owner can read, unless it is there.</summary>
    public static void Make(string file)
    {
        if (File.Exists(file) || OperatingSystem.IsWindows())
            return;
        using var made = new FileStream(
            file, new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite });
    }
}
