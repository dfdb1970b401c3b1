using System.Text;
using System.Text.Unicode;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>Which encoding the bytes are in: byte order mark; else every second byte zero; else strict UTF-8; else the single-byte Windows code page.</summary>
internal static class TextEncoding
{
    /// <summary>Bytes looked at.</summary>
    public const int SampleLength = 1 << 20;

    private static readonly string[] Names = ["utf-8", "utf-16le", "utf-16be", "windows-1252"];

    /// <summary>Decides, and says how many bytes of mark to skip.</summary>
    /// <param name="sample">First bytes of the file, at most <see cref="SampleLength"/>.</param>
    /// <param name="whole">Whether that is the whole file.</param>
    /// <param name="given">What the person said; null where nothing.</param>
    public static (Encoding Encoding, int Skip, Decision Decision) Decide(ReadOnlySpan<byte> sample, bool whole, string? given)
    {
        var (name, skip, key, basis) = Find(sample, whole);
        if (given is not null)
        {
            var wanted = given.ToLowerInvariant();
            if (!Names.Contains(wanted))
            {
                throw new UnreadableFileException(
                    Statement.Of("files.override-unknown", ("what", "encoding"), ("value", given), ("known", string.Join(", ", Names)))
                );
            }

            return (
                Of(wanted),
                string.Equals(wanted, name, StringComparison.Ordinal) ? skip : 0,
                Make(wanted, "files.given", DecisionBasis.Given)
            );
        }

        return (Of(name), skip, Make(name, key, basis));
    }

    private static (string Name, int Skip, string Key, DecisionBasis Basis) Find(ReadOnlySpan<byte> sample, bool whole)
    {
        if (sample.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
        {
            return (Names[0], 3, "files.encoding-mark", DecisionBasis.Read);
        }

        if (sample.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
        {
            return (Names[1], 2, "files.encoding-mark", DecisionBasis.Read);
        }

        if (sample.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            return (Names[2], 2, "files.encoding-mark", DecisionBasis.Read);
        }

        int even = 0,
            odd = 0;
        var looked = Math.Min(sample.Length, 4096) & ~1;
        for (var i = 0; i < looked; i += 2)
        {
            even += sample[i] == 0 ? 1 : 0;
            odd += sample[i + 1] == 0 ? 1 : 0;
        }

        if (odd * 2 > looked / 2 && even * 10 < odd)
        {
            return (Names[1], 0, "files.encoding-zeros", DecisionBasis.Inferred);
        }

        if (even * 2 > looked / 2 && odd * 10 < even)
        {
            return (Names[2], 0, "files.encoding-zeros", DecisionBasis.Inferred);
        }

        return Utf8.IsValid(whole ? sample : WithoutCutCharacter(sample))
            ? (Names[0], 0, "files.encoding-utf8", DecisionBasis.Inferred)
            : (Names[3], 0, "files.encoding-not-utf8", DecisionBasis.Inferred);
    }

    // The sample may end inside a character of several bytes.
    private static ReadOnlySpan<byte> WithoutCutCharacter(ReadOnlySpan<byte> sample)
    {
        for (var back = 1; back <= 3 && back < sample.Length; back++)
        {
            if ((sample[^back] & 0xC0) == 0xC0)
            {
                return sample[..^back];
            }

            if ((sample[^back] & 0x80) == 0)
            {
                break;
            }
        }

        return sample;
    }

    private static Encoding Of(string name) =>
        name switch
        {
            "utf-16le" => new UnicodeEncoding(bigEndian: false, byteOrderMark: false),
            "utf-16be" => new UnicodeEncoding(bigEndian: true, byteOrderMark: false),
            "windows-1252" => Windows1252.Instance,
            _ => new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
        };

    private static Decision Make(string name, string key, DecisionBasis basis) =>
        new("encoding", name, Statement.Of(key, ("value", name)), basis, [.. Names.Where(n => n != name)]);
}
