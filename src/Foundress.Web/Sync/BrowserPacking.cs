using System.Runtime.Versioning;
using System.Text;
using Foundress.Web.Store;

namespace Foundress.Web.Sync;

/// <summary>Packing by the browser itself: the runtime's own compression would be one more file to fetch at the first visit.</summary>
[SupportedOSPlatform("browser")]
public sealed class BrowserPacking : IPacking
{
    /// <inheritdoc/>
    public async Task<byte[]?> GzipAsync(byte[] utf8) =>
        await DeviceModule.Gzip(Encoding.UTF8.GetString(utf8)) is { } text ? Convert.FromBase64String(text) : null;
}
