namespace Foundress.Web.Sync;

/// <summary>Makes what is sent smaller. A phone at the edge of its signal sends a tenth of the bytes.</summary>
public interface IPacking
{
    /// <summary>Packs JSON with gzip.</summary>
    /// <param name="utf8">The text.</param>
    /// <returns>The packed bytes, or null where this device cannot.</returns>
    Task<byte[]?> GzipAsync(byte[] utf8);
}
