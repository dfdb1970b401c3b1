using System.Text;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>What kind of file the bytes are, from their first bytes; anything that cannot hold a table of readings is refused in plain words.</summary>
internal static class FileKind
{
    /// <summary>Bytes that are enough to tell.</summary>
    public const int HeadLength = 4096;

    private static readonly (string Start, string What)[] Refused =
    [
        ("89504E47", "picture"),
        ("FFD8FF", "picture"),
        ("47494638", "picture"),
        ("49492A00", "picture"),
        ("4D4D002A", "picture"),
        ("25504446", "pdf"),
        ("1F8B", "archive"),
        ("526172211A", "archive"),
        ("377ABCAF271C", "archive"),
        ("425A68", "archive"),
        ("FD377A585A", "archive"),
        ("53514C69746520666F726D6174", "binary"),
        ("7F454C46", "binary"),
        ("7B5C727466", "document"),
    ];

    /// <summary>Whether the bytes start a workbook (a zip archive or the older compound file); otherwise text.</summary>
    /// <exception cref="UnreadableFileException">Empty, a picture, a PDF, an archive, a page or other bytes that are no text.</exception>
    public static bool IsWorkbook(ReadOnlySpan<byte> head)
    {
        if (head.IsEmpty)
        {
            throw new UnreadableFileException(Statement.Of("files.empty"));
        }

        if (
            head.StartsWith("PK\u0003\u0004"u8)
            || head.StartsWith("PK\u0005\u0006"u8)
            || head.StartsWith(Convert.FromHexString("D0CF11E0A1B11AE1"))
        )
        {
            return true;
        }

        foreach (var (start, what) in Refused)
        {
            if (head.StartsWith(Convert.FromHexString(start)))
            {
                throw Refuse(what);
            }
        }

        if (head.Length >= 12 && (head[4..8].SequenceEqual("ftyp"u8) || (head.StartsWith("RIFF"u8) && head[8..12].SequenceEqual("WEBP"u8))))
        {
            throw Refuse("picture");
        }

        var start16 = Encoding.ASCII.GetString(head[..Math.Min(head.Length, 256)]).TrimStart('?', '\u00ef', ' ', '\r', '\n', '\t');
        if (
            start16.StartsWith("<!doctype", StringComparison.OrdinalIgnoreCase)
            || start16.StartsWith("<html", StringComparison.OrdinalIgnoreCase)
        )
        {
            throw Refuse("page");
        }

        return false;
    }

    /// <summary>Whether text decoded from the start of the file looks like text at all.</summary>
    /// <exception cref="UnreadableFileException">Too many control characters.</exception>
    public static void RequireText(ReadOnlySpan<char> text)
    {
        var odd = 0;
        var seen = 0;
        foreach (var c in text)
        {
            seen++;
            odd +=
                (char.IsControl(c) && c is not ('\r' or '\n' or '\t' or '\f' or '\u001a')) || c == '\ufffd' || char.IsSurrogate(c) ? 1 : 0;
        }

        if (odd > 8 && odd * 20 > seen)
        {
            throw Refuse("binary");
        }
    }

    private static UnreadableFileException Refuse(string what) => new(Statement.Of("files.refused-" + what));
}
