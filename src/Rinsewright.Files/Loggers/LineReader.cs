using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>Lines of a text of any length in bounded memory; carriage return, line feed and both together end a line, mixed as they come.</summary>
internal sealed class LineReader(TextReader reader)
{
    /// <summary>Longest line that is read, in characters.</summary>
    public const int LongestLine = 1 << 20;

    private char[] buffer = new char[1 << 15];
    private int start;
    private int end;
    private bool finished;
    private bool skipLineFeed;

    /// <summary>Number of the last line read, from 1.</summary>
    public long Line { get; private set; }

    /// <summary>Whether the last line read had an end of line.</summary>
    public bool Terminated { get; private set; }

    /// <summary>Reads the next line; valid until the next call.</summary>
    /// <exception cref="UnreadableFileException">A line is longer than <see cref="LongestLine"/>.</exception>
    public bool TryRead(out ReadOnlySpan<char> line)
    {
        var scanned = 0;
        while (true)
        {
            if (skipLineFeed && start < end)
            {
                start += buffer[start] == '\n' ? 1 : 0;
                skipLineFeed = false;
            }

            var found = buffer.AsSpan(start + scanned, Math.Max(0, end - start - scanned)).IndexOfAny('\r', '\n');
            if (found >= 0)
            {
                var at = start + scanned + found;
                line = buffer.AsSpan(start, at - start);
                skipLineFeed = buffer[at] == '\r';
                start = at + 1;
                Line++;
                Terminated = true;
                return true;
            }

            scanned = Math.Max(0, end - start);
            if (scanned > LongestLine)
            {
                throw TooLong(Line + 1);
            }

            if (finished)
            {
                line = buffer.AsSpan(start, scanned);
                start = end;
                Line += scanned > 0 ? 1 : 0;
                Terminated = false;
                return scanned > 0;
            }

            Fill();
        }
    }

    /// <summary>The refusal of a line that is too long.</summary>
    public static UnreadableFileException TooLong(long line) => new(Statement.Of("files.line-too-long", ("line", line)));

    private void Fill()
    {
        if (start > 0)
        {
            buffer.AsSpan(start, end - start).CopyTo(buffer);
            end -= start;
            start = 0;
        }

        if (end == buffer.Length)
        {
            Array.Resize(ref buffer, buffer.Length * 2);
        }

        var read = reader.Read(buffer, end, buffer.Length - end);
        end += read;
        finished = read == 0;
    }
}
