using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace Foundress.Web.Shell;

/// <summary>The functions of <c>js/update.js</c>.</summary>
[SupportedOSPlatform("browser")]
internal static partial class UpdateModule
{
    internal const string Name = "update";

    [JSImport("watch", Name)]
    internal static partial void Watch([JSMarshalAs<JSType.Function>] Action waiting, [JSMarshalAs<JSType.Function>] Action takenOver);

    [JSImport("apply", Name)]
    internal static partial void Apply();

    [JSImport("reload", Name)]
    internal static partial void Reload();

    [JSImport("offlineState", Name)]
    internal static partial string OfflineState();

    [JSImport("offlineProblem", Name)]
    internal static partial string OfflineProblem();
}
