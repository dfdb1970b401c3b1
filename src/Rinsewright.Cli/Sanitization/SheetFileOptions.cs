using System.CommandLine;
using System.Security.Cryptography;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Files.Sheets;

namespace Rinsewright.Cli.Sanitization;

/// <summary>The sheet for the inspector, written as a PDF.</summary>
internal sealed class SheetFileOptions
{
    private readonly Option<string?> paper = Options.Among("--paper", "a4|letter", ["a4", "letter"]);
    private readonly Option<string?> kitchen = Options.One("--kitchen", "NAME");
    private readonly Option<string?> machineName = Options.One("--machine-name", "NAME");
    private readonly Option<string?> technician = Options.One("--technician", "NAME");
    private readonly Option<string?> note = Options.One("--note", "TEXT");

    public Option<string?> File { get; } = Options.One("--sheet", "FILE.pdf");

    public Option[] All => [File, paper, kitchen, machineName, technician, note];

    /// <summary>The paper asked for; checked before anything is read.</summary>
    public Paper Paper(ParseResult parsed, Words words) => SheetFile.PaperOf(parsed, paper, words);

    /// <summary>Writes the sheet: whole or not at all.</summary>
    public async Task WriteAsync(
        ParseResult parsed,
        Words words,
        DateTimeOffset at,
        ProofRequest request,
        ProofReport report,
        Stream? original,
        CancellationToken cancellation
    )
    {
        var path = parsed.GetValue(File)!;
        var files = new List<FileReference>();
        if (original is not null)
        {
            original.Position = 0;
            var hash = await SHA256.HashDataAsync(original, cancellation);
            files.Add(new FileReference(Convert.ToHexStringLower(hash), Path.GetFileName(report.File ?? ""), original.Length));
        }

        var document = new ProofDocument(
            Guid.CreateVersion7(at),
            ProofDocument.CurrentVersion,
            parsed.GetValue(kitchen) ?? "",
            parsed.GetValue(machineName) ?? "",
            parsed.GetValue(technician) ?? "",
            at,
            request,
            report with
            {
                File = report.File is { } name ? Path.GetFileName(name) : null,
            },
            files,
            parsed.GetValue(note)
        );
        var pdf = ProofSheet.Make(document, new SheetOptions(Paper(parsed, words), words.Language));
        await SheetFile.WriteAsync(path, pdf, words, cancellation);
    }
}
