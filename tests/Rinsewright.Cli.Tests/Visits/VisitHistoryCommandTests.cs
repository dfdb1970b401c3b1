using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Rinsewright.Tests.Shared;

namespace Rinsewright.Cli.Tests.Visits;

/// <summary>The history of the demo machines: words, JSON, paper, files that do not belong together; and that the demo's readings are what the model gives for the faults that are named.</summary>
public sealed class VisitHistoryCommandTests
{
    [Fact]
    public async Task It_is_told_in_words()
    {
        var answer = await Run.Async(["visit", "history", .. Demo("millrace"), "--today", "2026-11-26"]);
        Assert.Equal((0, ""), (answer.Status, answer.Error));
        Assert.All(answer.Output.Split('\n'), l => Assert.InRange(l.Length, 0, 80));
        // 6.3 to 7.8 min; delimed on 2026-09-14; 6.3 to 7.8 min again in five readings.
        Assert.Contains("14\u00a0Sep\u00a02026: Wash tank and element delimed", answer.Output, StringComparison.Ordinal);
        Assert.Contains("Heat-up time from fill to ready, heat-up: Rises", answer.Output, StringComparison.Ordinal);
        Assert.Contains("was expected 23\u00a0Nov\u00a02026", answer.Output, StringComparison.Ordinal);
        Assert.Contains(
            "Tank heater, worn, 14\u00a0Sep\u00a02026 to 14\u00a0Sep\u00a02026, 0 days",
            answer.Output,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Order_of_the_files_decides_nothing_and_json_says_the_same()
    {
        var files = Demo("larkspur");
        var answer = await Run.Async(["visit", "history", .. files, "--json", "--state", "load", "--today", "2026-11-26"]);
        var turned = await Run.Async(["visit", "history", .. files.Reverse(), "--json", "--state", "load", "--today", "2026-11-26"]);
        Assert.Equal(answer.Output, turned.Output);
        var json = JsonNode.Parse(answer.Output)!;
        Assert.Equal("rinsewright.machine-history/1", (string)json["schema"]!);
        Assert.Equal(8, json["visits"]!.AsArray().Count);
        Assert.All(json["series"]!.AsArray(), s => Assert.Equal("load", (string)s!["state"]!));
        var pressure = json["series"]!.AsArray().Single(s => (string)s!["kind"]! == "rd-rinse-pressure")!;
        // Falls visit by visit until the strainer was cleaned (docs/visits/history/faults.csv).
        Assert.Contains(pressure["segments"]!.AsArray(), s => (string)s!["kind"]! == "falling" && (int)s["count"]! == 5);
        Assert.Equal(2, json["parts"]!.AsArray().Count(p => (string)p!["what"]! == "Long curtain"));
        Assert.Equal("leaks", (string)Assert.Single(json["declined"]!.AsArray())!["area"]!);
    }

    [Fact]
    public async Task Paper_is_written()
    {
        using var folder = Run.File("x.json", "{}");
        var pdf = folder.Beside("history.pdf");
        var answer = await Run.Async([
            "visit",
            "history",
            .. Demo("millrace"),
            "--sheet",
            pdf,
            "--paper",
            "a4",
            "--language",
            "es",
            "--units",
            "si",
        ]);
        Assert.Equal((0, ""), (answer.Status, answer.Error));
        Assert.StartsWith(
            "%PDF-",
            Encoding.Latin1.GetString(await File.ReadAllBytesAsync(pdf, TestContext.Current.CancellationToken)),
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("°F", answer.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_does_not_belong_together_is_told()
    {
        var two = await Run.Async("visit", "history", Demo("millrace")[0], Demo("larkspur")[0]);
        Assert.Equal(64, two.Status);
        Assert.Contains("different machines", two.Error, StringComparison.Ordinal);
        var twice = await Run.Async("visit", "history", Demo("millrace")[0], Demo("millrace")[0]);
        Assert.Equal(64, twice.Status);
        Assert.Contains("the same visit", twice.Error, StringComparison.Ordinal);
        Assert.Equal(64, (await Run.Async("visit", "history", Demo("millrace")[0], "--today", "tomorrow")).Status);
        Assert.Equal(64, (await Run.Async("visit", "history", Demo("millrace")[0], "--state", "asleep")).Status);
        using var file = Run.File("moon.json", "{}");
        Assert.Equal(65, (await Run.Async("visit", "history", file.Path)).Status);
        Assert.Equal(66, (await Run.Async("visit", "history", "no-such-file.json")).Status);
    }

    [Theory]
    [InlineData("en", "--today")]
    [InlineData("es", "--today")]
    public async Task Help_shows_every_option(string language, string option)
    {
        var answer = await Run.Async("visit", "history", "--help", "--language", language);
        Assert.Equal(0, answer.Status);
        Assert.Contains(option, answer.Output, StringComparison.Ordinal);
        Assert.All(answer.Output.Split('\n'), l => Assert.InRange(l.Length, 0, 80));
    }

    // As the technician's instruments show it: ±1 °F, ±0.5 psi, a titration to a tenth, a stopwatch to a tenth of a minute.
    private static readonly (string Kind, string Observable, double Scale, double Off)[] Read =
    [
        ("rd-wash-temp", "washTankTemperature", 1, 1),
        ("rd-final-rinse-temp", "finalRinseTemperature", 1, 1),
        ("rd-ware-surface-temp", "platePeakTemperature", 1, 1),
        ("rd-rinse-pressure", "finalRinsePressure", 1, 0.5),
        ("rd-detergent", "washDetergent", 1, 0.1),
        ("rd-heat-up-time", "heatUpTime", 1.0 / 60, 0.1),
    ];

    [Theory]
    [InlineData("larkspur", "larkspur-two-tank")]
    [InlineData("millrace", "millrace-door")]
    public async Task Readings_of_the_demo_are_what_the_model_gives_for_the_faults_named(string demo, string machine)
    {
        Dictionary<string, JsonNode> runs = new(StringComparer.Ordinal);
        var compared = 0;
        foreach (
            var row in Tree.Read("docs/visits/history/faults.csv").Split('\n').Where(l => l.StartsWith(demo, StringComparison.Ordinal))
        )
        {
            var (visit, moment, faults) = (row.Split(',')[0], row.Split(',')[1], row.Split(',')[2]);
            if (!runs.TryGetValue(faults, out var run))
            {
                List<string> args = ["machine", "run", Path.Combine(Tree.Root, "docs", "examples", machine + ".json"), "--json"];
                args.AddRange(faults.Split(';').SelectMany(f => (string[])["--fault", f]));
                runs[faults] = run = JsonNode.Parse((await Run.Async([.. args])).Output)!["observables"]!;
            }

            foreach (
                var reading in JsonNode.Parse(Tree.Read($"docs/visits/history/{visit}.json"))!["readings"]!
                    .AsArray()
                    .Where(r => (string)r!["moment"]! == moment)
            )
            {
                if (Array.Find(Read, r => r.Kind == (string)reading!["kind"]!) is { Kind: not null } of)
                {
                    var (value, expected) = ((double)reading!["value"]!["value"]!, (double)run[of.Observable]!["value"]! * of.Scale);
                    Assert.True(
                        Math.Abs(value - expected) <= of.Off,
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{visit} {moment} {of.Kind}: {value}, the model {expected} with {faults}"
                        )
                    );
                    compared++;
                }
            }
        }

        Assert.True(compared > 50, $"{compared} readings");
    }

    private static string[] Demo(string kitchen) =>
        [.. Directory.GetFiles(Path.Combine(Tree.Root, "docs", "visits", "history"), kitchen + "-*.json").Order(StringComparer.Ordinal)];
}
