using System.CommandLine;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Files.Sheets;

namespace Rinsewright.Cli;

/// <summary>A sheet as a PDF file.</summary>
internal static class SheetFile
{
    private static readonly string[] Shown = ["as-read", "us", "si"];

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

    /// <summary>In which units a sheet may show its figures.</summary>
    public static Option<string?> Units() => Options.Among("--units", string.Join('|', Shown), Shown);

    /// <summary>The units asked for; checked before anything is read.</summary>
    public static UnitDisplay UnitsOf(ParseResult parsed, Option<string?> units, Words words) =>
        CommandLine.Among(words, units.Name, parsed.GetValue(units) ?? Shown[0], Shown) switch
        {
            "us" => UnitDisplay.Us,
            "si" => UnitDisplay.Si,
            _ => UnitDisplay.AsRead,
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
