using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace Foundress.Web.Shell;

/// <summary>The functions of <c>js/language.js</c>.</summary>
[SupportedOSPlatform("browser")]
internal static partial class LanguageModule
{
    internal const string Name = "language";

    /// <summary>The language chosen on this device; empty when it follows the browser.</summary>
    [JSImport("chosen", Name)]
    internal static partial string Chosen();

    /// <summary>Keeps a choice and loads the page again in it.</summary>
    [JSImport("choose", Name)]
    internal static partial void Choose(string language);
}
