using System.Globalization;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Files.Sheets;

namespace Rinsewright.Client.Sanitization;

/// <summary>The sheet as the screen makes it.</summary>
public static class SheetMaking
{
    /// <summary>The PDF.</summary>
    public static byte[] Make(ProofDocument proof, string paper, string language, UnitDisplay units) =>
        ProofSheet.Make(proof, new SheetOptions(paper == "a4" ? Paper.A4 : Paper.Letter, language, units));

    /// <summary>A file name that says kitchen, day and what it is.</summary>
    public static string FileName(ProofDocument proof, Words words)
    {
        var kitchen = string.Concat(proof.Kitchen.ToLowerInvariant().Select(c => char.IsLetterOrDigit(c) ? c : '-')).Trim('-');
        return $"{words["client.sheet.file"]}{(kitchen.Length > 0 ? "-" + kitchen : "")}-{proof.At.ToString("yyyy-MM-dd-HHmm", CultureInfo.InvariantCulture)}.pdf";
    }
}
