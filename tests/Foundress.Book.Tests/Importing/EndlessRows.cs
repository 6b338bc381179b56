using System.Text;

namespace Foundress.Book.Tests.Importing;

/// <summary>A file that is made while it is read, so that a test of its size does not hold it.</summary>
internal sealed class EndlessRows(string header, string row, long bytes) : Stream
{
    private readonly byte[] _row = Encoding.UTF8.GetBytes(row);
    private ReadOnlyMemory<byte> _left = Encoding.UTF8.GetBytes(header);
    private long _given;

    internal int RowsGiven { get; private set; }

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
        if (_left.IsEmpty && _given < bytes)
        {
            _left = _row;
            RowsGiven++;
        }

        var length = Math.Min(buffer.Length, _left.Length);
        _left.Span[..length].CopyTo(buffer);
        _left = _left[length..];
        _given += length;
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
