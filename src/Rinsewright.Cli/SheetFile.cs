using System.CommandLine;
using Rinsewright.Contracts.Language;
using Rinsewright.Files.Sheets;

namespace Rinsewright.Cli;

/// <summary>A sheet as a PDF file.</summary>
internal static class SheetFile
{
    /// <summary>The paper asked for; checked before anything is read.</summary>
    public static Paper PaperOf(ParseResult parsed, Option<string?> paper, Words words) =>
        parsed.GetValue(paper)?.ToLowerInvariant() switch
        {
            null or "letter" => Paper.Letter,
            "a4" => Paper.A4,
            var other => throw new UsageException(
                words.Say("cli.error.not-among", ("option", paper.Name), ("value", other), ("values", "a4, letter"))
            ),
        };

    /// <summary>Writes the sheet: whole or not at all.</summary>
    public static async Task WriteAsync(string path, byte[] pdf, Words words, CancellationToken cancellation)
    {
        var whole = Path.GetFullPath(path);
        if (!Directory.Exists(Path.GetDirectoryName(whole)))
        {
            throw new InputException(ExitStatus.InputOutput, words.Say("cli.error.sheet-folder", ("file", path)));
        }

        var part = Path.Combine(Path.GetDirectoryName(whole)!, $".{Path.GetFileName(whole)}.{Guid.NewGuid():N}.part");
        try
        {
            await File.WriteAllBytesAsync(part, pdf, cancellation);
            File.Move(part, whole, overwrite: true);
        }
        finally
        {
            File.Delete(part);
        }
    }
}
