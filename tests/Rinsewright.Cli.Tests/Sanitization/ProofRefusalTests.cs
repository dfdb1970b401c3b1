using Rinsewright.Files.Demo;

namespace Rinsewright.Cli.Tests.Sanitization;

/// <summary>Everything that cannot be done ends with a status of 64 or more, a sentence that says what and how to mend it, and no answer.</summary>
public sealed class ProofRefusalTests
{
    [Theory]
    [InlineData("nothing to prove", "proof")]
    [InlineData("no option --wsh", "proof", "--wsh", "160 F")]
    [InlineData("prof is not expected", "prof")]
    [InlineData("--wash needs a value", "proof", "--wash")]
    [InlineData("--wash takes one value", "proof", "--wash", "160 F", "--wash", "161 F")]
    [InlineData("“160” has no unit", "proof", "--wash", "160")]
    [InlineData("“psi” measures something else. Try 182 F", "proof", "--wash", "20 psi")]
    [InlineData("“°” does not say which degrees", "proof", "--wash", "160 °")]
    [InlineData("“1,250” can be read in two ways", "proof", "--hardness", "1,250 mg/L")]
    [InlineData(
        "--machine: dishwasher is not known. Use one of: door-single, door-dual, conveyor-1, conveyor-multi.",
        "proof",
        "--wash",
        "160 F",
        "--machine",
        "dishwasher"
    )]
    [InlineData("--method: steam is not known", "proof", "--wash", "160 F", "--method", "steam")]
    [InlineData("--rules: mars is not known", "proof", "--wash", "160 F", "--rules", "mars")]
    [InlineData("--paper: a3 is not known", "proof", "--wash", "160 F", "--paper", "a3")]
    [InlineData("--language: fr is not known", "proof", "--wash", "160 F", "--language", "fr")]
    [InlineData("not both", "proof", "--wash", "160 F", "--rules", "fda-food-code", "--rules-file", "own.json")]
    [InlineData("does not say whether the label turned", "proof", "--label", "160 F")]
    [InlineData("--label: 100,000 °F is not possible here: 32 °F to 266 °F is", "proof", "--label", "100000 F=reached")]
    [InlineData("--label: 160 °C is not possible here: 0 °C to 130 °C is. Is it 160 °F?", "proof", "--label", "160 C=reached")]
    [InlineData("--maximum-thermometer: 100,000 °F is not possible", "proof", "--maximum-thermometer", "100000 F")]
    [InlineData("--wash: 400 °F is not possible", "proof", "--wash", "400 F")]
    [InlineData("--ph: pH -1 is not possible here: pH 0 to pH 14 is", "proof", "--ph", "-1")]
    [InlineData("--solution-temperature: 1,000 °F is not possible", "proof", "--solution-temperature", "1000 F")]
    [InlineData("--chlorine: -5 mg/L is not possible", "proof", "--chlorine", "-5 ppm")]
    [InlineData("--plate-final-rinse: 820 °C is not possible", "proof", "--wash", "160 F", "--plate-final-rinse", "820 C")]
    [InlineData("--uncertainty: An accuracy of ±0 ", "proof", "--wash", "160 F", "--uncertainty", "0 F")]
    [InlineData("--uncertainty: Una exactitud de ±-3 ", "proof", "--wash", "160 F", "--uncertainty", "-3 F", "--language", "es")]
    [InlineData("one sanitizer at a time", "proof", "--chlorine", "50 ppm", "--iodine", "15 ppm")]
    [InlineData("does not go with the sanitizer", "proof", "--chlorine", "50 ppm", "--method", "quat")]
    [InlineData("not a date", "proof", "--wash", "160 F", "--calibrated", "3/4/31")]
    [InlineData("one file at a time", "proof", "a.csv", "b.csv", "--sheet", "s.pdf")]
    [InlineData("can be read once", "proof", "-", "-")]
    [InlineData("--date-order: ydm is not known", "proof", "a.csv", "--date-order", "ydm")]
    [InlineData("not an offset", "proof", "a.csv", "--utc-offset", "5")]
    [InlineData("not a line number", "proof", "a.csv", "--header-line", "one")]
    [InlineData("fish is not known. Use one of: bash, zsh, pwsh", "completion", "fish")]
    [InlineData("SHELL is missing", "completion")]
    public async Task Bad_usage_is_64(string says, params string[] args)
    {
        var answer = await Run.Async(args);
        Assert.Equal((64, ""), (answer.Status, answer.Output));
        Assert.StartsWith("rinsewright: ", answer.Error, StringComparison.Ordinal);
        Assert.Contains(says, answer.Error.Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_command_the_help_is_shown_and_it_is_bad_usage()
    {
        var answer = await Run.Async();
        Assert.Equal((64, ""), (answer.Status, answer.Output));
        Assert.Contains("rinsewright COMMAND", answer.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("table.csv", "name,price\nsoap,12\nbrush,4\n")]
    [InlineData("empty.csv", "")]
    [InlineData("picture.csv", "\u0089PNG\r\n\u001a\n\0\0\0\rIHDR")]
    public async Task A_file_that_is_no_logger_file_is_65_and_named(string name, string text)
    {
        using var file = Run.File(name, text);
        var answer = await Run.Async("proof", file.Path);
        Assert.Equal((65, ""), (answer.Status, answer.Output));
        Assert.Contains(name, answer.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("[", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_rule_set_file_that_cannot_be_used_is_65_and_says_where()
    {
        using var file = Run.File("own.json", """{ "format": "rinsewright.rules/9" }""");
        var answer = await Run.Async("proof", "--wash", "160 F", "--rules-file", file.Path);
        Assert.Equal((65, ""), (answer.Status, answer.Output));
        Assert.Contains("rinsewright.rules/9", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_missing_file_or_a_folder_is_66()
    {
        using var file = Run.Demo(DemoLoggers.MillraceDoor);
        var gone = await Run.Async("proof", file.Beside("gone.csv"));
        Assert.Equal((66, ""), (gone.Status, gone.Output));
        Assert.Contains("gone.csv: There is no such file.", gone.Error, StringComparison.Ordinal);
        var folder = await Run.Async("proof", Path.GetDirectoryName(file.Path)!);
        Assert.Equal(66, folder.Status);
        Assert.Contains("This is a folder.", folder.Error, StringComparison.Ordinal);
        Assert.Equal(66, (await Run.Async("limits", "--rules-file", file.Beside("gone.json"))).Status);
    }

    [Fact]
    public async Task A_sheet_that_cannot_be_written_is_74()
    {
        using var file = Run.Demo(DemoLoggers.MillraceDoor);
        var answer = await Run.Async("proof", file.Path, "--sheet", Path.Combine(file.Beside("nowhere"), "s.pdf"));
        Assert.Equal(74, answer.Status);
        Assert.StartsWith("rinsewright: ", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ctrl_C_is_130()
    {
        using var file = Run.Demo(DemoLoggers.MillraceDoor);
        using var stopped = new CancellationTokenSource();
        await stopped.CancelAsync();
        var answer = await Run.WithInputAsync([], ["proof", file.Path], stopped.Token);
        Assert.Equal((130, ""), (answer.Status, answer.Output));
        Assert.Equal("Stopped. Nothing was changed.\n", answer.Error);
    }

    [Fact]
    public async Task A_channel_that_is_not_there_is_named_with_those_that_are()
    {
        using var file = Run.Demo(DemoLoggers.MillraceDoor);
        var answer = await Run.Async("proof", file.Path, "--role", "Tank=wash-tank");
        Assert.Equal(64, answer.Status);
        Assert.Contains("There is no channel named Tank. The file has: Plate (°C) (2).", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sheet_that_cannot_be_written_is_74_and_named_as_it_was_asked_for()
    {
        var answer = await Run.Async("proof", "--label", "160 F=reached", "--sheet", Path.Combine("no-such-folder", "proof.pdf"));
        Assert.Equal(74, answer.Status);
        Assert.Contains(Path.Combine("no-such-folder", "proof.pdf"), answer.Error, StringComparison.Ordinal);
        Assert.DoesNotContain(".part", answer.Error, StringComparison.Ordinal);
    }
}
