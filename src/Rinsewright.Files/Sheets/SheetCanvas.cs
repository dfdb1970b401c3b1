using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;
using Rinsewright.Drawing;

namespace Rinsewright.Files.Sheets;

/// <summary>A page being drawn, with its tags: text goes into structure elements, everything else is marked as artifact.</summary>
internal sealed class SheetCanvas(XGraphics graphics, StructureBuilder tags, double left)
{
    public StructureBuilder Tags => tags;

    /// <summary>Draws inside an artifact: rules, shapes, page feet, repeated heads.</summary>
    public void Artifact(Action draw)
    {
        tags.BeginArtifact();
        draw();
        tags.End();
    }

    public void Element(PdfBlockLevelElementTag tag, Action draw)
    {
        tags.BeginElement(tag);
        draw();
        tags.End();
    }

    public void Figure(Scene scene, XRect place)
    {
        tags.BeginElement(PdfIllustrationElementTag.Figure, $"{scene.Title}. {scene.Description}", place);
        PdfPainter.Paint(scene, graphics, place);
        tags.End();
    }

    public void Photo(XImage image, string text, XRect place)
    {
        tags.BeginElement(PdfIllustrationElementTag.Figure, text, place);
        graphics.DrawImage(image, place);
        tags.End();
    }

    public void Lines(IReadOnlyList<string> lines, SheetFace face, bool bold, double x, double y)
    {
        for (var i = 0; i < lines.Count; i++)
        {
            Text(lines[i], face, bold, x, y + (i * face.Line));
        }
    }

    /// <summary>One line; <paramref name="y"/> is the top of its line box.</summary>
    public void Text(string text, SheetFace face, bool bold, double x, double y)
    {
        if (text.Length > 0)
        {
            graphics.DrawString(SheetFonts.Drawable(text), face.Font(bold), XBrushes.Black, left + x, y + (face.Line * 0.76));
        }
    }

    public void Rule(double x1, double x2, double y, double width) =>
        graphics.DrawLine(new XPen(XColors.Black, width), left + x1, y, left + x2, y);

    public void Bar(double x, double y, double width, double height) => graphics.DrawRectangle(XBrushes.Black, left + x, y, width, height);

    public void Shape(StatusShape shape, double x, double y, double radius)
    {
        var scene = new Scene(2 * radius, 2 * radius, "", "", [new SceneStatus(shape, radius, radius, radius)], []);
        PdfPainter.Paint(scene, graphics, new XRect(left + x - radius, y - radius, 2 * radius, 2 * radius));
    }
}
