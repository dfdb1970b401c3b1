using System.Runtime.CompilerServices;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Visits.History;
using Rinsewright.Files.Sheets;

namespace Rinsewright.Client.Machines;

/// <summary>The history as the screen prints it; apart, so that the page opens without what makes PDFs.</summary>
public static class HistoryPrinting
{
    /// <summary>The PDF.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static byte[] Make(MachineHistory history, string machine, string kitchen, string paper, string language, UnitDisplay units) =>
        HistorySheet.Print(
            new HistoryPaper(history, machine, kitchen),
            new SheetOptions(paper == "a4" ? Paper.A4 : Paper.Letter, language, units)
        );
}
