using PdfSharp.UniversalAccessibility;
using Rinsewright.Drawing;

namespace Rinsewright.Files.Sheets;

internal sealed partial class SheetPieces
{
    private const double ShapeRoom = 12;

    // Name and value side by side, two pairs to a line; a long value and an odd last pair have the whole width.
    private IEnumerable<SheetPiece> Facts(SheetFacts facts)
    {
        var scope = new SheetScope(PdfBlockLevelElementTag.Table);
        var name = facts.Pairs.Max(p => text.Width(p.Name, text.Cell)) + 8;
        var half = width / 2;
        bool Long((string Name, string Value) pair) => text.Wrap(pair.Value, text.Body, half - name - 8).Count > 2;
        for (var i = 0; i < facts.Pairs.Count; )
        {
            var at = i;
            var alone = i + 1 == facts.Pairs.Count || Long(facts.Pairs[i]) || Long(facts.Pairs[i + 1]);
            i += alone ? 1 : 2;
            var row = facts
                .Pairs.Skip(at)
                .Take(alone ? 1 : 2)
                .Select(p => (p.Name, Lines: text.Wrap(p.Value, text.Body, (alone ? width : half) - name - 8)))
                .ToArray();
            var height = (row.Max(r => r.Lines.Count) * text.Body.Line) + 2;
            yield return new SheetPiece(
                0,
                height,
                (c, y) =>
                    c.Element(
                        PdfBlockLevelElementTag.TableRow,
                        () =>
                        {
                            for (var k = 0; k < row.Length; k++)
                            {
                                var x = k * half;
                                c.Element(PdfBlockLevelElementTag.TableHeaderCell, () => c.Text(row[k].Name, text.Cell, false, x, y + 0.8));
                                c.Element(
                                    PdfBlockLevelElementTag.TableDataCell,
                                    () =>
                                    {
                                        if (alone)
                                        {
                                            c.Tags.SetColSpan(3);
                                        }

                                        c.Lines(row[k].Lines, text.Body, k == 0 && at == 0, x + name, y);
                                    }
                                );
                            }
                        }
                    ),
                Scope: scope
            );
        }
    }

    private IEnumerable<SheetPiece> Table(SheetTable table)
    {
        var scope = new SheetScope(PdfBlockLevelElementTag.Table);
        var shares = table.Columns.Sum(c => c.Share);
        var widths = table.Columns.Select(c => c.Share / shares * width).ToArray();
        var lefts = widths.Select((_, i) => widths.Take(i).Sum()).ToArray();

        var heads = table.Columns.Select((c, i) => text.Wrap(c.Head, text.Cell, widths[i] - (2 * CellPad), bold: true)).ToArray();
        var headHeight = (heads.Max(h => h.Count) * text.Cell.Line) + 4;
        scope.Repeated = new SheetPiece(0, headHeight, (c, y) => c.Artifact(() => DrawHead(c, y)));
        yield return new SheetPiece(
            2,
            headHeight,
            (c, y) =>
            {
                c.Artifact(() => c.Rule(0, width, y + headHeight - 1, 1));
                c.Element(
                    PdfBlockLevelElementTag.TableRow,
                    () =>
                    {
                        for (var i = 0; i < heads.Length; i++)
                        {
                            c.Element(
                                PdfBlockLevelElementTag.TableHeaderCell,
                                () => DrawCell(c, heads[i], true, table.Columns[i].Right, lefts[i], widths[i], y)
                            );
                        }
                    }
                );
            },
            KeepWithNext: true,
            Scope: scope
        );
        for (var n = 0; n < table.Rows.Count; n++)
        {
            // A head never stands over a single row of several.
            yield return Row(table, table.Rows[n], lefts, widths, scope) with
            {
                KeepWithNext = n == 0 && table.Rows.Count > 1,
            };
        }

        void DrawHead(SheetCanvas c, double y)
        {
            for (var i = 0; i < heads.Length; i++)
            {
                DrawCell(c, heads[i], true, table.Columns[i].Right, lefts[i], widths[i], y);
            }

            c.Rule(0, width, y + headHeight - 1, 1);
        }
    }

    private SheetPiece Row(SheetTable table, IReadOnlyList<SheetCell> row, double[] lefts, double[] widths, SheetScope scope)
    {
        var cells = row.Select(
                (c, i) => text.Wrap(c.Text, text.Cell, widths[i] - (2 * CellPad) - (c.Shape is null ? 0 : ShapeRoom), c.Bold)
            )
            .ToArray();
        var height = (cells.Max(c => c.Count) * text.Cell.Line) + 4;
        return new SheetPiece(
            0,
            height,
            (c, y) =>
            {
                c.Artifact(() =>
                {
                    c.Rule(0, width, y + height - 0.4, 0.3);
                    for (var i = 0; i < row.Count; i++)
                    {
                        if (row[i].Shape is { } shape)
                        {
                            c.Shape(shape, lefts[i] + CellPad + 4, y + 7.4, 3.6);
                        }
                    }
                });
                c.Element(
                    PdfBlockLevelElementTag.TableRow,
                    () =>
                    {
                        for (var i = 0; i < row.Count; i++)
                        {
                            var inset = row[i].Shape is null ? 0 : ShapeRoom;
                            c.Element(
                                PdfBlockLevelElementTag.TableDataCell,
                                () => DrawCell(c, cells[i], row[i].Bold, table.Columns[i].Right, lefts[i] + inset, widths[i] - inset, y)
                            );
                        }
                    }
                );
            },
            Scope: scope
        );
    }

    private void DrawCell(SheetCanvas c, List<string> lines, bool bold, bool right, double x, double cellWidth, double y)
    {
        for (var i = 0; i < lines.Count; i++)
        {
            var at = right ? x + cellWidth - (2.5 * CellPad) - text.Width(lines[i], text.Cell, bold) : x + CellPad;
            c.Text(lines[i], text.Cell, bold, at, y + 1.5 + (i * text.Cell.Line));
        }
    }
}
