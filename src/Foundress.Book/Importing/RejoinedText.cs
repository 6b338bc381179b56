namespace Foundress.Book.Importing;

/// <summary>A text of which the first characters have already been read: gives them again, then the rest.</summary>
internal sealed class RejoinedText(string head, TextReader rest) : TextReader
{
    private int _at;

    public override int Read(char[] buffer, int index, int count)
    {
        if (_at == head.Length)
            return rest.Read(buffer, index, count);
        var length = Math.Min(count, head.Length - _at);
        head.CopyTo(_at, buffer, index, length);
        _at += length;
        return length;
    }
}
