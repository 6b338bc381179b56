namespace Foundress.Book.Planning;

/// <summary>Colonies worked out side by side where there are several processors; what comes out does not depend on how many.</summary>
internal static class SideBySide
{
    /// <summary>How many at a time: one in a browser, which has no threads.</summary>
    internal static int Width { get; } = OperatingSystem.IsBrowser() ? 1 : Math.Max(1, Environment.ProcessorCount);

    /// <summary>Does something for each place from 0 on.</summary>
    internal static void Each(int count, Action<int> work)
    {
        // Said outright, so that the browser's build leaves the rest out.
        if (OperatingSystem.IsBrowser() || Width == 1 || count == 1)
        {
            for (var i = 0; i < count; i++)
                work(i);
        }
        else
        {
            Parallel.For(0, count, work);
        }
    }
}
