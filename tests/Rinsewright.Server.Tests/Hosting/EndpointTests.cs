using System.Net;
using System.Net.Http.Json;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Rinsewright.Server.Hosting;

namespace Rinsewright.Server.Tests.Hosting;

/// <summary>What holds for every endpoint.</summary>
public sealed class EndpointTests
{
    [Fact]
    public async Task Every_endpoint_declares_who_may_call_it()
    {
        await using var server = await TestServer.OnSqliteAloneAsync("What is declared is looked at, no data.");
        using var client = server.CreateClient();
        var endpoints = server.Services.GetRequiredService<EndpointDataSource>().Endpoints;
        Assert.True(endpoints.Count > 12);
        var silent = endpoints.Where(e =>
            e.Metadata.GetOrderedMetadata<IAuthorizeData>().All(a => a.Policy is null) && e.Metadata.GetMetadata<IAllowAnonymous>() is null
        );
        Assert.Empty(silent.Select(e => e.DisplayName));
    }

    [Fact]
    public async Task Every_endpoint_of_the_interface_has_a_name_and_a_summary()
    {
        await using var server = await TestServer.OnSqliteAloneAsync("What is declared is looked at, no data.");
        using var client = server.CreateClient();
        var interfaces = server
            .Services.GetRequiredService<EndpointDataSource>()
            .Endpoints.OfType<RouteEndpoint>()
            .Where(e =>
                e.RoutePattern.RawText!.StartsWith("/api", StringComparison.Ordinal)
                && !e.RoutePattern.RawText.Contains("{**", StringComparison.Ordinal)
            )
            .ToList();
        Assert.True(interfaces.Count >= 10);
        Assert.All(
            interfaces,
            e => Assert.False(string.IsNullOrEmpty(e.Metadata.GetMetadata<IEndpointSummaryMetadata>()?.Summary), e.DisplayName)
        );
        Assert.All(interfaces, e => Assert.NotNull(e.Metadata.GetMetadata<IEndpointNameMetadata>()));
    }

    [Theory]
    [OnBoth("/")]
    [OnBoth("/api/proofs")]
    [OnBoth("/api/proofs/00000000-0000-0000-0000-000000000000")]
    [OnBoth("/api/nothing")]
    [OnBoth("/health")]
    [OnBoth("/openapi/v1.json")]
    public async Task Every_answer_carries_the_security_headers(Database database, string path)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        using var response = await client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        var policy = Assert.Single(response.Headers.GetValues("Content-Security-Policy"));
        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.Contains("script-src 'self' 'wasm-unsafe-eval';", policy, StringComparison.Ordinal); // no inline script, no eval
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(response.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("no-referrer", Assert.Single(response.Headers.GetValues("Referrer-Policy")));
        Assert.Equal("same-origin", Assert.Single(response.Headers.GetValues("Cross-Origin-Opener-Policy")));
        Assert.False(response.Headers.Contains("Access-Control-Allow-Origin"));
        if (path.StartsWith("/api", StringComparison.Ordinal))
        {
            Assert.True(response.Headers.CacheControl!.NoStore);
        }
    }

    [Theory]
    [InlineData("en", "Not found", "/openapi/v1.json")]
    [InlineData("es-MX,es;q=0.9,en;q=0.5", "No se encontró", "/openapi/v1.json")]
    [InlineData("fr", "Not found", "/openapi/v1.json")]
    public async Task Refusals_are_problem_details_in_the_language_of_the_caller(string language, string title, string detail)
    {
        await using var server = await TestServer.OnSqliteAloneAsync("It is answered before any data is asked for.");
        using var client = server.CreateClient();
        client.DefaultRequestHeaders.Add("Accept-Language", language);
        using var response = await client.GetAsync(new Uri("/api/nothing", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType!.MediaType);
        var problem = await response.Content.ReadFromJsonAsync<Problem>(TestContext.Current.CancellationToken);
        Assert.Equal(title, problem!.Title);
        Assert.Contains(detail, problem.Detail, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("PUT", "api/operations", "application/json", HttpStatusCode.MethodNotAllowed)]
    [InlineData("POST", "api/operations", "application/xml", HttpStatusCode.UnsupportedMediaType)]
    [InlineData("POST", "api/operations", "application/json", HttpStatusCode.BadRequest)]
    [InlineData("POST", "api/sanitization/proof", "application/json", HttpStatusCode.UnsupportedMediaType)]
    public async Task Wrong_requests_are_told_what_is_wrong(string method, string path, string type, HttpStatusCode expected)
    {
        await using var server = await TestServer.OnSqliteAloneAsync("It is answered before any data is asked for.");
        using var client = server.CreateClient();
        using var request = new HttpRequestMessage(new HttpMethod(method), new Uri(path, UriKind.Relative))
        {
            Content = new StringContent("{ \"a\": ", new System.Net.Http.Headers.MediaTypeHeaderValue(type)),
        };
        using var response = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(expected, response.StatusCode);
        var problem = await response.Content.ReadFromJsonAsync<Problem>(TestContext.Current.CancellationToken);
        Assert.True(problem!.Detail.Length > 20, problem.Detail);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Health_says_that_database_and_files_can_be_used_and_when_they_cannot(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var health = await client.GetFromJsonAsync<HealthReport>("/health", TestContext.Current.CancellationToken);
        Assert.Equal(("healthy", true, true), (health!.Status, health.Database, health.Files));
        Directory.Delete(Path.Combine(server.Folder, "files"), recursive: true);
        using var response = await client.GetAsync(new Uri("/health", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, response.StatusCode);
    }

    [Fact]
    public async Task Client_and_unknown_pages_of_it_are_served_and_unknown_files_are_not()
    {
        await using var server = await TestServer.OnSqliteAloneAsync("Files of the client are served, no data.");
        using var client = server.CreateClient();
        Assert.Contains(
            "_framework/blazor.webassembly.js",
            await client.GetStringAsync("/", TestContext.Current.CancellationToken),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "_framework/blazor.webassembly.js",
            await client.GetStringAsync("/proof/new", TestContext.Current.CancellationToken),
            StringComparison.Ordinal
        );
        Assert.NotEmpty(await client.GetByteArrayAsync("/_framework/dotnet.js", TestContext.Current.CancellationToken));
        using var missing = await client.GetAsync(new Uri("/missing.js", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, missing.StatusCode);
    }

    [Fact]
    public async Task OpenApi_document_is_the_committed_one()
    {
        await using var server = await TestServer.OnSqliteAloneAsync("What is declared is looked at, no data.");
        using var client = server.CreateClient();
        Golden.Same("openapi.json", await client.GetStringAsync("/openapi/v1.json", TestContext.Current.CancellationToken));
    }

    /// <summary>Problem details as a caller reads them.</summary>
    public sealed record Problem(string Title, string Detail, int Status);
}
