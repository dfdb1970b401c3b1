using System.Text;
using System.Text.Json.Nodes;
using Rinsewright.Tests.Shared;

namespace Rinsewright.Cli.Tests.Visits;

/// <summary>The visit commands on the demo visits: status, words, JSON, paper, and files that cannot be.</summary>
public sealed class VisitCommandTests
{
    [Theory]
    [InlineData("tin-bell-unprimed-drum", 0, "Sanitizing proved")]
    [InlineData("larkspur-routine", 0, "Sanitizing proved; check again")]
    [InlineData("quarry-street-wrong-limit", 0, "Sanitizing proved")]
    [InlineData("millrace-element-on-the-shelf", 1, "Not sanitizing")]
    [InlineData("saint-odile-wet-wiring", 1, "Stop use")]
    [InlineData("saltbox-not-proved", 2, "Not proved today")]
    public async Task The_verdict_is_said_and_is_the_exit_status(string visit, int status, string word)
    {
        var answer = await Run.Async("visit", "check", Demo(visit));
        Assert.Equal((status, ""), (answer.Status, answer.Error));
        Assert.Contains(word, answer.Output.Split('\n')[2], StringComparison.Ordinal);
        Assert.All(answer.Output.Split('\n'), l => Assert.InRange(l.Length, 0, 80));
    }

    [Fact]
    public async Task Json_says_the_same_in_keys_and_words()
    {
        var answer = await Run.Async("visit", "check", Demo("saint-odile-wet-wiring"), "--json", "--language", "es");
        var json = JsonNode.Parse(answer.Output)!;
        Assert.Equal("rinsewright.visit-check/1", (string)json["schema"]!);
        Assert.Equal(("stopUse", "No usar"), ((string)json["standing"]!, (string)json["standingText"]!));
        Assert.True((bool)json["stops"]![0]!["open"]!);
        Assert.All(json["readings"]!.AsArray().Where(l => l!["value"] is null), l => Assert.Equal("notRead", (string)l!["status"]!));
    }

    // Larkspur's log: 14 days of 3, two blanks at noon, and 184 °F every night.
    [Fact]
    public async Task The_crew_s_log_is_said_in_words_and_in_keys()
    {
        var log = JsonNode.Parse((await Run.Async("visit", "check", Demo("larkspur-routine"), "--json")).Output)!["crewLogs"]![0]!;
        Assert.Equal(
            ("2026-11-04", "2026-11-17", 42, 2),
            ((string)log["from"]!, (string)log["until"]!, (int)log["expected"]!, (int)log["missing"]!)
        );
        Assert.Equal((184.0, 14, "chk-log-gaps"), ((double)log["sameValue"]!, (int)log["sameCount"]!, (string)log["finding"]!));
        Assert.InRange((double)log["chance"]!, 0, 0.01);
        Assert.Equal(0, (int)log["outside"]!);

        var english = (await Run.Async("visit", "check", Demo("larkspur-routine"))).Output.Replace("\n    ", " ", StringComparison.Ordinal);
        Assert.Contains("missing 2 of 42 entries, most of them in shift 2: 2 of 14 days", english, StringComparison.Ordinal);
        Assert.Contains("agrees with the 186 °F you read", english.Replace('\u00a0', ' '), StringComparison.Ordinal);
        var spanish = (await Run.Async("visit", "check", Demo("larkspur-routine"), "--language", "es")).Output;
        Assert.Contains("La bitácora del personal", spanish, StringComparison.Ordinal);
        // Where none was looked through, that is said, and nothing else.
        var without = (await Run.Async("visit", "check", Demo("saltbox-not-proved"))).Output;
        Assert.Contains("The crew's log was not looked at.", without, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("report")]
    [InlineData("inspector")]
    [InlineData("tag")]
    public async Task Each_page_is_written(string page)
    {
        using var folder = Run.File("x.json", "{}");
        var pdf = folder.Beside("page.pdf");
        var answer = await Run.Async(
            "visit",
            "report",
            Demo("saint-odile-wet-wiring"),
            "--sheet",
            pdf,
            "--page",
            page,
            "--paper",
            "a4",
            "--language",
            "es",
            "--units",
            "us"
        );
        Assert.Equal((0, "", ""), (answer.Status, answer.Output, answer.Error));
        Assert.StartsWith(
            "%PDF-",
            Encoding.Latin1.GetString(await File.ReadAllBytesAsync(pdf, TestContext.Current.CancellationToken)),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(64, "tag", "there is no tag")]
    [InlineData(64, "poster", "report, inspector, tag")]
    public async Task What_cannot_be_printed_is_told(int status, string page, string says)
    {
        using var folder = Run.File("x.json", "{}");
        var answer = await Run.Async("visit", "report", Demo("larkspur-routine"), "--sheet", folder.Beside("page.pdf"), "--page", page);
        Assert.Equal(status, answer.Status);
        Assert.Contains(says, answer.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(folder.Beside("page.pdf")));
    }

    [Theory]
    [InlineData("{}", "version")]
    [InlineData("no", "visit")]
    public async Task A_file_that_is_no_visit_is_told_with_its_name_and_place(string text, string place)
    {
        using var file = Run.File("moon.json", text);
        var answer = await Run.Async("visit", "check", file.Path);
        Assert.Equal(65, answer.Status);
        Assert.Contains("moon.json: not a visit that can be", answer.Error, StringComparison.Ordinal);
        Assert.Contains(place, answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_to_write_is_needed() => Assert.Equal(64, (await Run.Async("visit", "report", Demo("larkspur-routine"))).Status);

    private static string Demo(string name) => Path.Combine(Tree.Root, "docs", "visits", $"{name}.json");
}
