using Rinsewright.Contracts.Records;
using Rinsewright.Drawing;

namespace Rinsewright.Files.Sheets;

/// <summary>Paper sizes.</summary>
public enum Paper
{
    /// <summary>210 mm by 297 mm.</summary>
    A4,

    /// <summary>8.5 in by 11 in.</summary>
    Letter,
}

/// <summary>How a sheet is made.</summary>
/// <param name="Paper">Paper size.</param>
/// <param name="Language">Two-letter code; English where there are no words for it.</param>
/// <param name="Units">Units to show.</param>
public sealed record SheetOptions(Paper Paper = Paper.A4, string Language = "en", UnitDisplay Units = UnitDisplay.AsRead);

/// <summary>The sheet for the inspector: a tagged PDF with its font inside, the same bytes for the same document and options.</summary>
public static class ProofSheet
{
    /// <summary>Makes the sheet.</summary>
    /// <param name="document">The proof.</param>
    /// <param name="options">Paper, language, units.</param>
    /// <returns>The PDF file.</returns>
    public static byte[] Make(ProofDocument document, SheetOptions options) =>
        SheetPrinter.Print(ProofSheetContent.For(document, options), options.Paper, document.At, document.Id);
}
