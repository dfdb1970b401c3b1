using System.Text;

namespace Rinsewright.Files.Loggers;

/// <summary>The text of a file, from its start as often as wanted.</summary>
internal sealed class TextSource(Stream stream, Encoding encoding, int skip)
{
    public Stream Stream => stream;

    /// <summary>Opens the text; dispose it before opening it again.</summary>
    public StreamReader Open()
    {
        stream.Position = skip;
        return new StreamReader(stream, encoding, detectEncodingFromByteOrderMarks: false, bufferSize: 1 << 16, leaveOpen: true);
    }

    /// <summary>Encoding of the bytes of <see cref="OpenBytes"/>: one byte for every plain character.</summary>
    public Encoding ByteEncoding { get; } =
        encoding is UnicodeEncoding ? new UTF8Encoding(encoderShouldEmitUTF8Identifier: false) : encoding;

    /// <summary>Opens the text as bytes of <see cref="ByteEncoding"/>; not to be disposed.</summary>
    public Stream OpenBytes()
    {
        stream.Position = skip;
        return ReferenceEquals(ByteEncoding, encoding)
            ? stream
            : Encoding.CreateTranscodingStream(stream, encoding, ByteEncoding, leaveOpen: true);
    }

    /// <summary>The first lines, and whether they are all.</summary>
    public (List<string> Lines, bool Whole) Sample(int mostLines, int mostCharacters)
    {
        using var reader = Open();
        var lines = new List<string>();
        var source = new LineReader(reader);
        var characters = 0;
        while (lines.Count < mostLines && characters < mostCharacters)
        {
            if (!source.TryRead(out var line))
            {
                return (lines, true);
            }

            lines.Add(line.ToString());
            characters += line.Length;
        }

        return (lines, false);
    }
}
