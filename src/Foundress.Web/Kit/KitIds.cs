using System.Globalization;

namespace Foundress.Web.Kit;

/// <summary>Ids that tie labels, hints and errors to their inputs within one page.</summary>
internal static class KitIds
{
    private static int _last;

    internal static string Next() => "k" + Interlocked.Increment(ref _last).ToString(CultureInfo.InvariantCulture);
}
