using System.Text.Json;
using Rinsewright.Drawing.Ware;
using Rinsewright.Knowledge;

namespace Rinsewright.Cli.Tests.Bench;

/// <summary>Ware results from the command line.</summary>
public sealed class WareCommandTests
{
    [Fact]
    public async Task Without_a_picture_it_lists_those_it_knows()
    {
        var answer = await Run.Async(["bench", "ware"]);

        Assert.Equal(0, answer.Status);
        Assert.All(BuiltInKnowledge.Trade.WareResults, r => Assert.Contains("  " + r.Id[3..], answer.Output, StringComparison.Ordinal));
    }

    [Fact] // common practice, no source: film that mild acid takes off is hardness
    public async Task Film_that_acid_clears_is_hard_water_and_the_rinse_comes_first()
    {
        using var before = await JsonAsync("white-film", "--found", "chk-acid-test-clears");
        using var after = await JsonAsync("white-film", "--found", "chk-acid-test-clears", "--rinsed");

        Assert.Equal("rinsewright.ware/1", before.RootElement.GetProperty("schema").GetString());
        Assert.Equal("rinse", before.RootElement.GetProperty("next").GetProperty("kind").GetString());
        Assert.Equal(["acid"], before.RootElement.GetProperty("onPiece").EnumerateArray().Select(e => e.GetString()));
        Assert.Equal("hard-water", before.RootElement.GetProperty("causes")[0].GetProperty("fault").GetString());
        Assert.NotEqual("rinse", after.RootElement.GetProperty("next").GetProperty("kind").GetString());
    }

    // A look, a reading or a refill in between is no rinse, in whatever order it is typed.
    [Theory]
    [InlineData(
        "hypochlorite",
        "chk-acid-test-clears",
        "white-film",
        "tannin",
        "--not-found",
        "chk-rinse-clears",
        "--found",
        "chk-bleach-soak-clears"
    )]
    [InlineData(
        "hypochlorite",
        "chk-acid-test-clears",
        "white-film",
        "tannin",
        "--found",
        "chk-bleach-soak-clears",
        "--not-found",
        "chk-detergent-empty"
    )]
    [InlineData(
        "acid",
        "chk-bleach-soak-clears",
        "white-film",
        "tannin",
        "--not-found",
        "chk-rinse-clears",
        "--found",
        "chk-acid-test-clears"
    )]
    [InlineData(
        "acid",
        "chk-bleach-soak-clears",
        "white-film",
        "tannin",
        "--found",
        "chk-acid-test-clears",
        "--not-found",
        "rd-hardness/high"
    )]
    public async Task Only_a_rinse_takes_what_is_on_the_piece(string agent, string never, params string[] arguments)
    {
        using var json = await JsonAsync(arguments);

        Assert.Equal("rinse", json.RootElement.GetProperty("next").GetProperty("kind").GetString());
        Assert.Equal([agent], json.RootElement.GetProperty("onPiece").EnumerateArray().Select(e => e.GetString()));
        Assert.DoesNotContain(never, json.RootElement.GetProperty("tests").EnumerateArray().Select(t => t.GetProperty("test").GetString()));
    }

    [Fact] // the command line grows by one answer at a time: the rinse of before is not the rinse of now
    public async Task A_rinse_said_before_a_test_is_not_the_rinse_after_it()
    {
        string[] before = ["white-film", "tannin", "--not-found", "chk-acid-test-clears", "--rinsed"];
        using var now = await JsonAsync([.. before, "--found", "chk-bleach-soak-clears"]);
        using var after = await JsonAsync([.. before, "--found", "chk-bleach-soak-clears", "--rinsed"]);

        Assert.Equal(["hypochlorite"], now.RootElement.GetProperty("onPiece").EnumerateArray().Select(e => e.GetString()));
        Assert.Empty(after.RootElement.GetProperty("onPiece").EnumerateArray());
    }

    [Theory]
    [InlineData("rust", "wr-rust")]
    [InlineData("cloudy", "wr-white-film")]
    [InlineData("óxido", "wr-rust")]
    public async Task A_picture_is_found_by_a_word_of_its_name(string typed, string picture)
    {
        using var json = await JsonAsync(typed);

        Assert.Equal([picture], json.RootElement.GetProperty("pictures").EnumerateArray().Select(e => e.GetString()));
    }

    [Fact]
    public async Task Kinds_are_those_of_a_new_machine()
    {
        using var kind = await JsonAsync("white-film", "--machine", "door-hot-water");
        using var type = await JsonAsync("white-film", "--machine", "door-hot");
        var help = await Run.Async(["bench", "ware", "--help"]);

        Assert.Equal(type.RootElement.GetRawText(), kind.RootElement.GetRawText());
        Assert.Contains("rack-conveyor-three-tank", help.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_chlorine_soak_waits_while_acid_is_on_the_piece()
    {
        using var json = await JsonAsync("white-film", "tannin", "--not-found", "chk-acid-test-clears");

        var tests = json.RootElement.GetProperty("tests").EnumerateArray().Select(t => t.GetProperty("test").GetString());
        Assert.DoesNotContain("chk-bleach-soak-clears", tests);
        Assert.Contains("chk-bleach-soak-clears", json.RootElement.GetProperty("waiting").EnumerateArray().Select(e => e.GetString()));
    }

    [Theory]
    [InlineData("en", "CAUTION: Acid: goggles and gloves", "Expert estimate")]
    [InlineData("es", "PRECAUCIÓN: Ácido: lentes y guantes", "Estimación de experto")]
    public async Task The_caution_stands_at_the_step(string language, string caution, string estimate)
    {
        var answer = await Run.Async([
            "bench",
            "ware",
            "white-film",
            "--not-found",
            "chk-rinse-clears",
            "--not-found",
            "chk-detergent-empty",
            "--language",
            language,
        ]);

        Assert.Equal(0, answer.Status);
        Assert.Contains(caution, answer.Output, StringComparison.Ordinal);
        Assert.Contains(estimate, answer.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Acid_with_chlorine_stops_everything()
    {
        var answer = await Run.Async(["bench", "ware", "odor", "--found", "chk-acid-chlorine"]);

        Assert.Contains("Stop: Acid mixed with chlorine product", answer.Output, StringComparison.Ordinal);
        Assert.Contains("Everyone out", answer.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("chk-interior-dirty", answer.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("There is no picture sparkle", "sparkle")]
    [InlineData("stain can be any of these: ", "stain")]
    [InlineData("chk-nothing is no open test", "spots", "--found", "chk-nothing")]
    [InlineData("--machine: submarine is not known", "spots", "--machine", "submarine")]
    public async Task What_is_wrong_is_said(string says, params string[] args)
    {
        var answer = await Run.Async(["bench", "ware", .. args]);

        Assert.Equal(64, answer.Status);
        Assert.Empty(answer.Output);
        Assert.Contains(says, answer.Error.Replace('\u00a0', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_picture_has_a_drawing_of_its_own()
    {
        var ids = BuiltInKnowledge.Trade.WareResults.Select(r => r.Id).ToList();

        Assert.Equal(ids.Order(StringComparer.Ordinal), WareDrawing.Ids.Order(StringComparer.Ordinal));
        Assert.Equal(ids.Count, ids.Select(WareDrawing.Svg).Distinct(StringComparer.Ordinal).Count());
        Assert.All(ids, id => System.Xml.Linq.XDocument.Parse(WareDrawing.Svg(id)));
    }

    private static async Task<JsonDocument> JsonAsync(params string[] args)
    {
        var answer = await Run.Async(["bench", "ware", .. args, "--json"]);
        Assert.True(answer.Status == 0, answer.Error);
        return JsonDocument.Parse(answer.Output);
    }
}
