using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace Rinsewright.Files.Sheets;

/// <summary>Lays a sheet's pieces out on pages and writes the tagged PDF.</summary>
internal static class SheetPrinter
{
    /// <summary>15 mm, pt.</summary>
    public const double Margin = 15 / 25.4 * 72;

    private const double FootHeight = 16;

    /// <summary>A page: its pieces and where they stand.</summary>
    internal sealed record Page(List<(SheetPiece Piece, double Y)> Placed);

    /// <summary>The PDF file.</summary>
    /// <param name="model">What it says.</param>
    /// <param name="paper">Paper size.</param>
    /// <param name="at">Date written into the file, so that the same document gives the same bytes.</param>
    /// <param name="id">Identity of the document.</param>
    public static byte[] Print(SheetModel model, Paper paper, DateTimeOffset at, Guid id)
    {
        using var text = new SheetText();
        var size = SizeOf(paper);
        var pages = Paginate(model, text, size);

        using var pdf = new PdfDocument();
        pdf.Info.Title = model.Title;
        pdf.Info.Subject = model.Subject;
        pdf.Info.Author = model.Author;
        pdf.Info.Creator = "Rinsewright";
        pdf.Info.CreationDate = at.UtcDateTime;
        pdf.Info.ModificationDate = at.UtcDateTime;
        pdf.ViewerPreferences.DisplayDocTitle = true;
        pdf.Internals.FirstDocumentID = id.ToString("N");
        pdf.Internals.SecondDocumentID = id.ToString("N");

        // Before the first page's graphics: else nothing is tagged.
        var accessibility = UAManager.ForDocument(pdf);
        accessibility.SetDocumentLanguage(model.Language);
        var tags = accessibility.StructureBuilder;
        SheetScope? open = null;
        for (var n = 0; n < pages.Count; n++)
        {
            var page = pdf.AddPage();
            page.Width = XUnit.FromPoint(size.Width);
            page.Height = XUnit.FromPoint(size.Height);
            using var graphics = XGraphics.FromPdfPage(page);
            var canvas = new SheetCanvas(graphics, tags, Margin);
            foreach (var (piece, y) in pages[n].Placed)
            {
                if (piece.Scope != open && !IsRepeated(piece, open))
                {
                    open = Switch(tags, open, piece.Scope);
                }

                piece.Draw(canvas, y);
            }

            if (n == pages.Count - 1)
            {
                open = Switch(tags, open, null);
            }

            Foot(canvas, text, model, size, n + 1, pages.Count);
        }

        using var file = new MemoryStream();
        pdf.Save(file, false);
        var bytes = file.ToArray();
        FixedNames.Write(bytes, id);
        return bytes;
    }

    /// <summary>Pieces on pages: heads stay with what they head, tables go on with their head repeated.</summary>
    /// <remarks>A chart gives up height where that spares a page or brings the signatures to an earlier one, and no more than that takes.</remarks>
    internal static List<Page> Paginate(SheetModel model, SheetText text, XSize size)
    {
        var best = PaginateAsIs(model, text, size);
        var steps = model.Blocks.OfType<SheetFigure>().Select(f => f.Lower?.Count ?? 0).DefaultIfEmpty().Max();
        for (var step = 0; step < steps; step++)
        {
            var lower = model with
            {
                Blocks =
                [
                    .. model.Blocks.Select(b =>
                        b is SheetFigure { Lower: { Count: > 0 } scenes } f
                            ? f with
                            {
                                Scene = scenes[Math.Min(step, scenes.Count - 1)],
                            }
                            : b
                    ),
                ],
            };
            var pages = PaginateAsIs(lower, text, size);
            best = (SignedOn(pages), pages.Count).CompareTo((SignedOn(best), best.Count)) < 0 ? pages : best;
        }

        return best;
    }

    private static int SignedOn(List<Page> pages) => pages.FindIndex(p => p.Placed.Exists(placed => placed.Piece.Signs));

    private static List<Page> PaginateAsIs(SheetModel model, SheetText text, XSize size)
    {
        var pieces = model.Blocks.SelectMany(new SheetPieces(text, size.Width - (2 * Margin)).Of).ToList();
        var bottom = size.Height - Margin - FootHeight;
        var page = new Page([]);
        List<Page> pages = [page];
        var y = Margin;
        for (var i = 0; i < pieces.Count; i++)
        {
            var piece = pieces[i];
            if (page.Placed.Count > 0 && (piece.StartsPage || y + Together(pieces, i) > bottom))
            {
                page = new Page([]);
                pages.Add(page);
                y = Margin;
                if (i > 0 && piece.Scope is { Repeated: { } head } && pieces[i - 1].Scope == piece.Scope)
                {
                    page.Placed.Add((head, y));
                    y += head.Height;
                }
            }

            y += page.Placed.Count > 0 ? piece.Before : 0;
            page.Placed.Add((piece, y));
            y += piece.Height;
        }

        return pages;
    }

    internal static XSize SizeOf(Paper paper) => paper == Paper.A4 ? new XSize(210 / 25.4 * 72, 297 / 25.4 * 72) : new XSize(612, 792);

    private static double Together(List<SheetPiece> pieces, int first)
    {
        var height = 0.0;
        for (var i = first; i < pieces.Count; i++)
        {
            height += pieces[i].Before + pieces[i].Height;
            if (!pieces[i].KeepWithNext)
            {
                break;
            }
        }

        return height;
    }

    private static bool IsRepeated(SheetPiece piece, SheetScope? open) => open is not null && ReferenceEquals(open.Repeated, piece);

    private static SheetScope? Switch(StructureBuilder tags, SheetScope? open, SheetScope? next)
    {
        if (open is not null)
        {
            tags.End();
        }

        if (next is not null)
        {
            tags.BeginElement(next.Tag);
        }

        return next;
    }

    private static void Foot(SheetCanvas canvas, SheetText text, SheetModel model, XSize size, int page, int pages)
    {
        var width = size.Width - (2 * Margin);
        var y = size.Height - Margin - text.Small.Line;
        var number = model
            .PageOf.Replace("{page}", $"{page}", StringComparison.Ordinal)
            .Replace("{pages}", $"{pages}", StringComparison.Ordinal);
        var numberWidth = text.Width(number, text.Small);
        var dateWidth = text.Width(model.FootMiddle, text.Small);
        var left = text.Wrap(model.FootLeft, text.Small, width - numberWidth - dateWidth - 40)[0];
        canvas.Artifact(() =>
        {
            canvas.Rule(0, width, y - 2, 0.5);
            canvas.Text(left, text.Small, false, 0, y);
            canvas.Text(model.FootMiddle, text.Small, false, width - numberWidth - 20 - dateWidth, y);
            canvas.Text(number, text.Small, false, width - numberWidth, y);
        });
    }
}
