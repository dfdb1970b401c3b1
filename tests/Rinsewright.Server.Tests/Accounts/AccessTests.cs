using System.Net;
using System.Text;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Server.Hosting;

namespace Rinsewright.Server.Tests.Accounts;

/// <summary>Every endpoint of the running application: who may call it is declared, committed, and true.</summary>
public sealed class AccessTests
{
    private static readonly string[] Callers = ["nobody", Roles.Kitchen, Roles.Technician, Roles.Office];

    // Who may, written down here once more and not asked of the code: nobody, kitchen, technician, office.
    private static readonly Dictionary<string, bool[]> May = new(StringComparer.Ordinal)
    {
        ["Door"] = [true, true, true, true],
        ["SetUp"] = [false, false, false, false], // there is an account already
        ["Own"] = [false, true, true, true],
        ["Read"] = [false, true, true, true],
        ["Work"] = [false, false, true, true],
        ["Office"] = [false, false, false, true],
        ["People"] = [false, false, false, true],
    };

    [Fact]
    public async Task What_every_endpoint_declares_is_the_committed_list()
    {
        await using var server = await TestServer.OnSqliteAloneAsync("What is declared is looked at, no data.");
        using var client = server.CreateClient();
        var text = new StringBuilder();
        foreach (var (method, path, policy) in Declared(server))
        {
            text.Append(policy.PadRight(8)).Append(method.PadRight(7)).Append(path).Append('\n');
        }

        Golden.Same("access.txt", text.ToString());
        var files = All(server).Where(e => !IsOfInterface(e)).ToList();
        Assert.NotEmpty(files);
        Assert.All(files, e => Assert.Equal("Door", PolicyOf(e)));
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Every_endpoint_lets_in_whom_it_declares_and_nobody_else(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        using var technician = await server.JoinAsync(office, Roles.Technician, "Ines Calloway");
        using var kitchen = await server.JoinAsync(office, Roles.Kitchen, "Ana Whitlock", Guid.CreateVersion7());
        using var nobody = server.Stranger();
        HttpClient[] clients = [nobody, kitchen, technician, office];
        var wrong = new List<string>();
        var called = 0;
        foreach (var (method, path, policy) in Declared(server).OrderBy(e => e.Path.EndsWith("/sign-out", StringComparison.Ordinal)))
        {
            for (var i = 0; i < clients.Length; i++)
            {
                using var answer = await CallAsync(clients[i], method, path);
                called++;
                // An endpoint behind the door may itself answer 401, to a name that is not right; it is in then, and says another sentence.
                var refused = answer.StatusCode is HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden;
                if (refused == May[policy][i] || (int)answer.StatusCode >= 500)
                {
                    wrong.Add($"{method} {path} ({policy}) as {Callers[i]}: {(int)answer.StatusCode}");
                }
                else if (refused)
                {
                    var expected = i == 0 && policy != "SetUp" ? HttpStatusCode.Unauthorized : HttpStatusCode.Forbidden;
                    Assert.Equal(expected, answer.StatusCode);
                    Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
                    Assert.Null(answer.Headers.Location); // never sent to a page
                }
            }
        }

        Assert.Empty(wrong);
        Assert.True(called > 120, $"{called} calls");
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Before_the_first_account_this_computer_may_work_and_the_network_may_not_come_in(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var here = server.CreateClient();
        using var there = server.CreateClient();
        there.DefaultRequestHeaders.Add(RemoteAddress.Header, "203.0.113.7");
        var wrong = new List<string>();
        foreach (var (method, path, policy) in Declared(server).Where(e => e.Policy != "SetUp"))
        {
            using var atHome = await CallAsync(here, method, path);
            using var away = await CallAsync(there, method, path);
            var home = atHome.StatusCode is not (HttpStatusCode.Forbidden or HttpStatusCode.Unauthorized);
            if (home != policy is "Door" or "Read" or "Work" or "Office" || away.StatusCode != HttpStatusCode.Forbidden)
            {
                wrong.Add($"{method} {path} ({policy}): {(int)atHome.StatusCode} here, {(int)away.StatusCode} from elsewhere");
            }
        }

        Assert.Empty(wrong);
        Assert.Equal(HttpStatusCode.Forbidden, await there.StatusAsync("GET", "index.html"));
        Assert.Equal(
            HttpStatusCode.Forbidden,
            await there.StatusAsync("POST", "api/set-up", new NameAndPassword("Odile Marsh", Crew.Password))
        );
        Assert.False((await here.MeAsync()).Accounts);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task The_setting_for_the_open_network_lets_nobody_in_once_there_is_an_account(Database database)
    {
        await using var server = await TestServer.MakeAsync(database, null, ("Rinsewright:AllowOpenNetwork", "true"));
        using var there = server.CreateClient();
        there.DefaultRequestHeaders.Add(RemoteAddress.Header, "203.0.113.7");
        Assert.Equal(HttpStatusCode.OK, await there.StatusAsync("GET", "api/proofs"));
        Assert.Equal(
            HttpStatusCode.Forbidden,
            await there.StatusAsync("POST", "api/set-up", new NameAndPassword("Odile Marsh", Crew.Password))
        );
        using var office = await server.SetUpAsync();
        Assert.Equal(HttpStatusCode.Unauthorized, await there.StatusAsync("GET", "api/proofs"));
        using var here = server.CreateClient(); // this computer has no privilege left either
        Assert.Equal(HttpStatusCode.Unauthorized, await here.StatusAsync("GET", "api/proofs"));
        Assert.Equal(HttpStatusCode.Unauthorized, await here.StatusAsync("DELETE", "api/demo"));
        Assert.Equal(HttpStatusCode.OK, await there.StatusAsync("GET", "index.html"));
        Assert.Equal(HttpStatusCode.OK, await there.StatusAsync("GET", "health"));
    }

    private static async Task<HttpResponseMessage> CallAsync(HttpClient client, string method, string path)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), new Uri(Filled(path), UriKind.Relative));
        request.Headers.Add(SameOrigin.Header, "1");
        if (method is "POST" or "PUT" && path != "/api/sanitization/proof")
        {
            request.Content = new StringContent(path == "/api/operations" ? "[]" : "{}", Encoding.UTF8, "application/json");
        }

        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    private static string Filled(string path) =>
        path.Replace("{sha256}", new string('0', 64), StringComparison.Ordinal)
            .Replace("{documentName}", "v1", StringComparison.Ordinal)
            .Replace("{id}", "AAAA", StringComparison.Ordinal)
            .Replace("{id:guid}", "01993a00-0001-7000-8000-7a6d617261c9", StringComparison.Ordinal)
            .Replace("{session:guid}", "01993a00-0001-7000-8000-7a6d617261c8", StringComparison.Ordinal);

    private static IEnumerable<(string Method, string Path, string Policy)> Declared(TestServer server) =>
        All(server)
            .Where(IsOfInterface)
            .SelectMany(e =>
                e.Metadata.GetRequiredMetadata<IHttpMethodMetadata>()
                    .HttpMethods.Select(m => (Method: m, Path: "/" + e.RoutePattern.RawText!.Trim('/'), Policy: PolicyOf(e)))
            )
            .OrderBy(e => e.Path, StringComparer.Ordinal)
            .ThenBy(e => e.Method, StringComparer.Ordinal);

    private static IEnumerable<RouteEndpoint> All(TestServer server) =>
        server.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>();

    private static bool IsOfInterface(RouteEndpoint endpoint) =>
        endpoint.Metadata.GetMetadata<IEndpointSummaryMetadata>() is not null
        || endpoint.RoutePattern.RawText!.StartsWith("/api", StringComparison.Ordinal)
        || endpoint.RoutePattern.RawText!.StartsWith("/openapi", StringComparison.Ordinal);

    private static string PolicyOf(RouteEndpoint endpoint)
    {
        Assert.Null(endpoint.Metadata.GetMetadata<IAllowAnonymous>());
        return string.Join(
            '+',
            endpoint.Metadata.GetOrderedMetadata<IAuthorizeData>().Select(a => a.Policy ?? "nothing").DefaultIfEmpty("nothing")
        );
    }
}
