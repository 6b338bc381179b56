namespace Foundress.Book.Exchanging;

/// <summary>Lines of a file as bytes, without their ends (LF or CR LF). A line that is far too long is cut, so that no file can fill the memory.</summary>
internal sealed class LineReader(Stream source, int greatest) : IDisposable
{
    private readonly byte[] _buffer = new byte[64 * 1024];
    private readonly MemoryStream _line = new();
    private int _at;
    private int _end;

    /// <summary>The number of the line given last, from 1.</summary>
    public int Number { get; private set; }

    /// <summary>Whether the line given last was longer than it may be, and was cut.</summary>
    public bool WasTooLong { get; private set; }

    /// <summary>The next line, which holds until the next call; null at the end.</summary>
    public ReadOnlyMemory<byte>? Next()
    {
        _line.SetLength(0);
        WasTooLong = false;
        var any = false;
        while (true)
        {
            if (_at == _end)
            {
                (_at, _end) = (0, source.Read(_buffer));
                if (_end == 0)
                    return any ? Given() : default(ReadOnlyMemory<byte>?);
            }

            any = true;
            var left = _buffer.AsSpan(_at, _end - _at);
            var end = left.IndexOf((byte)'\n');
            var part = end < 0 ? left : left[..end];
            var room = greatest - (int)_line.Length;
            WasTooLong |= part.Length > room;
            _line.Write(part[..Math.Min(part.Length, room)]);
            _at += end < 0 ? left.Length : end + 1;
            if (end >= 0)
                return Given();
        }
    }

    public void Dispose() => _line.Dispose();

    private ReadOnlyMemory<byte> Given()
    {
        Number++;
        var line = _line.GetBuffer().AsMemory(0, (int)_line.Length);
        return line.Length > 0 && line.Span[^1] == '\r' ? line[..^1] : line;
    }
}
