using System.Net;
using System.Net.Http.Headers;

namespace Foundress.Server.Tests.Accounts;

/// <summary>A body that is held back until something else has happened.</summary>
internal sealed class HeldContent : HttpContent
{
    private readonly ReadOnlyMemory<byte> _body;
    private readonly Func<Task> _meanwhile;

    public HeldContent(ReadOnlyMemory<byte> body, Func<Task> meanwhile)
    {
        (_body, _meanwhile) = (body, meanwhile);
        Headers.ContentType = new MediaTypeHeaderValue("application/json");
    }

    protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
    {
        await _meanwhile();
        await stream.WriteAsync(_body);
    }

    protected override bool TryComputeLength(out long length)
    {
        length = _body.Length;
        return true;
    }
}
