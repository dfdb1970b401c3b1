using System.Net;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Server.Accounts;
using Rinsewright.Server.Storage;
using Rinsewright.Server.Tests.Hosting;

namespace Rinsewright.Server.Tests.Accounts;

/// <summary>The first account, signing in, what is not told, and how long it holds.</summary>
public sealed class SignInTests
{
    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task The_first_account_is_made_once_and_signs_in(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var fresh = server.CreateClient();
        var before = await fresh.MeAsync();
        Assert.Equal((false, true, null), (before.Accounts, before.SetUp, before.Account?.Name));
        using var office = await server.SetUpAsync("  Odile   Marsh ");
        var after = await office.MeAsync();
        Assert.Equal((true, false, "Odile Marsh", Roles.Office), (after.Accounts, after.SetUp, after.Account!.Name, after.Account.Role));
        Assert.Equal(
            HttpStatusCode.Forbidden,
            await fresh.StatusAsync("POST", "api/set-up", new NameAndPassword("Bram Oakes", Crew.Password))
        );

        // Case, accents and spaces are forgiven in the name, nothing in the password. The same session works in another process of the team.
        using var other = server.Stranger();
        Assert.Equal(HttpStatusCode.Unauthorized, await other.StatusAsync("GET", "api/proofs"));
        using var signed = await other.SignInAsync("odile  MARSH");
        Assert.Equal(HttpStatusCode.OK, signed.StatusCode);
        Assert.Equal(HttpStatusCode.OK, await other.StatusAsync("GET", "api/proofs"));
        await using var again = server.Again();
        using var elsewhere = again.CreateClient();
        elsewhere.DefaultRequestHeaders.Add("Cookie", signed.Headers.GetValues("Set-Cookie").Single().Split(';')[0]);
        Assert.Equal("Odile Marsh", (await elsewhere.MeAsync()).Account!.Name);
        using var wrong = await other.SignInAsync("Odile Marsh", Crew.Password.ToUpperInvariant());
        Assert.Equal(HttpStatusCode.Unauthorized, wrong.StatusCode);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Of_several_who_set_up_at_once_one_does(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        var answers = await Task.WhenAll(
            Enumerable.Range(0, 6).Select(i => client.StatusAsync("POST", "api/set-up", new NameAndPassword($"Person {i}", Crew.Password)))
        );
        Assert.Single(answers, HttpStatusCode.OK);
        await using var scope = server.Services.CreateAsyncScope();
        Assert.Equal(1, await scope.ServiceProvider.GetRequiredService<AppDb>().Accounts.CountAsync(TestContext.Current.CancellationToken));
    }

    [Theory]
    [OnBoth("X-Forwarded-For", "203.0.113.7")]
    [OnBoth("Forwarded", "for=203.0.113.7")]
    [OnBoth("X-Real-IP", "203.0.113.7")]
    [OnBoth("Host", "rinsewright.example")]
    [OnBoth(RemoteAddress.Header, "203.0.113.7")]
    public async Task The_first_account_is_not_made_through_a_proxy_or_from_elsewhere(Database database, string header, string value)
    {
        await using var server = await TestServer.MakeAsync(
            database,
            null,
            ("AllowedHosts", "*"),
            ("Rinsewright:AllowOpenNetwork", "true")
        );
        using var client = server.CreateClient();
        client.DefaultRequestHeaders.Add(header, value);
        Assert.False((await client.MeAsync()).SetUp);
        Assert.Equal(
            HttpStatusCode.Forbidden,
            await client.StatusAsync("POST", "api/set-up", new NameAndPassword("Odile Marsh", Crew.Password))
        );
    }

    [Theory]
    [OnBoth("Odile Marsh", "eleven char", "12 characters")]
    [OnBoth("Odile Marsh", "aaaaaaaaaaaabb", "5 different")]
    [OnBoth("Odile Marsh of Tamarack", "odile marsh of tamarack", "must not be the name")]
    [OnBoth("-", Crew.Password, "two letters")]
    public async Task A_password_or_name_that_will_not_do_is_told_why(Database database, string name, string password, string why)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var client = server.CreateClient();
        using var answer = await client.SendJsonAsync("POST", "api/set-up", new NameAndPassword(name, password));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(why, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.False((await client.MeAsync()).Accounts);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task The_cookie_is_out_of_reach_of_scripts_and_other_sites_and_behind_https_for_https_alone(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        using var plain = await server.Stranger().SignInAsync("Odile Marsh");
        var cookie = plain.Headers.GetValues("Set-Cookie").Single();
        Assert.Contains("; httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("; samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("; secure", cookie, StringComparison.OrdinalIgnoreCase);
        using var client = server.Stranger();
        client.DefaultRequestHeaders.Add("X-Forwarded-Proto", "https");
        client.DefaultRequestHeaders.Add(RemoteAddress.Header, "127.0.0.1");
        using var proxied = await client.SignInAsync("Odile Marsh");
        Assert.Contains("; secure", proxied.Headers.GetValues("Set-Cookie").Single(), StringComparison.OrdinalIgnoreCase);
        // The same word from a caller that is no proxy on this computer counts for nothing.
        using var far = server.Stranger();
        far.DefaultRequestHeaders.Add("X-Forwarded-Proto", "https");
        far.DefaultRequestHeaders.Add(RemoteAddress.Header, "203.0.113.9");
        using var claimed = await far.SignInAsync("Odile Marsh");
        Assert.DoesNotContain("; secure", claimed.Headers.GetValues("Set-Cookie").Single(), StringComparison.OrdinalIgnoreCase);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Unknown_disabled_and_locked_names_get_the_same_answer_after_the_same_work(Database database)
    {
        var counting = new Counting();
        await using var server = await TestServer.MakeAsync(database);
        await using var counted = server.WithWebHostBuilder(b =>
            b.ConfigureTestServices(s => s.AddScoped<IPasswordHasher<Account>>(_ => counting))
        );
        using var office = counted.CreateClient();
        Assert.Equal(HttpStatusCode.OK, await office.StatusAsync("POST", "api/set-up", new NameAndPassword("Odile Marsh", Crew.Password)));
        foreach (var name in new[] { "Bram Oakes", "Ines Calloway" })
        {
            var made = await office.InviteAsync(Roles.Technician);
            using var client = counted.CreateClient();
            Assert.Equal(
                HttpStatusCode.OK,
                await client.StatusAsync("POST", "api/invitations/accept", new Acceptance(made.Token, name, Crew.Password))
            );
        }

        var bram = (await office.AskAsync<List<AccountView>>("api/accounts")).Single(a => a.Name == "Bram Oakes");
        Assert.Equal(
            HttpStatusCode.NoContent,
            await office.StatusAsync("PUT", $"api/accounts/{bram.Id}", new AccountChange(Roles.Technician, [], true))
        );
        using var stranger = counted.CreateClient();
        stranger.DefaultRequestHeaders.Add("X-Forwarded-For", "198.51.100.77");
        for (var i = 0; i < SignIns.MostWrong; i++)
        {
            using var wrong = await stranger.SignInAsync("Ines Calloway", "wrong password " + i);
            Assert.Equal(HttpStatusCode.Unauthorized, wrong.StatusCode);
        }

        var texts = new HashSet<string>(StringComparer.Ordinal);
        foreach (
            var (name, password) in new[]
            {
                ("Nobody Known", Crew.Password),
                ("Bram Oakes", Crew.Password), // right, but disabled
                ("Ines Calloway", Crew.Password), // right, but has to wait
                ("Odile Marsh", "wrong password"),
                ("Odile Marsh", new string('x', 5000)),
            }
        )
        {
            counting.Verified = 0;
            using var answer = await stranger.SignInAsync(name, password);
            Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
            Assert.Equal(1, counting.Verified);
            Assert.False(answer.Headers.Contains("Set-Cookie"));
            texts.Add((await ProblemAsync(answer)).ToString());
        }

        Assert.Single(texts);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task A_name_waits_after_wrong_tries_and_then_signs_in_again(Database database)
    {
        var clock = new Clock();
        await using var server = await TestServer.MakeAsync(database, clock);
        using var office = await server.SetUpAsync();
        using var client = server.Stranger();
        for (var i = 0; i < SignIns.MostWrong; i++)
        {
            using var wrong = await client.SignInAsync("Odile Marsh", "not the password");
        }

        using var early = await client.SignInAsync("Odile Marsh");
        Assert.Equal(HttpStatusCode.Unauthorized, early.StatusCode);
        Assert.Equal(HttpStatusCode.OK, await office.StatusAsync("GET", "api/proofs")); // whoever is in already stays in
        clock.Now += SignIns.Wait + TimeSpan.FromSeconds(1);
        using var late = await client.SignInAsync("Odile Marsh");
        Assert.Equal(HttpStatusCode.OK, late.StatusCode);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task One_address_may_not_try_without_end_and_others_still_may(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        using var client = server.Stranger();
        var statuses = new List<HttpStatusCode>();
        for (var i = 0; i < 31; i++)
        {
            statuses.Add(await client.StatusAsync("POST", "api/invitations/look", new InvitationToken("guess " + i)));
        }

        Assert.Equal(30, statuses.Count(s => s == HttpStatusCode.NotFound));
        Assert.Equal(HttpStatusCode.TooManyRequests, statuses[^1]);
        using var other = await server.Stranger().SignInAsync("Odile Marsh");
        Assert.Equal(HttpStatusCode.OK, other.StatusCode);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task A_session_holds_thirty_days_from_its_last_use(Database database)
    {
        var clock = new Clock();
        await using var server = await TestServer.MakeAsync(database, clock);
        using var office = await server.SetUpAsync();
        foreach (var _ in new int[4])
        {
            clock.Now += TimeSpan.FromDays(20);
            Assert.Equal(HttpStatusCode.OK, await office.StatusAsync("GET", "api/proofs"));
        }

        clock.Now += TimeSpan.FromDays(31);
        Assert.Equal(HttpStatusCode.Unauthorized, await office.StatusAsync("GET", "api/proofs"));
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Refusal_names_the_way_in_both_languages(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        using var client = server.Stranger();
        client.DefaultRequestHeaders.Add("Accept-Language", "es-MX");
        var problem = await ProblemAsync(await client.SendJsonAsync("GET", "api/changes"));
        Assert.Equal("Inicie sesión", problem.Title);
        using var technician = await server.JoinAsync(office, Roles.Technician, "Ines Calloway");
        problem = await ProblemAsync(await technician.SendJsonAsync("GET", "api/audit"));
        Assert.Contains("The office can change", problem.Detail, StringComparison.Ordinal);
    }

    private static async Task<EndpointTests.Problem> ProblemAsync(HttpResponseMessage answer)
    {
        using (answer)
        {
            return (
                await System.Net.Http.Json.HttpContentJsonExtensions.ReadFromJsonAsync<EndpointTests.Problem>(
                    answer.Content,
                    TestContext.Current.CancellationToken
                )
            )!;
        }
    }

    private sealed class Counting : IPasswordHasher<Account>
    {
        private readonly PasswordHasher<Account> inner = new();

        public int Verified { get; set; }

        public string HashPassword(Account user, string password) => inner.HashPassword(user, password);

        public PasswordVerificationResult VerifyHashedPassword(Account user, string hashedPassword, string providedPassword)
        {
            Verified++;
            return inner.VerifyHashedPassword(user, hashedPassword, providedPassword);
        }
    }
}
