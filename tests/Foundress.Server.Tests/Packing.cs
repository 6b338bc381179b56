using System.IO.Compression;
using System.Net.Http.Headers;
using Foundress.Web.Sync;

namespace Foundress.Server.Tests;

/// <summary>Packs as the browser does, which the phone leaves it to.</summary>
internal sealed class Packing : IPacking
{
    public static byte[] Gzip(byte[] bytes) => Pack(bytes, stream => new GZipStream(stream, CompressionLevel.Optimal));

    public static byte[] Brotli(byte[] bytes) => Pack(bytes, stream => new BrotliStream(stream, CompressionLevel.Fastest));

    public static ByteArrayContent Content(byte[] packed, string encoding)
    {
        var content = new ByteArrayContent(packed);
        content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        content.Headers.ContentEncoding.Add(encoding);
        return content;
    }

    public Task<byte[]?> GzipAsync(byte[] utf8) => Task.FromResult<byte[]?>(Gzip(utf8));

    private static byte[] Pack(byte[] bytes, Func<Stream, Stream> packer)
    {
        using var result = new MemoryStream();
        using (var stream = packer(result))
            stream.Write(bytes);
        return result.ToArray();
    }
}
