using System.Runtime.InteropServices;

namespace Foundress.Storage.Tests;

/// <summary>
/// Runs work as a user without special rights to files (Linux), so that read-only files are read-only also where the tests
/// run as root. Applies to one thread only.
/// </summary>
internal static class FileIdentity
{
    private const uint Nobody = 65_534;

    public static Exception? Nobodys(Action work)
    {
        Exception? thrown = null;
        var thread = new Thread(() =>
        {
            var mine = SetFileUser(Nobody);
            try
            {
                work();
            }
            catch (Exception error)
            {
                thrown = error;
            }
            finally
            {
                _ = SetFileUser((uint)mine);
            }
        });
        thread.Start();
        thread.Join();
        return thrown;
    }

    [DllImport("libc", EntryPoint = "setfsuid")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetFileUser(uint user);
}
