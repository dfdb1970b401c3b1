using Rinsewright.Contracts.Language;
using Rinsewright.Tests.Shared;

namespace Rinsewright.Cli.Tests;

/// <summary>Help is a promise: it is compared with the files in Golden, which no test rewrites.</summary>
public sealed class HelpTests
{
    [Theory]
    [InlineData("root.en.txt", "--help")]
    [InlineData("root.es.txt", "--help", "--language=es")]
    [InlineData("proof.en.txt", "proof", "--help")]
    [InlineData("proof.es.txt", "proof", "--help", "--language", "es")]
    [InlineData("limits.en.txt", "limits", "--help")]
    [InlineData("limits.es.txt", "limits", "--help", "--language", "es")]
    [InlineData("machine.en.txt", "machine", "--help")]
    [InlineData("machine.es.txt", "machine", "--help", "--language", "es")]
    [InlineData("machine-new.en.txt", "machine", "new", "--help")]
    [InlineData("machine-new.es.txt", "machine", "new", "--help", "--language", "es")]
    [InlineData("machine-check.en.txt", "machine", "check", "--help")]
    [InlineData("machine-check.es.txt", "machine", "check", "--help", "--language", "es")]
    [InlineData("machine-show.en.txt", "machine", "show", "--help")]
    [InlineData("machine-show.es.txt", "machine", "show", "--help", "--language", "es")]
    [InlineData("machine-run.en.txt", "machine", "run", "--help")]
    [InlineData("machine-run.es.txt", "machine", "run", "--help", "--language", "es")]
    [InlineData("machine-whatif.en.txt", "machine", "whatif", "--help")]
    [InlineData("machine-whatif.es.txt", "machine", "whatif", "--help", "--language", "es")]
    [InlineData("machine-calibrate.en.txt", "machine", "calibrate", "--help")]
    [InlineData("machine-calibrate.es.txt", "machine", "calibrate", "--help", "--language", "es")]
    [InlineData("bench.en.txt", "bench", "--help")]
    [InlineData("bench.es.txt", "bench", "--help", "--language", "es")]
    [InlineData("bench-booster.en.txt", "bench", "booster", "--help")]
    [InlineData("visit.en.txt", "visit", "--help")]
    [InlineData("visit.es.txt", "visit", "--help", "--language", "es")]
    [InlineData("visit-check.en.txt", "visit", "check", "--help")]
    [InlineData("visit-check.es.txt", "visit", "check", "--help", "--language", "es")]
    [InlineData("visit-report.en.txt", "visit", "report", "--help")]
    [InlineData("visit-report.es.txt", "visit", "report", "--help", "--language", "es")]
    [InlineData("completion.en.txt", "completion", "--help")]
    public async Task Help_is_the_one_agreed_and_fits_80_columns(string golden, params string[] args)
    {
        var answer = await Run.Async(args);
        Assert.Equal((0, ""), (answer.Status, answer.Error));
        Assert.All(answer.Output.Split('\n'), l => Assert.InRange(l.Length, 0, 80));
        Golden.Matches($"tests/Rinsewright.Cli.Tests/Golden/{golden}", answer.Output);
    }

    [Fact]
    public async Task Every_example_in_the_help_is_a_command_line_that_parses()
    {
        var help = (await Run.Async("proof", "--help")).Output.Replace("\\\n", " ", StringComparison.Ordinal);
        var examples = help.Split('\n')
            .Where(l =>
                l.StartsWith("  rinsewright proof ", StringComparison.Ordinal) && !l.Contains("[options]", StringComparison.Ordinal)
            )
            .ToList();
        Assert.Equal(5, examples.Count);
        using var terminal = new StringWriter();
        var root = CommandLine.Root(Words.For("en"), new Terminal(Stream.Null, terminal, terminal, false, TimeProvider.System));
        Assert.All(examples, e => Assert.Empty(root.Parse(e.Trim()["rinsewright ".Length..]).Errors));
    }

    [Theory]
    [InlineData("en")]
    [InlineData("es")]
    public void Every_option_and_command_has_its_words(string language)
    {
        var root = CommandLine.Root(
            Words.For(language),
            new Terminal(Stream.Null, TextWriter.Null, TextWriter.Null, false, TimeProvider.System)
        );
        var described = root
            .Subcommands.Concat(root.Subcommands.SelectMany(c => c.Subcommands))
            .Concat([root])
            .SelectMany(c => c.Options.Select(o => o.Description).Append(c.Description));
        Assert.All(described, d => Assert.False(string.IsNullOrEmpty(d) || d.StartsWith('['), d));
    }

    [Fact]
    public async Task Version_is_three_numbers() => Assert.Matches(@"^\d+\.\d+\.\d+\n$", (await Run.Async("--version")).Output);

    [Theory]
    [InlineData("bash", "complete -o default -F _rinsewright rinsewright")]
    [InlineData("zsh", "#compdef rinsewright")]
    [InlineData("pwsh", "Register-ArgumentCompleter")]
    public async Task Completion_scripts_ask_the_program_itself(string shell, string line)
    {
        var answer = await Run.Async("completion", shell);
        Assert.Equal(0, answer.Status);
        Assert.Contains(line, answer.Output, StringComparison.Ordinal);
        Assert.Contains("[suggest:", answer.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("rinsewright pro", "proof")]
    [InlineData("rinsewright proof --mach", "--machine")]
    [InlineData("rinsewright proof --machine door", "door-dual")]
    [InlineData("rinsewright limits --rules us", "us-vsp-2018")]
    public async Task Words_are_completed(string line, string candidate)
    {
        var answer = await Run.Async($"[suggest:{line.Length}]", line);
        Assert.Contains(candidate, answer.Output.Split('\n'));
    }
}
