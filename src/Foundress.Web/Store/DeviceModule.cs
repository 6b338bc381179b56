using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace Foundress.Web.Store;

/// <summary>The functions of <c>js/device.js</c>.</summary>
[SupportedOSPlatform("browser")]
internal static partial class DeviceModule
{
    internal const string Name = "device";

    [JSImport("setTheme", Name)]
    internal static partial void SetTheme(string theme);

    [JSImport("getTheme", Name)]
    internal static partial string GetTheme();

    [JSImport("tick", Name)]
    internal static partial void Tick(int milliseconds);

    [JSImport("keepAwake", Name)]
    [return: JSMarshalAs<JSType.Promise<JSType.Boolean>>]
    internal static partial Task<bool> KeepAwake(bool on, string who);

    [JSImport("homeScreen", Name)]
    internal static partial string HomeScreen();

    [JSImport("putOnHomeScreen", Name)]
    [return: JSMarshalAs<JSType.Promise<JSType.Boolean>>]
    internal static partial Task<bool> PutOnHomeScreen();

    [JSImport("onHomeScreen", Name)]
    internal static partial void OnHomeScreen([JSMarshalAs<JSType.Function>] Action callback);

    [JSImport("download", Name)]
    internal static partial void Download(string name, string type, string text);

    [JSImport("print", Name)]
    internal static partial void Print();

    [JSImport("persist", Name)]
    [return: JSMarshalAs<JSType.Promise<JSType.String>>]
    internal static partial Task<string> Persist(bool ask);

    [JSImport("usedBytes", Name)]
    [return: JSMarshalAs<JSType.Promise<JSType.Number>>]
    internal static partial Task<double> UsedBytes();

    [JSImport("onReturn", Name)]
    internal static partial void OnReturn([JSMarshalAs<JSType.Function>] Action callback);

    [JSImport("focusFirst", Name)]
    internal static partial void FocusFirst(string selector);

    [JSImport("gzip", Name)]
    [return: JSMarshalAs<JSType.Promise<JSType.String>>]
    internal static partial Task<string?> Gzip(string text);
}
