using System.Text.Json;
using System.Xml.Linq;
using Rinsewright.Contracts.Machines;
using Rinsewright.Tests.Shared;

namespace Rinsewright.Cli.Tests.Machines;

/// <summary>Making, checking and showing machines.</summary>
public sealed class MachineCommandTests
{
    public static TheoryData<string> Kinds() => [.. MachineFile.Kinds];

    public static TheoryData<string> Examples() => [.. Tree.Files("docs/examples", ".json")];

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task New_machine_is_sound_and_all_typical(string kind)
    {
        var made = await Run.Async("machine", "new", "--kind", kind);
        Assert.Equal((0, ""), (made.Status, made.Error));

        using var file = Run.File("machine.json", made.Output);
        var check = await Run.Async("machine", "check", file.Path);
        Assert.Equal(0, check.Status);
        Assert.Contains("measured: 0; from the data plate: 0;", check.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task New_machine_goes_to_a_file_that_is_not_there_yet()
    {
        using var beside = Run.File("other.txt", "");
        var path = beside.Beside("larkspur.json");
        string[] args = ["machine", "new", "--kind", "flight", "--only-known", "--kitchen", "Saint Odile Hospital", "--output", path];

        Assert.Equal((0, "", $"Written: {path}\n"), Flat(await Run.Async(args)));
        var written = await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken);
        Assert.Equal(
            "{\n  \"schema\": \"rinsewright.machine/1\",\n  \"kind\": \"flight\",\n  \"kitchen\": \"Saint Odile Hospital\"\n}\n",
            written
        );

        var again = await Run.Async(args);
        Assert.Equal(74, again.Status);
        Assert.Contains("not written over", again.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(64, "Which kind of machine?", "new")]
    [InlineData(64, "submarine is not known", "new", "--kind", "submarine")]
    [InlineData(64, "FILE is missing. See rinsewright machine check --help.", "check")]
    [InlineData(64, "Which command? See rinsewright machine --help.")]
    [InlineData(66, "There is no such file.", "check", "nowhere.json")]
    public async Task What_cannot_be_done_is_said(int status, string message, params string[] args)
    {
        var answer = await Run.Async(["machine", .. args]);
        Assert.Equal((status, ""), (answer.Status, answer.Output));
        Assert.Contains(message, answer.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("en", "tanks.wash.capacity: It must be more than 0\u00a0gal; it is -3\u00a0gal.")]
    [InlineData("es", "tanks.wash.capacity: Debe ser más de 0\u00a0gal; es -3\u00a0gal.")]
    public async Task Every_problem_has_its_line_in_the_language_asked_for(string language, string line)
    {
        using var file = Run.File(
            "bad.json",
            """
            { "schema": "rinsewright.machine/1", "kind": "door-hot-water", "colour": "red",
              "tanks": { "wash": { "capacity": { "value": -3, "unit": "[gal_us]", "basis": "dataPlate" } } } }
            """
        );
        foreach (var command in (string[])["check", "show"])
        {
            var answer = await Run.Async("machine", command, file.Path, "--language", language);
            Assert.Equal((65, ""), (answer.Status, answer.Output));
            var lines = answer.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
            Assert.Equal(3, lines.Length);
            Assert.Contains(file.Path, lines[0], StringComparison.Ordinal);
            Assert.StartsWith("  colour: ", lines[1], StringComparison.Ordinal);
            Assert.Equal("  " + line, lines[2]);
        }
    }

    [Fact]
    public async Task Check_gives_its_problems_as_JSON()
    {
        using var file = Run.File("bad.json", """{ "schema": "rinsewright.machine/1", "kind": "flight", "colour": "red" }""");
        var answer = await Run.Async("machine", "check", file.Path, "--json");
        using var json = JsonDocument.Parse(answer.Output);

        Assert.Equal((65, ""), (answer.Status, answer.Error));
        Assert.Equal("rinsewright.machine-check/1", json.RootElement.GetProperty("schema").GetString());
        Assert.False(json.RootElement.GetProperty("sound").GetBoolean());
        Assert.Equal("colour", Assert.Single(json.RootElement.GetProperty("problems").EnumerateArray()).GetProperty("path").GetString());
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public async Task Example_is_shown_in_both_languages_and_fits_80_columns(string path)
    {
        foreach (var language in (string[])["en", "es"])
        {
            var answer = await Run.Async("machine", "show", Path.Combine(Tree.Root, path), "--language", language);
            Assert.Equal((0, ""), (answer.Status, answer.Error));
            Assert.All(answer.Output.Split('\n'), l => Assert.InRange(l.Length, 0, 80));
            Assert.DoesNotContain("[machine", answer.Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Show_gives_every_figure_as_JSON_with_where_it_comes_from()
    {
        var answer = await Run.Async("machine", "show", Path.Combine(Tree.Root, "docs/examples/larkspur-two-tank.json"), "--json");
        using var json = JsonDocument.Parse(answer.Output);
        var figures = json.RootElement.GetProperty("figures").EnumerateArray().ToDictionary(f => f.GetProperty("path").GetString()!);

        Assert.Equal("rinsewright.machine-show/1", json.RootElement.GetProperty("schema").GetString());
        var supply = figures["supply.water"];
        Assert.Equal(
            (138.0, "[degF]", "measured", "2026-11-18"),
            (
                supply.GetProperty("value").GetDouble(),
                supply.GetProperty("unit").GetString(),
                supply.GetProperty("basis").GetString(),
                supply.GetProperty("on").GetString()
            )
        );
        Assert.Equal("dataPlate", figures["tanks.wash.capacity"].GetProperty("basis").GetString());
        Assert.Equal("typical", figures["tanks.wash.surface"].GetProperty("basis").GetString());
    }

    [Theory] // common-practice bands, no source: wash 150 to 160 °F, final rinse 180 to 190 °F; a band holds its middle
    [InlineData("washTankTemperature", 150, 160.5)]
    [InlineData("finalRinseTemperature", 180, 190)]
    public async Task Show_says_how_far_a_reading_may_lie_from_what_it_should_be(string id, double least, double most)
    {
        var answer = await Run.Async("machine", "show", Path.Combine(Tree.Root, "docs/examples/larkspur-two-tank.json"), "--json");
        using var json = JsonDocument.Parse(answer.Output);
        var value = json.RootElement.GetProperty("healthy").GetProperty("observables").GetProperty(id).GetProperty("value").GetDouble();
        var band = json.RootElement.GetProperty("bands").GetProperty(id);
        double low = band.GetProperty("low").GetDouble(),
            middle = band.GetProperty("middle").GetDouble(),
            high = band.GetProperty("high").GetDouble();

        Assert.InRange(value, least, most);
        Assert.InRange(middle, low, high);
        Assert.InRange(value, low, high);
        Assert.True(high - low > 1, "typical figures make it uncertain by more than a degree");
        Assert.Equal("[degF]", band.GetProperty("unit").GetString());
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public async Task Section_is_written_as_a_drawing_of_its_own(string path)
    {
        var answer = await Run.Async("machine", "show", Path.Combine(Tree.Root, path), "--svg", "-");
        var svg = XDocument.Parse(answer.Output).Root!;

        Assert.Equal((0, ""), (answer.Status, answer.Error));
        Assert.Equal("svg", svg.Name.LocalName);
        Assert.False(string.IsNullOrEmpty(svg.Elements().First(e => e.Name.LocalName == "title").Value));
    }

    [Fact]
    public async Task Machine_may_come_from_standard_input()
    {
        var made = await Run.Async("machine", "new", "--kind", "undercounter");
        var shown = await Run.WithInputAsync(System.Text.Encoding.UTF8.GetBytes(made.Output), ["machine", "show", "-"]);
        Assert.Equal(0, shown.Status);
        Assert.Contains("nobody has looked", shown.Output, StringComparison.Ordinal);
    }

    private static (int Status, string Output, string Error) Flat(Answer answer) => (answer.Status, answer.Output, answer.Error);
}
