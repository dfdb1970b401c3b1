using System.Collections.Concurrent;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace Rinsewright.Files.Sheets;

/// <summary>The one face of every sheet, embedded in the assembly: the same on every machine and in the browser.</summary>
internal static class SheetFonts
{
    /// <summary>Family name.</summary>
    public const string Family = "Rinsewright Sans";

    // The library keeps one resolver per process; set before the first font is made.
    private static readonly Lazy<bool> Installed = new(() =>
    {
        GlobalFontSettings.FontResolver ??= new Resolver();
        return true;
    });

    /// <summary>A font, its letters embedded as Unicode.</summary>
    /// <param name="size">Letter size, pt.</param>
    /// <param name="bold">Bold or regular.</param>
    public static XFont Of(double size, bool bold = false)
    {
        _ = Installed.Value;
        return new XFont(Family, size, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular, new XPdfFontOptions(PdfFontEncoding.Unicode));
    }

    /// <summary>
    /// A no-break space shares its glyph with the space, and the file's table of letters can name only one of them: lines are broken before
    /// drawing, so the plain space is drawn and the text can be searched.
    /// </summary>
    public static string Drawable(string text) => text.Replace('\u00a0', ' ');

    private sealed class Resolver : IFontResolver
    {
        private static readonly ConcurrentDictionary<string, byte[]> Files = new(StringComparer.Ordinal);

        public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
            new(isBold ? "RinsewrightSans-Bold" : "RinsewrightSans-Regular");

        public byte[]? GetFont(string faceName) => Files.GetOrAdd(faceName, Load);

        private static byte[] Load(string face)
        {
            using var stream =
                typeof(SheetFonts).Assembly.GetManifestResourceStream($"Fonts/{face}.ttf")
                ?? throw new InvalidOperationException($"The font {face} is missing from the build.");
            using var bytes = new MemoryStream();
            stream.CopyTo(bytes);
            return bytes.ToArray();
        }
    }
}
