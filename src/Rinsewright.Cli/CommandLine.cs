using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;
using Rinsewright.Cli.Bench;
using Rinsewright.Cli.Machines;
using Rinsewright.Cli.Sanitization;
using Rinsewright.Cli.Visits;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Files.Loggers;

namespace Rinsewright.Cli;

/// <summary>The whole program: arguments and streams in, exit status out. Never throws, never shows a stack trace.</summary>
internal static class CommandLine
{
    /// <summary>Runs one command.</summary>
    /// <param name="args">Arguments as the shell gives them.</param>
    /// <param name="terminal">What the program is connected to.</param>
    /// <param name="cancellation">Set by Ctrl-C.</param>
    public static async Task<int> RunAsync(IReadOnlyList<string> args, Terminal terminal, CancellationToken cancellation)
    {
        var words = Words.For(LanguageOf(args));
        try
        {
            var status = await RunAsync(args, terminal, words, cancellation);
            await terminal.Output.FlushAsync(cancellation);
            return status;
        }
        catch (OperationCanceledException)
        {
            terminal.Error.WriteLine(words["cli.cancelled"]);
            return ExitStatus.Cancelled;
        }
        catch (Exception e)
        {
            var (status, message) = Explain(e, words);
            terminal.Error.WriteLine(words.Say("cli.error", ("message", message)));
            return status;
        }
    }

    /// <summary>All commands; tests and completion scripts walk through them.</summary>
    internal static RootCommand Root(Words words, Terminal terminal)
    {
        var root = new RootCommand(words["cli.about"]);
        root.Options.OfType<HelpOption>().Single().Description = words["cli.option.help"];
        root.Options.OfType<VersionOption>().Single().Description = words["cli.option.version"];
        root.Add(ProofCommand.Make(words, terminal));
        root.Add(LimitsCommand.Make(words, terminal));
        root.Add(MachineCommand.Make(words, terminal));
        root.Add(BenchCommand.Make(words, terminal));
        root.Add(VisitCommand.Make(words, terminal));
        root.Add(CompletionCommand.Make(words, terminal));
        return root;
    }

    /// <summary>What an expected failure means to a person, and its status.</summary>
    internal static (int Status, string Message) Explain(Exception e, Words words) =>
        e switch
        {
            UsageException => (ExitStatus.BadUsage, e.Message),
            ContractException { Says: { } says } => (ExitStatus.BadUsage, words.Say(Wire.From(says))),
            ContractException => (ExitStatus.BadUsage, e.Message),
            InputException input => (input.Status, e.Message),
            MachineFileException machine => (ExitStatus.UnreadableData, machine.Message),
            RuleSetException => (ExitStatus.UnreadableData, words.Say("cli.error.rules", ("problem", e.Message))),
            UnreadableFileException unreadable => (ExitStatus.UnreadableData, words.Say(Wire.From(unreadable.Says))),
            UnauthorizedAccessException => (ExitStatus.InputOutput, words.Say("cli.error.io", ("problem", e.Message))),
            IOException => (ExitStatus.InputOutput, words.Say("cli.error.io", ("problem", e.Message))),
            _ => (ExitStatus.ProgramFault, words.Say("cli.error.fault", ("problem", $"{e.GetType().Name}: {e.Message}"))),
        };

    /// <summary>A value in lower case where it is one of those that can be.</summary>
    /// <exception cref="UsageException">It is none of them; says which can be.</exception>
    internal static string Among(Words words, string option, string value, IReadOnlyList<string> values) =>
        values.Contains(value, StringComparer.OrdinalIgnoreCase)
            ? value.ToLowerInvariant()
            : throw new UsageException(NotAmong(words, option, value, values));

    /// <summary>The sentence for a value that is not one of those there are.</summary>
    internal static string NotAmong(Words words, string option, string value, IEnumerable<string> values) =>
        words.Say("cli.error.not-among", ("option", option), ("value", value), ("values", string.Join(", ", values)));

    private static async Task<int> RunAsync(IReadOnlyList<string> args, Terminal terminal, Words words, CancellationToken cancellation)
    {
        if (!Words.Languages.Contains(LanguageOf(args), StringComparer.OrdinalIgnoreCase))
        {
            throw new UsageException(NotAmong(words, "--language", LanguageOf(args), Words.Languages));
        }

        var root = Root(words, terminal);
        var parsed = root.Parse(args, new ParserConfiguration { EnablePosixBundling = false, ResponseFileTokenReplacer = null });
        var command = parsed.CommandResult.Command;
        if (parsed.GetResult(root.Options.OfType<HelpOption>().Single()) is not null)
        {
            HelpText.Write(terminal.Output, command, words);
            return ExitStatus.Done;
        }

        if (parsed.GetResult(root.Options.OfType<VersionOption>().Single()) is not null)
        {
            terminal.Output.WriteLine(typeof(CommandLine).Assembly.GetName().Version!.ToString(3));
            return ExitStatus.Done;
        }

        if (args.Count == 0)
        {
            HelpText.Write(terminal.Error, command, words);
            return ExitStatus.BadUsage;
        }

        if (parsed.Errors.Count > 0)
        {
            var way = command is DescribedCommand described ? $"rinsewright {described.Way}" : "rinsewright";
            throw new UsageException($"{Say(parsed, words)} {words.Say("cli.error.see-help", ("command", way))}");
        }

        // The program has its own handling of Ctrl-C and of exceptions, in both languages.
        var invocation = new InvocationConfiguration
        {
            Output = terminal.Output,
            Error = terminal.Error,
            EnableDefaultExceptionHandler = false,
            ProcessTerminationTimeout = null,
        };
        return await parsed.InvokeAsync(invocation, cancellation);
    }

    private static string Say(ParseResult parsed, Words words)
    {
        if (parsed.UnmatchedTokens is [var token, ..])
        {
            return token.StartsWith('-')
                ? words.Say("cli.error.unknown-option", ("option", token))
                : words.Say("cli.error.unknown-command", ("command", token));
        }

        var error = parsed.Errors[0];
        return error.SymbolResult switch
        {
            OptionResult { Tokens.Count: 0 } option => words.Say("cli.error.option-needs-value", ("option", option.Option.Name)),
            OptionResult option => words.Say("cli.error.option-once", ("option", option.Option.Name)),
            ArgumentResult argument => words.Say(
                "cli.error.argument-needed",
                ("argument", argument.Argument.HelpName ?? argument.Argument.Name)
            ),
            CommandResult => words["cli.error.command-needed"],
            _ => error.Message,
        };
    }

    // Found before parsing, because the messages of the parsing are in it too.
    private static string LanguageOf(IReadOnlyList<string> args)
    {
        for (var i = 0; i < args.Count; i++)
        {
            if (args[i] == "--language" && i + 1 < args.Count)
            {
                return args[i + 1];
            }

            if (args[i].StartsWith("--language=", StringComparison.Ordinal))
            {
                return args[i]["--language=".Length..];
            }
        }

        return "en";
    }
}
