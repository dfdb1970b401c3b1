namespace Rinsewright.Files.Loggers;

/// <summary>
/// The bytes of a text in blocks of whole lines, in bounded memory; carriage return, line feed and both together end a line. Only the last
/// block of a file may end inside a line.
/// </summary>
internal sealed class LineBlocks(Stream stream)
{
    // A character takes at most three bytes of UTF-8 for each of its UTF-16 units.
    private const int LongestLine = 3 * LineReader.LongestLine;

    private byte[] buffer = new byte[1 << 17];
    private int start;
    private int end;
    private bool finished;

    /// <summary>Reads the next block; valid until the next call.</summary>
    /// <param name="line">Lines read so far, for the refusal.</param>
    /// <param name="block">Lines with their ends.</param>
    /// <exception cref="UnreadableFileException">A line is far too long.</exception>
    public bool TryRead(long line, out ReadOnlySpan<byte> block)
    {
        while (true)
        {
            var length = finished ? end - start : WholeLines(buffer.AsSpan(start, end - start));
            if (length > 0)
            {
                block = buffer.AsSpan(start, length);
                start += length;
                return true;
            }

            if (finished)
            {
                block = default;
                return false;
            }

            if (end - start > LongestLine)
            {
                throw LineReader.TooLong(line + 1);
            }

            Fill();
        }
    }

    /// <summary>Takes the first line off a block, with or without an end.</summary>
    /// <param name="block">Block; left with what follows the line.</param>
    /// <param name="terminated">Whether the line had an end.</param>
    public static ReadOnlySpan<byte> TakeLine(ref ReadOnlySpan<byte> block, out bool terminated)
    {
        var line = block;
        var at = block.IndexOfAny((byte)'\r', (byte)'\n');
        terminated = at >= 0;
        if (!terminated)
        {
            block = default;
            return line;
        }

        block = block[(block[at] == '\r' && at + 1 < block.Length && block[at + 1] == '\n' ? at + 2 : at + 1)..];
        return line[..at];
    }

    // A carriage return at the very end may have its line feed in the next block.
    private static int WholeLines(ReadOnlySpan<byte> bytes)
    {
        var last = bytes.LastIndexOfAny((byte)'\r', (byte)'\n');
        return 1
            + (last == bytes.Length - 1 && last >= 0 && bytes[last] == '\r' ? bytes[..last].LastIndexOfAny((byte)'\r', (byte)'\n') : last);
    }

    private void Fill()
    {
        buffer.AsSpan(start, end - start).CopyTo(buffer);
        end -= start;
        start = 0;
        if (end == buffer.Length)
        {
            Array.Resize(ref buffer, buffer.Length * 2);
        }

        var read = stream.Read(buffer, end, buffer.Length - end);
        end += read;
        finished = read == 0;
    }
}
