using System.Runtime.CompilerServices;
using Rinsewright.Engine.Machines;
using Rinsewright.Files.Sheets;

namespace Rinsewright.Client.Machines;

/// <summary>The label sheet as the screen makes it; apart, so that the page opens without what makes PDFs.</summary>
public static class LabelPrinting
{
    /// <summary>The PDF.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static byte[] Make(Guid id, Machine machine, string origin, DateTimeOffset at, string paper, string language) =>
        LabelSheet.Make(id, machine, origin, at, new SheetOptions(paper == "a4" ? Paper.A4 : Paper.Letter, language));
}
