using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace Rinsewright.Files.Sheets;

/// <summary>Something drawn that never parts over two pages.</summary>
/// <param name="Before">Space above it; dropped at the top of a page, pt.</param>
/// <param name="Height">Its height, pt.</param>
/// <param name="Draw">Draws it at a height of a page.</param>
/// <param name="KeepWithNext">Stays on the page of what follows.</param>
/// <param name="Scope">Structure element around it and its neighbours; null for none.</param>
/// <param name="Signs">Carries the lines to sign on.</param>
/// <param name="StartsPage">Stands at the top of a page.</param>
internal sealed record SheetPiece(
    double Before,
    double Height,
    Action<SheetCanvas, double> Draw,
    bool KeepWithNext = false,
    SheetScope? Scope = null,
    bool Signs = false,
    bool StartsPage = false
);

/// <summary>A structure element around several pieces: a table or a list.</summary>
internal sealed class SheetScope(PdfBlockLevelElementTag tag)
{
    public PdfBlockLevelElementTag Tag { get; } = tag;

    /// <summary>Repeated, as an artifact, where the element goes on over a page.</summary>
    public SheetPiece? Repeated { get; set; }
}

/// <summary>Turns blocks into pieces of a given width.</summary>
internal sealed partial class SheetPieces(SheetText text, double width)
{
    private const int LinesAtMost = 30;
    private const double CellPad = 4;

    public IEnumerable<SheetPiece> Of(SheetBlock block) =>
        block switch
        {
            SheetHeading h => [Heading(h)],
            SheetParagraph p => Paragraph(p),
            SheetVerdict v => Verdict(v),
            SheetFacts f => Facts(f),
            SheetTable t => Table(t),
            SheetFigure f => Figure(f),
            SheetPhotos p => Photos(p),
            SheetList l => List(l),
            SheetSignatures s => Signatures(s),
            SheetPageBreak => [new SheetPiece(0, 0, (_, _) => { }, KeepWithNext: true, StartsPage: true)],
            SheetBanner b => [Banner(b)],
            _ => throw new ArgumentException($"No layout for {block.GetType().Name}.", nameof(block)),
        };

    private SheetPiece Heading(SheetHeading h)
    {
        var face = h.Level == 1 ? text.Title : text.Head;
        var lines = text.Wrap(h.Text, face, width, bold: true);
        var tag = h.Level == 1 ? PdfBlockLevelElementTag.Heading1 : PdfBlockLevelElementTag.Heading2;
        var rule = h.Level == 1 ? 0 : 3;
        return new SheetPiece(
            h.Level == 1 ? 0 : 6,
            rule + (lines.Count * face.Line) + 2,
            (c, y) =>
            {
                if (rule > 0)
                {
                    c.Artifact(() => c.Rule(0, width, y, 0.5));
                }

                c.Element(tag, () => c.Lines(lines, face, true, 0, y + rule));
            },
            KeepWithNext: true
        );
    }

    private SheetPiece Banner(SheetBanner b)
    {
        const double Frame = 6;
        var lines = text.Wrap(b.Text, text.Banner, width - (6 * Frame), bold: true);
        var height = (lines.Count * text.Banner.Line) + (4 * Frame);
        return new SheetPiece(
            3 * Frame,
            height,
            (c, y) =>
            {
                c.Artifact(() =>
                {
                    c.Bar(0, y, width, Frame);
                    c.Bar(0, y + height - Frame, width, Frame);
                    c.Bar(0, y, Frame, height);
                    c.Bar(width - Frame, y, Frame, height);
                });
                c.Element(PdfBlockLevelElementTag.Heading1, () => c.Lines(lines, text.Banner, true, 3 * Frame, y + (2 * Frame)));
            },
            KeepWithNext: true
        );
    }

    private IEnumerable<SheetPiece> Paragraph(SheetParagraph p)
    {
        var face = p.Small ? text.Small : text.Body;
        foreach (var lines in text.Wrap(p.Text, face, width, p.Bold).Chunk(LinesAtMost))
        {
            yield return new SheetPiece(
                2,
                lines.Length * face.Line,
                (c, y) => c.Element(PdfBlockLevelElementTag.Paragraph, () => c.Lines(lines, face, p.Bold, 0, y))
            );
        }
    }

    // A bar at the side, the shape, the word; the sentence; each reason on its own line. Reasons may go on over a page, each with its own bar.
    private IEnumerable<SheetPiece> Verdict(SheetVerdict v)
    {
        const double Inset = 14;
        var sentence = text.Wrap(v.Sentence, text.Body, width - Inset, bold: true);
        var head = text.Verdict.Line + (sentence.Count * text.Body.Line) + 4;
        yield return new SheetPiece(
            4,
            head,
            (c, y) =>
            {
                c.Artifact(() =>
                {
                    c.Bar(0, y, 5, head);
                    c.Shape(v.Shape, Inset + 7, y + 10, 7);
                });
                c.Element(PdfBlockLevelElementTag.Paragraph, () => c.Text(v.Word, text.Verdict, true, Inset + 20, y));
                c.Element(PdfBlockLevelElementTag.Paragraph, () => c.Lines(sentence, text.Body, true, Inset, y + text.Verdict.Line + 2));
            },
            KeepWithNext: v.Reasons.Count > 0
        );
        foreach (var reason in v.Reasons)
        {
            foreach (var lines in text.Wrap(reason, text.Body, width - Inset).Chunk(LinesAtMost))
            {
                var height = (lines.Length * text.Body.Line) + 1;
                yield return new SheetPiece(
                    0,
                    height,
                    (c, y) =>
                    {
                        c.Artifact(() => c.Bar(0, y, 5, height));
                        c.Element(PdfBlockLevelElementTag.Paragraph, () => c.Lines(lines, text.Body, false, Inset, y));
                    }
                );
            }
        }
    }

    private IEnumerable<SheetPiece> Figure(SheetFigure f)
    {
        var height = f.Scene.Height * width / f.Scene.Width;
        yield return new SheetPiece(
            2,
            height,
            (c, y) => c.Figure(f.Scene, new XRect(SheetPrinter.Margin, y, width, height)),
            KeepWithNext: true
        );
        foreach (var piece in Paragraph(new SheetParagraph(f.Caption, Small: true)))
        {
            yield return piece;
        }
    }

    private IEnumerable<SheetPiece> List(SheetList list)
    {
        const double Indent = 10;
        var scope = new SheetScope(PdfBlockLevelElementTag.List);
        foreach (var item in list.Items)
        {
            foreach (var lines in text.Wrap(item, text.Body, width - Indent).Chunk(LinesAtMost))
            {
                yield return new SheetPiece(
                    1,
                    lines.Length * text.Body.Line,
                    (c, y) =>
                        c.Element(
                            PdfBlockLevelElementTag.ListItem,
                            () =>
                            {
                                c.Element(PdfBlockLevelElementTag.Label, () => c.Text("–", text.Body, false, 0, y));
                                c.Element(PdfBlockLevelElementTag.ListBody, () => c.Lines(lines, text.Body, false, Indent, y));
                            }
                        ),
                    Scope: scope
                );
            }
        }
    }

    private IEnumerable<SheetPiece> Signatures(SheetSignatures s)
    {
        const double Gap = 24,
            Space = 34;
        var each = (width - Gap) / 2;
        var date = each * 0.32;
        yield return new SheetPiece(
            0,
            Space + text.Body.Line + text.Small.Line,
            (c, y) =>
            {
                for (var i = 0; i < s.Lines.Count; i++)
                {
                    var x = i * (each + Gap);
                    c.Artifact(() =>
                    {
                        c.Rule(x, x + each - date - 8, y + Space, 0.7);
                        c.Rule(x + each - date, x + each, y + Space, 0.7);
                    });
                    c.Element(PdfBlockLevelElementTag.Paragraph, () => c.Text(s.Lines[i], text.Body, true, x, y + Space + 2));
                    c.Element(
                        PdfBlockLevelElementTag.Paragraph,
                        () => c.Text(s.Name, text.Small, false, x, y + Space + 2 + text.Body.Line)
                    );
                    c.Element(PdfBlockLevelElementTag.Paragraph, () => c.Text(s.Date, text.Small, false, x + each - date, y + Space + 4));
                }
            },
            Signs: true
        );
    }
}
