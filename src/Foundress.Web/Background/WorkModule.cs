using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace Foundress.Web.Background;

/// <summary>The functions of <c>js/work.js</c>: the page's side of the worker.</summary>
[SupportedOSPlatform("browser")]
internal static partial class WorkModule
{
    internal const string Name = "work";

    [JSImport("start", Name)]
    [return: JSMarshalAs<JSType.Promise<JSType.String>>]
    internal static partial Task<string> Start(string culture);

    [JSImport("run", Name)]
    [return: JSMarshalAs<JSType.Promise<JSType.String>>]
    internal static partial Task<string> Run(int id, string name, string operation, int entries, string input);

    [JSImport("cancel", Name)]
    internal static partial void Cancel(int id);

    [JSImport("listen", Name)]
    internal static partial void Listen([JSMarshalAs<JSType.Function<JSType.Number, JSType.String>>] Action<int, string> step);
}
