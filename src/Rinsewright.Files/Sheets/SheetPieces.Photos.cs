using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace Rinsewright.Files.Sheets;

internal sealed partial class SheetPieces
{
    private const double PhotoGap = 12;
    private const double PhotoHeight = 190;

    // Two to a row, each as large as its half and the height allow; what it shows below it.
    private IEnumerable<SheetPiece> Photos(SheetPhotos block)
    {
        var half = (width - PhotoGap) / 2;
        foreach (var row in block.Photos.Chunk(2))
        {
            var photos = row.Select(p => (Image: Read(p), Lines: text.Wrap(p.Text, text.Small, half), p.Text)).ToList();
            var height = photos.Max(p => SizeOf(p.Image, half).Height);
            yield return new SheetPiece(
                6,
                height + (photos.Max(p => p.Lines.Count) * text.Small.Line) + 2,
                (c, y) =>
                {
                    for (var i = 0; i < photos.Count; i++)
                    {
                        var (image, lines, said) = photos[i];
                        var x = i * (half + PhotoGap);
                        if (image is not null)
                        {
                            var size = SizeOf(image, half);
                            c.Photo(image, said, new XRect(SheetPrinter.Margin + x, y + height - size.Height, size.Width, size.Height));
                        }

                        c.Element(PdfBlockLevelElementTag.Paragraph, () => c.Lines(lines, text.Small, false, x, y + height + 2));
                    }
                }
            );
        }
    }

    private static XSize SizeOf(XImage? image, double half)
    {
        if (image is null)
        {
            return new XSize(0, 0);
        }

        var scale = Math.Min(half / image.PixelWidth, PhotoHeight / image.PixelHeight);
        return new XSize(image.PixelWidth * scale, image.PixelHeight * scale);
    }

    // A photograph comes from outside: one that cannot be read costs its picture, never the paper.
    private static XImage? Read(SheetPhoto photo)
    {
        try
        {
            return XImage.FromStream(new MemoryStream(photo.Bytes.ToArray()));
        }
        catch (Exception e)
            when (e is InvalidOperationException or NotSupportedException or ArgumentException or IOException or IndexOutOfRangeException)
        {
            return null;
        }
    }
}
