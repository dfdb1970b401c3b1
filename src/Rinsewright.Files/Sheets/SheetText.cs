using PdfSharp.Drawing;

namespace Rinsewright.Files.Sheets;

/// <summary>A letter size with its line height and its two weights.</summary>
internal sealed class SheetFace(double size, double line)
{
    private readonly XFont regular = SheetFonts.Of(size);
    private readonly XFont bold = SheetFonts.Of(size, true);

    public double Size { get; } = size;

    public double Line { get; } = line;

    public XFont Font(bool isBold) => isBold ? bold : regular;
}

/// <summary>Measures and wraps text for paper.</summary>
internal sealed class SheetText : IDisposable
{
    private readonly XGraphics measure = XGraphics.CreateMeasureContext(
        new XSize(1000, 1000),
        XGraphicsUnit.Point,
        XPageDirection.Downwards
    );

    public SheetFace Title { get; } = new(19, 24);

    public SheetFace Banner { get; } = new(34, 42);

    public SheetFace Head { get; } = new(11.5, 15);

    public SheetFace Verdict { get; } = new(16, 20);

    public SheetFace Body { get; } = new(9.6, 12.4);

    public SheetFace Cell { get; } = new(8.8, 11.2);

    public SheetFace Small { get; } = new(8, 10);

    public double Width(string text, SheetFace face, bool bold = false) => measure.MeasureString(text, face.Font(bold)).Width;

    /// <summary>Lines no wider than <paramref name="width"/>: broken at spaces; a longer word is broken where it must.</summary>
    public List<string> Wrap(string text, SheetFace face, double width, bool bold = false)
    {
        var lines = new List<string>();
        foreach (var paragraph in text.ReplaceLineEndings("\n").Split('\n'))
        {
            var line = "";
            foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                var longer = line.Length == 0 ? word : line + " " + word;
                if (Width(longer, face, bold) <= width)
                {
                    line = longer;
                    continue;
                }

                if (line.Length > 0)
                {
                    lines.Add(line);
                }

                line = word;
                while (Width(line, face, bold) > width && line.Length > 1)
                {
                    var fits = line.Length - 1;
                    while (fits > 1 && Width(line[..fits], face, bold) > width)
                    {
                        fits--;
                    }

                    lines.Add(line[..fits]);
                    line = line[fits..];
                }
            }

            lines.Add(line);
        }

        return lines;
    }

    public void Dispose() => measure.Dispose();
}
