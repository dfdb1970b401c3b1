using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Rinsewright.Contracts.Accounts;

namespace Rinsewright.Server.Tests.Accounts;

/// <summary>Invented people who come to have accounts as people do: by the set-up and by invitations.</summary>
public static class Crew
{
    /// <summary>Password of all of them.</summary>
    public const string Password = "four plates and a rack";

    private static int addresses;

    /// <summary>The first account, made at the server's computer.</summary>
    public static async Task<HttpClient> SetUpAsync(this TestServer server, string name = "Odile Marsh")
    {
        var client = server.CreateClient();
        using var answer = await client.SendJsonAsync("POST", "api/set-up", new NameAndPassword(name, Password));
        await ExpectAsync(HttpStatusCode.OK, answer);
        return client;
    }

    /// <summary>A client that comes from an address of its own.</summary>
    public static HttpClient Stranger(this TestServer server)
    {
        var client = server.CreateClient();
        var number = Interlocked.Increment(ref addresses);
        client.DefaultRequestHeaders.Add("X-Forwarded-For", $"198.51.{number / 250}.{(number % 250) + 1}");
        return client;
    }

    /// <summary>Invites somebody and accepts in their place.</summary>
    public static async Task<HttpClient> JoinAsync(
        this TestServer server,
        HttpClient office,
        string role,
        string name,
        params Guid[] kitchens
    )
    {
        var made = await office.InviteAsync(role, kitchens);
        var client = server.Stranger();
        using var answer = await client.SendJsonAsync("POST", "api/invitations/accept", new Acceptance(made.Token, name, Password));
        await ExpectAsync(HttpStatusCode.OK, answer);
        return client;
    }

    /// <summary>Makes an invitation.</summary>
    public static async Task<InvitationMade> InviteAsync(this HttpClient office, string role, Guid[]? kitchens = null, int hours = 24)
    {
        using var answer = await office.SendJsonAsync("POST", "api/invitations", new InvitationWish(role, kitchens ?? [], "", hours));
        return await answer.ReadAsync<InvitationMade>();
    }

    /// <summary>Signs in; the client carries the cookie afterwards.</summary>
    public static Task<HttpResponseMessage> SignInAsync(this HttpClient client, string name, string password = Password) =>
        client.SendJsonAsync("POST", "api/sign-in", new NameAndPassword(name, password));

    /// <summary>Who the client is to the server.</summary>
    public static async Task<WhoAmI> MeAsync(this HttpClient client) => await client.AskAsync<WhoAmI>("api/me");

    /// <summary>Asks for JSON.</summary>
    public static async Task<T> AskAsync<T>(this HttpClient client, string path)
    {
        using var answer = await client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        return await answer.ReadAsync<T>();
    }

    /// <summary>Sends JSON, or nothing.</summary>
    public static async Task<HttpResponseMessage> SendJsonAsync(this HttpClient client, string method, string path, object? body = null)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), new Uri(path, UriKind.Relative))
        {
            Content = JsonContent.Create(body ?? new { }, options: JsonSerializerOptions.Web),
        };
        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    /// <summary>Sends JSON and gives the status alone.</summary>
    public static async Task<HttpStatusCode> StatusAsync(this HttpClient client, string method, string path, object? body = null)
    {
        using var answer = await client.SendJsonAsync(method, path, body);
        return answer.StatusCode;
    }

    /// <summary>Reads an answer that must be good.</summary>
    public static async Task<T> ReadAsync<T>(this HttpResponseMessage answer)
    {
        await ExpectAsync(HttpStatusCode.OK, answer);
        return (await answer.Content.ReadFromJsonAsync<T>(JsonSerializerOptions.Web, TestContext.Current.CancellationToken))!;
    }

    /// <summary>Fails with what the answer says where it is another.</summary>
    public static async Task ExpectAsync(HttpStatusCode status, HttpResponseMessage answer)
    {
        if (answer.StatusCode != status)
        {
            Assert.Fail($"{(int)answer.StatusCode}: {await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)}");
        }
    }
}

/// <summary>A clock that stands still until it is moved.</summary>
public sealed class Clock : TimeProvider
{
    /// <summary>Now.</summary>
    public DateTimeOffset Now { get; set; } = DateTimeOffset.UtcNow;

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => Now;
}
