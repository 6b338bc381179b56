namespace Foundress.Book.Importing;

/// <summary>A stream of which the first bytes have already been read: gives them again, then the rest.</summary>
internal sealed class RejoinedStream(ReadOnlyMemory<byte> head, Stream rest) : Stream
{
    private ReadOnlyMemory<byte> _head = head;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override int Read(Span<byte> buffer)
    {
        if (_head.IsEmpty)
            return rest.Read(buffer);
        var length = Math.Min(buffer.Length, _head.Length);
        _head.Span[..length].CopyTo(buffer);
        _head = _head[length..];
        return length;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
