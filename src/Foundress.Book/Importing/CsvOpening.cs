using System.Text;

namespace Foundress.Book.Importing;

/// <summary>Finds out what a file is before any of it is taken: its encoding, its separator and its columns.</summary>
internal sealed class CsvOpening
{
    // One read-ahead of the file: room for the byte order mark and the first signs of what it is.
    private const int Head = 4096;

    private static readonly char[] Separators = [',', ';', '\t'];

    private CsvOpening(CsvReader reader, string encoding, IReadOnlyList<string> header) =>
        (Reader, Encoding, Header) = (reader, encoding, header);

    /// <summary>A reader that stands behind the header.</summary>
    internal CsvReader Reader { get; }

    /// <summary>The encoding found, for example <c>UTF-8</c>.</summary>
    internal string Encoding { get; }

    /// <summary>The header's fields, trimmed.</summary>
    internal IReadOnlyList<string> Header { get; }

    /// <summary>Opens a file.</summary>
    /// <exception cref="ImportFormatException">It is empty, or something else than separated values.</exception>
    internal static CsvOpening Of(Stream file, IReadOnlyList<string>? columns = null)
    {
        var head = new byte[Head];
        var length = file.ReadAtLeast(head, Head, throwOnEndOfStream: false);
        var (encoding, name) = EncodingOf(head.AsSpan(0, length));
        if (encoding is UTF8Encoding)
            RefuseOtherForms(head.AsSpan(0, length));
        // Not disposed of: the file is the caller's.
        var text = new StreamReader(new RejoinedStream(head.AsMemory(0, length), file), encoding, detectEncodingFromByteOrderMarks: true);
        var start = new char[CsvReader.GreatestRow];
        var taken = text.ReadBlock(start, 0, start.Length);
        var opening = new string(start, 0, taken);
        if (string.IsNullOrWhiteSpace(opening))
            throw new ImportFormatException(ImportTexts.FileEmpty);
        if (opening.Contains('\0'))
            throw NotText();
        var first = opening.AsSpan().TrimStart()[0];
        if (first is '{' or '[')
            throw new ImportFormatException(ImportTexts.IsJson);
        if (first is '<')
            throw new ImportFormatException(ImportTexts.IsMarkup);

        var separator = SeparatorOf(opening, columns ?? JarColumns.Required);
        var reader = new CsvReader(new RejoinedText(opening, text), separator);
        IReadOnlyList<string> header = [];
        while (header.Count == 0 && reader.Read())
        {
            if (reader.Problem is not null)
                throw new ImportFormatException(ImportTexts.FormatHeaderMalformed(reader.Row, reader.Problem));
            // Some spreadsheets put a line "sep=;" first.
            if (reader.Fields.All(string.IsNullOrWhiteSpace) || reader.Fields[0].StartsWith("sep=", StringComparison.OrdinalIgnoreCase))
                continue;
            header = [.. reader.Fields.Select(field => field.Trim())];
        }

        return header.Count > 0
            ? new CsvOpening(reader, name, header)
            : throw new ImportFormatException(ImportTexts.FileEmpty);
    }

    // The separator under which the first rows name the most columns that are known; a comma when none does.
    private static char SeparatorOf(string opening, IReadOnlyList<string> columns)
    {
        var best = ',';
        var most = 0;
        foreach (var separator in Separators)
        {
            var reader = new CsvReader(new StringReader(opening), separator);
            for (var row = 0; row < 3 && reader.Read(); row++)
            {
                var known = reader.Fields.Count(field => columns.Contains(JarColumns.Normal(field)));
                if (known > most)
                    (best, most) = (separator, known);
            }
        }

        return best;
    }

    private static (Encoding Encoding, string Name) EncodingOf(ReadOnlySpan<byte> head) => head switch
    {
        [0xFF, 0xFE, ..] => (new UnicodeEncoding(bigEndian: false, byteOrderMark: true), ImportTexts.Utf16LittleEndian),
        [0xFE, 0xFF, ..] => (new UnicodeEncoding(bigEndian: true, byteOrderMark: true), ImportTexts.Utf16BigEndian),
        [0xEF, 0xBB, 0xBF, ..] => (new UTF8Encoding(true), ImportTexts.Utf8WithMark),
        _ => (new UTF8Encoding(false), "UTF-8"),
    };

    private static void RefuseOtherForms(ReadOnlySpan<byte> head)
    {
        if (head.StartsWith("PK\u0003\u0004"u8))
            throw new ImportFormatException(ImportTexts.IsSpreadsheet);
        if (head.StartsWith((ReadOnlySpan<byte>)[0xD0, 0xCF, 0x11, 0xE0]))
            throw new ImportFormatException(ImportTexts.IsOldSpreadsheet);
        if (head.StartsWith("%PDF"u8))
            throw new ImportFormatException(ImportTexts.IsPdf);
        if (head.StartsWith((ReadOnlySpan<byte>)[0x1F, 0x8B]))
            throw new ImportFormatException(ImportTexts.IsCompressed);
        if (head.Contains((byte)0))
            throw NotText();
    }

    private static ImportFormatException NotText() => new(ImportTexts.IsNotText);
}
