using System.Security.Cryptography;
using System.Text;
using Rinsewright.Engine.Visits.History;

namespace Rinsewright.Files.Sheets;

/// <summary>A machine history ready for paper.</summary>
/// <param name="History">The history.</param>
/// <param name="Machine">What the machine is called.</param>
/// <param name="Kitchen">Kitchen; empty where not said.</param>
public sealed record HistoryPaper(MachineHistory History, string Machine, string Kitchen);

/// <summary>The history on paper: a tagged PDF, the same bytes for the same history and options.</summary>
public static class HistorySheet
{
    /// <summary>The PDF.</summary>
    public static byte[] Print(HistoryPaper paper, SheetOptions options) =>
        SheetPrinter.Print(
            Model(paper, options),
            options.Paper,
            new DateTimeOffset(paper.History.Today.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero),
            IdOf(paper)
        );

    /// <summary>Its content.</summary>
    public static SheetModel Model(HistoryPaper paper, SheetOptions options) => new MachineHistoryContent(paper, options).Model();

    // The same visits of the same machine give the same file.
    private static Guid IdOf(HistoryPaper paper) =>
        new(
            SHA256
                .HashData(Encoding.UTF8.GetBytes(string.Join('|', paper.History.Visits.Select(v => v.Id).Append(paper.Machine))))
                .AsSpan(0, 16)
        );
}
