using Rinsewright.Contracts.Records;
using Rinsewright.Drawing;
using Rinsewright.Engine.Bench;
using Rinsewright.Files.Sheets;

namespace Rinsewright.Client.Bench;

/// <summary>The sheet of a sum as the screen makes it; apart, so that the page opens without what makes PDFs.</summary>
public static class BenchPaper
{
    /// <summary>The PDF; null while the tool has no answer.</summary>
    public static byte[]? Make(
        BenchTool tool,
        BenchInput input,
        DateTimeOffset at,
        (string Kitchen, string Machine, string By) head,
        string paper,
        string language,
        UnitDisplay units
    ) =>
        BenchSheet.Make(
            tool,
            input,
            new BenchSheetHead(Guid.CreateVersion7(at), at, head.Kitchen, head.Machine, head.By),
            new SheetOptions(paper == "a4" ? Paper.A4 : Paper.Letter, language, units)
        );
}
