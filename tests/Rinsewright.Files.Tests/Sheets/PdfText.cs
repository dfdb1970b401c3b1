using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Advanced;
using PdfSharp.Pdf.IO;

namespace Rinsewright.Files.Tests.Sheets;

/// <summary>Reads the text of a page back out of the file through its fonts' own tables, as a reader program does.</summary>
internal static partial class PdfText
{
    public static PdfDocument Open(byte[] pdf) => PdfReader.Open(new MemoryStream(pdf), PdfDocumentOpenMode.Import);

    /// <summary>Text of a page; one line for each string drawn.</summary>
    public static string Of(PdfPage page)
    {
        var fonts = page.Elements.GetDictionary("/Resources")!.Elements.GetDictionary("/Font")!;
        var maps = fonts.Elements.Keys.ToDictionary(
            name => name,
            name => MapOf(fonts.Elements.GetDictionary(name)!),
            StringComparer.Ordinal
        );
        var content = Encoding.Latin1.GetString(page.Contents.CreateSingleContent().Stream.UnfilteredValue);
        var text = new StringBuilder();
        IReadOnlyDictionary<int, string>? map = null;
        foreach (Match m in FontOrText().Matches(content))
        {
            if (m.Groups["font"].Success)
            {
                map = maps[m.Groups["font"].Value];
                continue;
            }

            foreach (var glyph in m.Groups["hex"].Value.Where(char.IsAsciiHexDigit).Chunk(4))
            {
                text.Append(map![int.Parse(glyph, NumberStyles.HexNumber, CultureInfo.InvariantCulture)]);
            }

            text.Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Whether every font of a page carries its letters inside the file.</summary>
    public static bool FontsEmbedded(PdfPage page)
    {
        var fonts = page.Elements.GetDictionary("/Resources")!.Elements.GetDictionary("/Font")!;
        return fonts.Elements.Keys.All(name =>
            Descendant(fonts.Elements.GetDictionary(name)!).Elements.GetDictionary("/FontDescriptor")!.Elements.GetDictionary("/FontFile2")
                is not null
        );
    }

    private static PdfDictionary Descendant(PdfDictionary font)
    {
        var item = font.Elements.GetArray("/DescendantFonts")!.Elements[0];
        return (PdfDictionary)(item is PdfReference r ? r.Value : item);
    }

    private static Dictionary<int, string> MapOf(PdfDictionary font)
    {
        var table = Encoding.Latin1.GetString(font.Elements.GetDictionary("/ToUnicode")!.Stream.UnfilteredValue);
        var map = new Dictionary<int, string>();
        foreach (Match m in Range().Matches(table))
        {
            var from = Hex(m.Groups["from"]);
            for (var i = 0; i <= Hex(m.Groups["to"]) - from; i++)
            {
                map[from + i] = char.ConvertFromUtf32(Hex(m.Groups["code"]) + i);
            }
        }

        return map;
    }

    private static int Hex(Group g) => int.Parse(g.Value, NumberStyles.HexNumber, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(?<font>/F\d+) [-\d.]+ Tf|<(?<hex>[0-9A-Fa-f\s]+)>\s*Tj", RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex FontOrText();

    [GeneratedRegex(@"<(?<from>[0-9A-Fa-f]{4})>\s*<(?<to>[0-9A-Fa-f]{4})>\s*<(?<code>[0-9A-Fa-f]{4})>", RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Range();
}
