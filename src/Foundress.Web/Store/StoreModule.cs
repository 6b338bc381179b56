using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

namespace Foundress.Web.Store;

/// <summary>The functions of <c>js/store.js</c>. Text crosses as one string a call.</summary>
[SupportedOSPlatform("browser")]
internal static partial class StoreModule
{
    internal const string Name = "store";

    [JSImport("append", Name)]
    internal static partial Task Append(string operation, string pairs, bool pending, string? draft);

    [JSImport("readAfter", Name)]
    [return: JSMarshalAs<JSType.Promise<JSType.String>>]
    internal static partial Task<string> ReadAfter(string operation, int after);

    [JSImport("readPending", Name)]
    [return: JSMarshalAs<JSType.Promise<JSType.String>>]
    internal static partial Task<string> ReadPending(string operation, int limit);

    [JSImport("countPending", Name)]
    [return: JSMarshalAs<JSType.Promise<JSType.Number>>]
    internal static partial Task<int> CountPending(string operation);

    [JSImport("countRefused", Name)]
    [return: JSMarshalAs<JSType.Promise<JSType.Number>>]
    internal static partial Task<int> CountRefused(string operation);

    [JSImport("settle", Name)]
    internal static partial Task Settle(string operation, string outcomes);

    [JSImport("unsettle", Name)]
    internal static partial Task Unsettle(string operation);

    [JSImport("retryRefused", Name)]
    internal static partial Task RetryRefused(string operation);

    [JSImport("forget", Name)]
    internal static partial Task Forget(string operation);

    [JSImport("dropCopied", Name)]
    internal static partial Task DropCopied(string operation);

    [JSImport("metaGet", Name)]
    [return: JSMarshalAs<JSType.Promise<JSType.String>>]
    internal static partial Task<string?> MetaGet(string key);

    [JSImport("metaSet", Name)]
    internal static partial Task MetaSet(string key, string? value);

    [JSImport("metaFirst", Name)]
    [return: JSMarshalAs<JSType.Promise<JSType.String>>]
    internal static partial Task<string> MetaFirst(string key, string value);

    [JSImport("draftGet", Name)]
    [return: JSMarshalAs<JSType.Promise<JSType.String>>]
    internal static partial Task<string?> DraftGet(string key);

    [JSImport("draftSet", Name)]
    internal static partial Task DraftSet(string key, string? value);

    [JSImport("tell", Name)]
    internal static partial void Tell(string operation);

    [JSImport("listen", Name)]
    internal static partial void Listen([JSMarshalAs<JSType.Function<JSType.String>>] Action<string> changed);
}
