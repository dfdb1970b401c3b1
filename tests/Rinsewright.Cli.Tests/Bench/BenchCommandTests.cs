using System.Text;
using System.Text.Json;
using Rinsewright.Contracts.Machines;
using Rinsewright.Engine.Bench;
using Rinsewright.Tests.Shared;

namespace Rinsewright.Cli.Tests.Bench;

/// <summary>The sums from the command line.</summary>
public sealed class BenchCommandTests
{
    [Fact] // CHV070 and CHV071 of the check list: 10 drops of 0.05 mL of normal acid in 50 mL, 20 % product: 1.55 g/L
    public async Task Titration_as_json()
    {
        using var json = await JsonAsync(
            "titration",
            "--drops",
            "10",
            "--normality",
            "1",
            "--sample",
            "50 mL",
            "--active",
            "20 %",
            "--json"
        );
        var root = json.RootElement;

        Assert.Equal("rinsewright.bench/1", root.GetProperty("schema").GetString());
        var product = root.GetProperty("results").GetProperty("product");
        Assert.Equal(1.55, product.GetProperty("value").GetDouble(), 0.005);
        Assert.Equal("g/L", product.GetProperty("unit").GetString());
        Assert.True(product.GetProperty("low").GetDouble() < product.GetProperty("high").GetDouble());
        Assert.Equal("C1", root.GetProperty("steps")[0].GetProperty("equation").GetString());
    }

    [Fact]
    public async Task Units_as_typed_make_no_difference()
    {
        using var gallons = await JsonAsync("tank-dosing", "--tank", "15.85 gal", "--json");
        using var litres = await JsonAsync("tank-dosing", "--tank", "60 L", "--json");

        double Charge(JsonDocument d) => d.RootElement.GetProperty("results").GetProperty("charge").GetProperty("value").GetDouble();
        Assert.Equal(Charge(gallons), Charge(litres), 0.02);
    }

    [Theory] // what stands on the bottle, and a letter in upper case
    [InlineData("--normality", "1 N")]
    [InlineData("--normality", "1 eq/L")]
    [InlineData("--normality", "1")]
    [InlineData("--end-point", "P", "--normality", "1 N")]
    public async Task Normality_and_end_point_as_they_are_written(params string[] args)
    {
        using var json = await JsonAsync(["titration", "--drops", "10", "--sample", "50 mL", .. args, "--json"]);

        Assert.Equal(1.55, json.RootElement.GetProperty("results").GetProperty("product").GetProperty("value").GetDouble(), 0.005);
    }

    [Theory]
    [InlineData("--hardness: This is needed", "builder")]
    [InlineData("--hardness: “ºF” measures something else", "builder", "--hardness", "150 ºF")]
    [InlineData("--hardness: “F” measures something else", "builder", "--hardness", "150 F")]
    [InlineData("--sample: It must be between 0.001 L and 1 L", "titration", "--sample", "0 L")]
    [InlineData("--drops: It must be between 0 and 500", "titration", "--drops", "900")]
    [InlineData("--sample", "titration", "--sample", "50 psi")]
    [InlineData("--end-point: q is not known. Use one of: p, m", "titration", "--end-point", "q")]
    [InlineData("--chlorine-off: No acid dose while this is not a yes", "delime")]
    [InlineData("no-such", "no-such")]
    public async Task What_is_wrong_is_said_with_the_option(string says, params string[] args)
    {
        var answer = await Run.Async(["bench", .. args]);

        Assert.Equal(64, answer.Status);
        Assert.Empty(answer.Output);
        Assert.Contains(says, answer.Error.Replace('\u00a0', ' '), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("en")]
    [InlineData("es")]
    public async Task Every_tool_and_its_help_fit_80_columns_and_have_their_words(string language)
    {
        foreach (var tool in BenchTools.All)
        {
            string[] needed =
            [
                .. tool
                    .Fields.Where(f => f.Usual is null && !f.Optional && tool.Asks(f, BenchInput.Empty))
                    .SelectMany(f => (string[])[Option(f.Id), "10"]),
                .. tool.Id == "delime" ? ["--chlorine-off", "yes", "--drained", "yes", "--no-chlorine", "yes"] : Array.Empty<string>(),
                .. tool.Id == "conductivity" ? ["--reading", "4610"] : Array.Empty<string>(),
                .. tool.Id == "scale" ? ["--calcium-hardness", "250", "--alkalinity", "220"] : Array.Empty<string>(),
            ];
            foreach (
                var args in (string[][])
                    [
                        ["bench", tool.Id, "--help"],
                        ["bench", tool.Id, .. Last(needed)],
                    ]
            )
            {
                var answer = await Run.Async([.. args, "--language", language]);
                Assert.True((answer.Status, answer.Error) == (0, ""), $"{string.Join(' ', args)}: {answer.Error}");
                Assert.All(answer.Output.Split('\n'), l => Assert.InRange(l.Length, 0, 80));
                Assert.DoesNotMatch(@"\[(bench|cli)\.|NaN|∞", answer.Output);
            }
        }
    }

    [Fact]
    public async Task By_hand_writes_its_card()
    {
        using var beside = Run.File("other.txt", "");
        var pdf = beside.Beside("card.pdf");
        var answer = await Run.Async(["bench", "by-hand", "--label", "5.25", "--sheet", pdf, "--paper", "a4", "--language", "es"]);

        Assert.Equal((0, ""), (answer.Status, answer.Error));
        Assert.StartsWith(
            "%PDF-",
            Encoding.ASCII.GetString((await File.ReadAllBytesAsync(pdf, TestContext.Current.CancellationToken))[..5]),
            StringComparison.Ordinal
        );
    }

    [Fact] // Millrace Brewery: a tank of 10 gal, typical of its kind; 10 gal at 1.5 g/L are 56.8 g
    public async Task A_machine_gives_its_figures_and_keeps_the_sum()
    {
        using var beside = Run.File("other.txt", "");
        var machine = Path.Combine(Tree.Root, "docs", "examples", "millrace-door.json");
        var kept = beside.Beside("kept.json");
        var answer = await Run.Async([
            "bench",
            "tank-dosing",
            "--machine",
            machine,
            "--pin",
            "--by",
            "R. Okafor",
            "--pin-to",
            kept,
            "--json",
        ]);

        Assert.Equal(0, answer.Status);
        using var json = JsonDocument.Parse(answer.Output);
        Assert.Equal(56.8, json.RootElement.GetProperty("results").GetProperty("charge").GetProperty("value").GetDouble(), 0.05);
        var read = MachineFile.Read(await File.ReadAllTextAsync(kept, TestContext.Current.CancellationToken));
        Assert.Empty(read.Problems);
        var setUp = Assert.Single(read.Machine!.SetUps);
        Assert.Equal(("tank-dosing", "R. Okafor"), (setUp.Tool, setUp.By));

        // A second sum goes after the first, and what is typed stands in front of what the machine says.
        var again = beside.Beside("again.json");
        var typed = await Run.Async([
            "bench",
            "tank-dosing",
            "--machine",
            kept,
            "--tank",
            "20 gal",
            "--pin",
            "--by",
            "L. Brandt",
            "--pin-to",
            again,
        ]);
        Assert.Equal(0, typed.Status);
        Assert.DoesNotContain("tank: 10", typed.Output, StringComparison.Ordinal);
        var both = MachineFile.Read(await File.ReadAllTextAsync(again, TestContext.Current.CancellationToken)).Machine!.SetUps;
        Assert.Equal(["R. Okafor", "L. Brandt"], both.Select(s => s.By));
    }

    [Theory]
    [InlineData("--pin needs", "bench", "titration", "--pin")]
    [InlineData("--pin needs", "bench", "titration", "--pin-to", "x.json")]
    [InlineData("--paper", "bench", "titration", "--paper", "b5")]
    [InlineData("--label: This is needed", "bench", "by-hand")]
    [InlineData("--rules: These rules say nothing", "bench", "by-hand", "--label", "5", "--rules", "de-din-10510")]
    public async Task What_keeping_and_printing_need_is_said(string says, params string[] args)
    {
        var answer = await Run.Async(args);

        Assert.Equal(64, answer.Status);
        Assert.Contains(says, answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void No_tool_asks_twice_for_one_option()
    {
        var words = Rinsewright.Contracts.Language.Words.For("en");
        var bench = Rinsewright.Cli.Bench.BenchCommand.Make(
            words,
            new Terminal(Stream.Null, TextWriter.Null, TextWriter.Null, false, TimeProvider.System)
        );

        Assert.All(bench.Subcommands, c => Assert.Equal(c.Options.Count, c.Options.DistinctBy(o => o.Name).Count()));
    }

    [Fact] // 5 mL of a product of 1.2 kg/L in 60 mL/min are 5 s; a feeder sum has an --output of its own and is kept all the same
    public async Task A_feeder_is_kept_with_its_output()
    {
        using var beside = Run.File("other.txt", "");
        var kept = beside.Beside("kept.json");
        var answer = await Run.Async([
            "bench",
            "feeder",
            "--dose",
            "6 g",
            "--output",
            "60 mL/min",
            "--liquid-density",
            "1.2 kg/L",
            "--machine",
            Path.Combine(Tree.Root, "docs", "examples", "millrace-door.json"),
            "--pin",
            "--by",
            "R. Okafor",
            "--pin-to",
            kept,
            "--json",
        ]);

        Assert.Equal(0, answer.Status);
        using var json = JsonDocument.Parse(answer.Output);
        Assert.Equal(5, json.RootElement.GetProperty("results").GetProperty("runTime").GetProperty("value").GetDouble(), 0.001);
        Assert.Single(MachineFile.Read(await File.ReadAllTextAsync(kept, TestContext.Current.CancellationToken)).Machine!.SetUps);
    }

    [Fact] // 180 °F is 82.2 °C; 1 gpm is 3.785 L/min
    public async Task One_system_of_units_in_all_that_is_shown()
    {
        var answer = await Run.Async(["bench", "booster", "--units", "si"]);
        using var json = await JsonAsync("booster", "--units", "si", "--json");

        var shown = answer.Output[..answer.Output.IndexOf("Working", StringComparison.Ordinal)];
        var hangs = answer.Output[answer.Output.IndexOf("What it hangs on", StringComparison.Ordinal)..];
        Assert.DoesNotContain("°F", shown + hangs, StringComparison.Ordinal);
        Assert.DoesNotContain("gpm", shown + hangs, StringComparison.Ordinal);
        Assert.Contains("0.5\u00a0°C more", hangs, StringComparison.Ordinal);
        var reaches = json.RootElement.GetProperty("results").GetProperty("reaches");
        Assert.Equal(("Cel", 82.2), (reaches.GetProperty("unit").GetString(), Math.Round(reaches.GetProperty("value").GetDouble(), 1)));
        Assert.All(
            json.RootElement.GetProperty("sensitivities").EnumerateArray(),
            s => Assert.NotEqual("[degF]", s.GetProperty("change").GetProperty("unit").GetString())
        );
    }

    [Fact]
    public async Task What_nobody_said_is_named_as_usual()
    {
        using var json = await JsonAsync("tank-dosing", "--tank", "18.5 gal", "--racks", "40", "--json");
        var text = await Run.Async(["bench", "tank-dosing", "--tank", "18.5 gal", "--racks", "40"]);

        Assert.Equal(["rinsePerRack", "strength"], json.RootElement.GetProperty("usual").EnumerateArray().Select(u => u.GetString()));
        Assert.Contains("Usual figures", text.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sources_are_cited_in_the_language_asked_for()
    {
        using var json = await JsonAsync("tank-dosing", "--json", "--language", "es");

        var step = json.RootElement.GetProperty("steps")[0];
        Assert.Equal(("mixed tank", "tanque mezclado"), (step.GetProperty("source").GetString(), step.GetProperty("cited").GetString()));
    }

    // Of an option named twice the last counts.
    private static IEnumerable<string> Last(string[] pairs) =>
        pairs.Chunk(2).GroupBy(p => p[0], StringComparer.Ordinal).SelectMany(g => g.Last());

    private static string Option(string id) =>
        "--" + string.Concat(id.Select(c => char.IsUpper(c) ? $"-{char.ToLowerInvariant(c)}" : $"{c}"));

    private static async Task<JsonDocument> JsonAsync(params string[] args)
    {
        var answer = await Run.Async(["bench", .. args]);
        Assert.Equal((0, ""), (answer.Status, answer.Error));
        return JsonDocument.Parse(answer.Output);
    }
}
