using Rinsewright.Contracts.Visits;
using Rinsewright.Drawing;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Files.Sheets;

/// <summary>Who has signed a visit, with what the finger drew, and lines for who has not.</summary>
internal sealed class VisitSignatureBlocks(VisitPaper paper, VisitSheetWords said)
{
    public IEnumerable<SheetBlock> Blocks()
    {
        yield return new SheetHeading(2, said.Words["visit.sheet.signatures"]);
        foreach (var line in Signed())
        {
            yield return line;
        }

        if (Drawn() is { } drawn)
        {
            yield return drawn;
        }

        // Whoever has signed on the screen needs no line to sign on: with both, the first page stays one page.
        string[] unsigned =
        [
            .. new[] { (Side: SignedFor.Technician, Line: "sheet.sign-technician"), (Side: SignedFor.Kitchen, Line: "sheet.sign-kitchen") }
                .Where(s => paper.Visit.Signatures.All(n => n.For != s.Side))
                .Select(s => said.Words[s.Line]),
        ];
        if (unsigned.Length > 0)
        {
            yield return new SheetSignatures(unsigned, said.Words["sheet.sign-name"], said.Words["sheet.sign-date"]);
        }
    }

    // Both in one drawing, side by side, each under its name above.
    private SheetFigure? Drawn()
    {
        const double Apart = 40;
        var marks = new List<SceneMark>();
        var names = new List<string>();
        foreach (var signature in paper.Visit.Signatures.OrderBy(s => s.For))
        {
            if (signature.Strokes is not { Length: > 0 } strokes)
            {
                continue;
            }

            var left = signature.For == SignedFor.Technician ? 0 : SignatureStrokes.Width + Apart;
            names.Add(signature.Name);
            marks.AddRange(
                SignatureStrokes
                    .Read(strokes, "strokes")
                    .Where(s => s.Count > 1)
                    .Select(s => new SceneLine("trace", [.. s.Select(p => new ScenePoint(left + p.X, p.Y))]))
            );
        }

        return marks.Count == 0
            ? null
            : new SheetFigure(
                new Scene(
                    (2 * SignatureStrokes.Width) + Apart,
                    SignatureStrokes.Height,
                    said.Words["visit.sheet.signatures"],
                    string.Join(", ", names),
                    marks,
                    []
                ),
                said.Words["visit.sheet.by-finger"]
            );
    }

    private IEnumerable<SheetBlock> Signed() =>
        paper
            .Visit.Signatures.OrderBy(s => s.For)
            .Select(s => new SheetParagraph(
                said.Words.Say(
                    "visit.sheet.signed",
                    ("side", said.Capital(s.For)),
                    ("name", s.Name),
                    ("date", said.Words.MomentAndZone(s.At))
                )
            ));
}
