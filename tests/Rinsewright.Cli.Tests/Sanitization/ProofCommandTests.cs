using System.Text.Json;
using Rinsewright.Files.Demo;

namespace Rinsewright.Cli.Tests.Sanitization;

/// <summary>What a proof says, in text and in JSON, and the exit status it ends with.</summary>
public sealed class ProofCommandTests
{
    // The limits in these lines are those of the FDA Food Code: 4-501.110, 4-501.112, 4-501.113, 4-703.11(B).
    [Theory]
    [InlineData(
        0,
        "--machine",
        "door-dual",
        "--wash",
        "150 F",
        "--final-rinse",
        "180 F",
        "--pressure",
        "20 psi",
        "--label",
        "160 F=reached"
    )]
    [InlineData(0, "--machine", "hood-dual", "--final-rinse", "82 C", "--label", "71 °C=reached")]
    [InlineData(1, "--machine", "door-dual", "--final-rinse", "179 F")]
    [InlineData(1, "--machine", "flight", "--label", "160 F=not-reached")]
    [InlineData(1, "--final-rinse", "182 F", "--pressure", "31 psi")]
    [InlineData(2, "--machine", "door-single", "--chlorine", "50 ppm", "--ph", "7.5")]
    [InlineData(
        1,
        "--machine",
        "door-single",
        "--chlorine",
        "24 ppm",
        "--ph",
        "7",
        "--solution-temperature",
        "120 F",
        "--contact-time",
        "10 s"
    )]
    [InlineData(1, "--method", "hot-water", "--plate-final-rinse", "185 F", "--final-rinse", "182 F")]
    public async Task Readings_alone_end_in_the_status_of_their_verdict(int status, params string[] args)
    {
        var answer = await Run.Async(["proof", .. args]);
        Assert.Equal((status, ""), (answer.Status, answer.Error));
        Assert.Contains(
            status switch
            {
                0 => "PROVEN",
                1 => "NOT PROVEN",
                _ => "UNDETERMINED",
            },
            answer.Output,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_good_file_is_proven_and_each_pass_stands_on_its_line()
    {
        using var file = Run.Demo(DemoLoggers.LarkspurTwoTank);
        var answer = await Run.Async("proof", file.Path, "--machine", "conveyor-multi", "--uncertainty", "0.9 F");
        Assert.Equal((0, ""), (answer.Status, answer.Error));
        Assert.Equal(5, answer.Output.Split('\n').Count(l => l.TrimEnd().EndsWith("Proven", StringComparison.Ordinal)));
        Assert.Contains("±0.9\u00a0°F", answer.Output, StringComparison.Ordinal);
        Assert.Contains("4-703.11(B)", answer.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cold_rinse_is_not_proven_and_says_so_in_Spanish()
    {
        using var file = Run.Demo(DemoLoggers.MillraceDoor);
        var answer = await Run.Async("proof", file.Path, "--machine", "door-dual", "--language", "es");
        Assert.Equal(1, answer.Status);
        Assert.Contains("NO COMPROBADO", answer.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Checks", answer.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("en")]
    [InlineData("es")]
    public async Task Text_is_readable_at_80_columns_and_every_sentence_has_its_words(string language)
    {
        using var good = Run.Demo(DemoLoggers.LarkspurTwoTank);
        using var cold = Run.Demo(DemoLoggers.MillraceDoor);
        foreach (var file in (string[])[good.Path, cold.Path])
        {
            var answer = await Run.Async("proof", "--language", language, "--working", file);
            Assert.DoesNotContain('[' + "cli.", answer.Output, StringComparison.Ordinal);
            Assert.DoesNotContain('[' + "proof.", answer.Output, StringComparison.Ordinal);
            // The first line is the path itself.
            Assert.All(answer.Output.Split('\n').Where(l => l != file), l => Assert.InRange(l.Length, 0, 80));
        }
    }

    [Fact]
    public async Task Json_has_the_shape_the_handbook_promises()
    {
        using var file = Run.Demo(DemoLoggers.LarkspurTwoTank);
        var answer = await Run.Async("proof", "--json", file.Path);
        using var json = JsonDocument.Parse(answer.Output);
        var root = json.RootElement;
        Assert.Equal("rinsewright.proof/1", root.GetProperty("schema").GetString());
        Assert.Equal(file.Path, root.GetProperty("file").GetString());
        Assert.Equal("proven", root.GetProperty("verdict").GetString());
        Assert.Equal(0, root.GetProperty("rejected").GetArrayLength());
        var channel = root.GetProperty("channels")[0];
        Assert.Equal("[degF]", channel.GetProperty("unit").GetString());
        Assert.Equal(root.GetProperty("rows").GetInt64(), channel.GetProperty("samples").GetInt64());
        Assert.Equal("s", channel.GetProperty("interval").GetProperty("unit").GetString());
        var pass = root.GetProperty("passes")[0];
        Assert.Equal("[degF]", pass.GetProperty("peak").GetProperty("unit").GetString());
        var dose = pass.GetProperty("heatUnits");
        Assert.InRange(dose.GetProperty("value").GetDouble(), dose.GetProperty("low").GetDouble(), dose.GetProperty("high").GetDouble());
        Assert.All(
            (string[])["channel", "start", "end", "a0", "verdict", "because"],
            name => Assert.True(pass.TryGetProperty(name, out _), name)
        );
        Assert.NotEqual(0, root.GetProperty("decisions").GetArrayLength());
    }

    [Fact]
    public async Task Several_files_make_an_array_and_the_worst_status()
    {
        using var good = Run.Demo(DemoLoggers.LarkspurTwoTank);
        using var cold = Run.Demo(DemoLoggers.MillraceDoor);
        var answer = await Run.Async("proof", "--json", good.Path, cold.Path);
        Assert.Equal(1, answer.Status);
        using var json = JsonDocument.Parse(answer.Output);
        Assert.Equal(["proven", "notProven"], json.RootElement.EnumerateArray().Select(r => r.GetProperty("verdict").GetString()!));
    }

    [Fact]
    public async Task One_bad_file_does_not_keep_the_others_from_being_read()
    {
        using var good = Run.Demo(DemoLoggers.LarkspurTwoTank);
        var answer = await Run.Async("proof", "--json", good.Beside("gone.csv"), good.Path);
        Assert.Equal(66, answer.Status);
        Assert.Contains("gone.csv: There is no such file.", answer.Error, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(answer.Output);
        Assert.Equal("proven", Assert.Single(json.RootElement.EnumerateArray()).GetProperty("verdict").GetString());
    }

    [Fact]
    public async Task Standard_input_gives_the_same_answer_and_leaves_nothing_behind()
    {
        var before = Leftovers();
        using var file = Run.Demo(DemoLoggers.MillraceDoor);
        var typed = await Run.Async("proof", "--json", file.Path);
        var piped = await Run.WithInputAsync(DemoLoggers.Bytes(DemoLoggers.MillraceDoor), ["proof", "--json", "-"]);
        Assert.Equal(typed.Status, piped.Status);
        Assert.Equal(Passes(typed), Passes(piped));
        Assert.Equal(before, Leftovers());

        static string Passes(Answer answer)
        {
            using var json = JsonDocument.Parse(answer.Output);
            return json.RootElement.GetProperty("passes").GetRawText();
        }

        static int Leftovers() => Directory.GetFiles(Path.GetTempPath(), "rinsewright-*").Length;
    }

    [Fact]
    public async Task A_channel_is_given_its_place_by_name_or_by_column()
    {
        using var file = Run.Demo(DemoLoggers.LarkspurTwoTank);
        foreach (var channel in (string[])["Plate", "Plate (°F)", "2"])
        {
            var answer = await Run.Async("proof", "--json", file.Path, "--role", channel + "=final-rinse");
            using var json = JsonDocument.Parse(answer.Output);
            Assert.Equal("finalRinseManifold", json.RootElement.GetProperty("channels")[0].GetProperty("role").GetString());
            // A trace of water never proves ware.
            Assert.NotEqual(0, answer.Status);
        }
    }

    [Fact]
    public async Task The_sheet_is_written_whole_in_the_language_asked_for()
    {
        using var file = Run.Demo(DemoLoggers.LarkspurTwoTank);
        var sheet = file.Beside("proof.pdf");
        var answer = await Run.Async(
            "proof",
            file.Path,
            "--sheet",
            sheet,
            "--paper",
            "a4",
            "--kitchen",
            "Larkspur Lodge",
            "--language",
            "es"
        );
        Assert.Equal((0, ""), (answer.Status, answer.Error));
        var bytes = await File.ReadAllBytesAsync(sheet, TestContext.Current.CancellationToken);
        Assert.Equal("%PDF-"u8, bytes.AsSpan(0, 5));
        Assert.Equal(2, Directory.GetFiles(Path.GetDirectoryName(sheet)!).Length);
    }

    [Fact]
    public async Task Progress_is_shown_to_a_person_only()
    {
        using var file = Run.Demo(DemoLoggers.LarkspurTwoTank);
        Assert.Equal("", (await Run.WithInputAsync([], ["proof", file.Path], watched: false)).Error);
        var watched = await Run.WithInputAsync([], ["proof", file.Path], watched: true);
        Assert.True(watched.Error.Length == 0 || watched.Error.EndsWith('\r'), watched.Error);
    }
}
