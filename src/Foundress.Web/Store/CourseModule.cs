using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace Foundress.Web.Store;

/// <summary>The functions of <c>js/courses.js</c>.</summary>
[SupportedOSPlatform("browser")]
internal static partial class CourseModule
{
    internal const string Name = "courses";

    [JSImport("get", Name)]
    [return: JSMarshalAs<JSType.Promise<JSType.String>>]
    internal static partial Task<string?> Get(string operation, string place);

    [JSImport("put", Name)]
    internal static partial Task Put(string operation, string place, string text);

    [JSImport("forget", Name)]
    internal static partial Task Forget(string operation);
}
