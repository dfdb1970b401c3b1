using System.CommandLine;
using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Files.Sanitization;

namespace Rinsewright.Cli.Sanitization;

/// <summary><c>rinsewright proof FILE...</c>: each file (or the typed-in readings alone) to a report, a table or JSON, and a sheet.</summary>
internal sealed class ProofCommand
{
    private readonly Argument<string[]> files = new("files") { HelpName = "FILE", Arity = ArgumentArity.ZeroOrMore };
    private readonly ProofOptions options = new();
    private readonly Words words;
    private readonly Terminal terminal;

    private ProofCommand(Words words, Terminal terminal)
    {
        this.words = words;
        this.terminal = terminal;
    }

    public static Command Make(Words words, Terminal terminal)
    {
        var proof = new ProofCommand(words, terminal);
        var command = new DescribedCommand("proof", words) { proof.files };
        proof.options.AddTo(command);
        command.SetAction(proof.RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        var paths = parsed.GetValue(files) ?? [];
        CheckUse(parsed, paths);
        var request = await options.ReadAsync(parsed, words, terminal, paths.Length > 0, cancellation);
        var reports = new List<ProofReport>();
        var status = ExitStatus.Proven;
        foreach (var path in paths.Length > 0 ? paths : new string?[] { null })
        {
            try
            {
                var report = await ProveAsync(parsed, request, path, cancellation);
                reports.Add(report);
                status = ExitStatus.Worse(status, ExitStatus.Of(report.Verdict));
                if (!parsed.GetValue(options.Json))
                {
                    new ProofText(
                        terminal.Output,
                        words,
                        parsed.GetValue(options.Machine) is not null,
                        parsed.GetValue(options.Working)
                    ).Write(report, first: reports.Count == 1);
                }
            }
            catch (Exception e) when (path is not null && e is not (OperationCanceledException or UsageException or ContractException))
            {
                // The message names the file; one unreadable file does not keep the others from being read.
                var (failed, message) = CommandLine.Explain(e, words);
                terminal.Error.WriteLine(
                    words.Say("cli.error.in-file", ("file", path == "-" ? words["cli.standard-input"] : path!), ("message", message))
                );
                status = ExitStatus.Worse(status, failed);
            }
        }

        if (parsed.GetValue(options.Json))
        {
            terminal.Output.Write(
                paths.Length > 1 ? $"[{string.Join(",\n", reports.Select(Json))}]\n" : string.Concat(reports.Select(r => Json(r) + "\n"))
            );
        }

        return status;
    }

    private void CheckUse(ParseResult parsed, string[] paths)
    {
        if (paths.FirstOrDefault(p => p.Length > 1 && p[0] == '-') is { } option)
        {
            var said = words.Say("cli.error.unknown-option", ("option", option));
            throw new UsageException($"{said} {words.Say("cli.error.see-help", ("command", "rinsewright proof"))}");
        }

        if (paths.Length == 0 && !options.HasReadings(parsed))
        {
            throw new UsageException(
                $"{words["cli.error.nothing-to-prove"]} {words.Say("cli.error.see-help", ("command", "rinsewright proof"))}"
            );
        }

        if (paths.Length > 1 && parsed.GetValue(options.Sheet.File) is not null)
        {
            throw new UsageException(words["cli.error.one-sheet"]);
        }

        if (paths.Count(p => p == "-") > 1)
        {
            throw new UsageException(words["cli.error.one-input"]);
        }

        _ = options.Sheet.Paper(parsed, words);
    }

    private async Task<ProofReport> ProveAsync(ParseResult parsed, ProofRequest request, string? path, CancellationToken cancellation)
    {
        await using var file = path is null ? null : await InputFile.OpenAsync(path, terminal, words, cancellation);
        var name = path == "-" ? words["cli.standard-input"] : path ?? "";
        var channels = await options.Dialect.ReadChannelsAsync(parsed, words, file, name, cancellation);
        if (file is not null)
        {
            file.Position = 0;
        }

        var asked = request with { Channels = channels };
        var progress = terminal.ErrorIsInteractive ? new ProgressLine(terminal, words, Path.GetFileName(name)) : null;
        ProofReport report;
        try
        {
            report = await ProofRun.RunAsync(asked, file, name, progress, cancellation);
        }
        finally
        {
            progress?.Clear();
        }

        if (parsed.GetValue(options.Sheet.File) is not null)
        {
            await options.Sheet.WriteAsync(parsed, words, terminal.Clock.GetLocalNow(), asked, report, file, cancellation);
        }

        return report;
    }

    private static string Json(ProofReport report) => JsonSerializer.Serialize(report, PlainJson.Contracts.ProofReport);
}
