using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Files.Demo;
using Rinsewright.Files.Sanitization;
using Rinsewright.Server.Hosting;

namespace Rinsewright.Server.Tests.Sanitization;

/// <summary>The server computes the same proof as every other host, and says what is wrong with a request.</summary>
public sealed class ProofEndpointTests
{
    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Readings_alone_give_the_report_of_the_run_in_the_language_asked_for(Database database)
    {
        var request = new ProofRequest(
            Machine: "stationaryRackSingleTemperature",
            Method: "chlorine",
            Readings: [new ReadingDto("sanitizingSolution", new AmountDto(20, "mg/L"), "strip")],
            Language: "es"
        );
        var expected = await ProofRun.RunAsync(request, null, null, null, TestContext.Current.CancellationToken);
        var (status, body) = await PostAsync(database, JsonContent.Create(request, ContractsJson.Default.ProofRequest), null, null);
        Assert.Equal(HttpStatusCode.OK, status);
        var actual = System.Text.Json.JsonSerializer.Deserialize(body, ContractsJson.Default.ProofReport)!;
        Assert.Equal("notProven", actual.Verdict); // 20 mg/L is under the least 25 mg/L of Food Code 4-501.114(A)
        Assert.Equivalent(expected, actual, strict: true);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Logger_file_gives_the_report_of_the_run(Database database)
    {
        var content = DemoLoggers.Bytes(DemoLoggers.LarkspurTwoTank);
        var request = new ProofRequest();
        using var stream = new MemoryStream(content);
        var expected = await ProofRun.RunAsync(request, stream, "a.csv", null, TestContext.Current.CancellationToken);
        var (status, body) = await PostAsync(
            database,
            JsonContent.Create(request, ContractsJson.Default.ProofRequest),
            content,
            "../../a.csv"
        );
        Assert.Equal(HttpStatusCode.OK, status);
        var actual = System.Text.Json.JsonSerializer.Deserialize(body, ContractsJson.Default.ProofReport)!;
        Assert.Equal(5, actual.Passes.Count); // five racks by the file's own description
        Assert.Equivalent(expected, actual, strict: true);
    }

    [Theory]
    [OnBoth("""{"machine":"carousel"}""", HttpStatusCode.BadRequest, "machine", "multitankConveyor")]
    [OnBoth("""{"ruleSet":"nowhere"}""", HttpStatusCode.BadRequest, "ruleSet", "fda-food-code")]
    [OnBoth("""{"ruleSetJson":"{}"}""", HttpStatusCode.BadRequest, "rule set", "")]
    [OnBoth(
        """{"readings":[{"point":"washTank","value":{"value":1,"unit":"lb"},"method":"probe"}]}""",
        HttpStatusCode.BadRequest,
        "readings[0].value",
        "[degF]"
    )]
    [OnBoth("""{"readings":[{"point":"washTank","method":"probe"}]}""", HttpStatusCode.BadRequest, "$.readings[0]", "value")]
    [OnBoth("""{"machine": 7}""", HttpStatusCode.BadRequest, "$.machine", "line 1")]
    [OnBoth("""{"machine": """, HttpStatusCode.BadRequest, "line 1", "")]
    public async Task What_cannot_be_used_is_named_with_what_is_allowed(
        Database database,
        string request,
        HttpStatusCode expected,
        string where,
        string allowed
    )
    {
        var (status, body) = await PostAsync(database, new StringContent(request), null, null);
        Assert.Equal(expected, status);
        Assert.Contains(where, body, StringComparison.Ordinal);
        Assert.Contains(allowed, body, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", body, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", body, StringComparison.Ordinal);
        Assert.DoesNotContain("Rinsewright.", body, StringComparison.Ordinal);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Picture_in_place_of_a_logger_file_is_refused_in_words(Database database)
    {
        byte[] picture = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 13];
        var (status, body) = await PostAsync(database, new StringContent("{}"), picture, "plate.png");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.DoesNotContain("[files.", body, StringComparison.Ordinal); // the words are there
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Rule_sets_come_with_a_citation_at_every_limit(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var sets = await client.GetFromJsonAsync(
            "api/sanitization/rule-sets",
            ContractsJson.Default.IReadOnlyListRuleSetDto,
            TestContext.Current.CancellationToken
        );
        Assert.Equal("fda-food-code", sets![0].Id);
        Assert.All(sets.SelectMany(s => s.Limits), l => Assert.False(string.IsNullOrEmpty(l.Citation.Source)));
        var rinse = sets[0].Limits.Single(l => l.Id == "final-rinse");
        Assert.Contains(new AmountDto(180, "[degF]"), rinse.Printed); // Food Code 4-501.112(A)(2)
    }

    private static async Task<(HttpStatusCode Status, string Body)> PostAsync(
        Database database,
        HttpContent request,
        byte[]? file,
        string? name
    )
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        client.DefaultRequestHeaders.Add(SameOrigin.Header, "1");
        using var form = new MultipartFormDataContent { { request, "request" } };
        if (file is not null)
        {
            var part = new ByteArrayContent(file);
            part.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
            form.Add(part, "file", name!);
        }

        using var response = await client.PostAsync(
            new Uri("api/sanitization/proof", UriKind.Relative),
            form,
            TestContext.Current.CancellationToken
        );
        return (response.StatusCode, await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }
}
