using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Tests.Accounts;

/// <summary>Invitations: one use, for a time, taken back; links for a new password; what the office may change.</summary>
public sealed class InvitationTests
{
    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task An_invitation_makes_one_account_with_its_role(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        var made = await office.InviteAsync(Roles.Technician);
        using var client = server.Stranger();
        using (var look = await client.SendJsonAsync("POST", "api/invitations/look", new InvitationToken(made.Token)))
        {
            var invited = await look.ReadAsync<Invited>();
            Assert.Equal((Roles.Technician, "Odile Marsh", false), (invited.Role, invited.MadeBy, invited.Renews));
        }

        // A bad password leaves the invitation as it was.
        Assert.Equal(
            HttpStatusCode.BadRequest,
            await client.StatusAsync("POST", "api/invitations/accept", new Acceptance(made.Token, "Ines Calloway", "short"))
        );
        Assert.Equal(
            HttpStatusCode.BadRequest,
            await client.StatusAsync("POST", "api/invitations/accept", new Acceptance(made.Token, "ODILE MARSH", Crew.Password))
        );
        Assert.Equal(
            HttpStatusCode.OK,
            await client.StatusAsync("POST", "api/invitations/accept", new Acceptance(made.Token, "Ines Calloway", Crew.Password))
        );
        Assert.Equal(Roles.Technician, (await client.MeAsync()).Account!.Role);
        Assert.Equal(
            HttpStatusCode.NotFound,
            await client.StatusAsync("POST", "api/invitations/accept", new Acceptance(made.Token, "Bram Oakes", Crew.Password))
        );
        Assert.Equal("accepted", Assert.Single(await office.AskAsync<List<InvitationView>>("api/invitations")).State);

        // What is kept cannot be used to come in.
        await using var scope = server.Services.CreateAsyncScope();
        var row = await scope.ServiceProvider.GetRequiredService<AppDb>().Invitations.SingleAsync(TestContext.Current.CancellationToken);
        Assert.Matches("^[0-9a-f]{64}$", row.TokenHash);
        Assert.DoesNotContain(made.Token, string.Join(' ', row.TokenHash, row.Name, row.Kitchens), StringComparison.Ordinal);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Of_several_who_accept_at_once_one_does(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        var made = await office.InviteAsync(Roles.Technician);
        using var client = server.Stranger();
        var answers = await Task.WhenAll(
            Enumerable
                .Range(0, 6)
                .Select(i => client.StatusAsync("POST", "api/invitations/accept", new Acceptance(made.Token, $"Person {i}", Crew.Password)))
        );
        Assert.Single(answers, HttpStatusCode.OK);
        Assert.Equal(2, (await office.AskAsync<List<AccountView>>("api/accounts")).Count);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Invitations_that_are_over_or_taken_back_hold_no_more(Database database)
    {
        var clock = new Clock();
        await using var server = await TestServer.MakeAsync(database, clock);
        using var office = await server.SetUpAsync();
        var old = await office.InviteAsync(Roles.Technician, hours: 1);
        var revoked = await office.InviteAsync(Roles.Office);
        Assert.Equal(HttpStatusCode.NoContent, await office.StatusAsync("DELETE", $"api/invitations/{revoked.Invitation.Id}"));
        Assert.Equal(HttpStatusCode.NotFound, await office.StatusAsync("DELETE", $"api/invitations/{revoked.Invitation.Id}"));
        clock.Now += TimeSpan.FromHours(1);
        using var client = server.Stranger();
        foreach (var token in new[] { old.Token, revoked.Token, "", "x" })
        {
            Assert.Equal(HttpStatusCode.NotFound, await client.StatusAsync("POST", "api/invitations/look", new InvitationToken(token)));
            Assert.Equal(
                HttpStatusCode.NotFound,
                await client.StatusAsync("POST", "api/invitations/accept", new Acceptance(token, "Ines Calloway", Crew.Password))
            );
        }

        var states = await office.AskAsync<List<InvitationView>>("api/invitations");
        Assert.Equal(["revoked", "expired"], states.Select(i => i.State));
    }

    [Theory]
    [OnBoth("owner", 0, 24)]
    [OnBoth(Roles.Kitchen, 0, 24)] // names none
    [OnBoth(Roles.Technician, 0, 0)]
    [OnBoth(Roles.Technician, 0, 721)]
    [OnBoth(Roles.Kitchen, 101, 24)]
    public async Task Invitations_that_make_no_sense_are_refused(Database database, string role, int kitchens, int hours)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        var ids = Enumerable.Range(0, kitchens).Select(_ => Guid.CreateVersion7()).ToArray();
        Assert.Equal(
            HttpStatusCode.BadRequest,
            await office.StatusAsync("POST", "api/invitations", new InvitationWish(role, ids, "", hours))
        );
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task A_link_for_a_new_password_ends_sessions_and_takes_the_old_password_away(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        using var lost = await server.JoinAsync(office, Roles.Technician, "Ines Calloway");
        var id = (await lost.MeAsync()).Account!.Id;
        using var answer = await office.SendJsonAsync("POST", $"api/accounts/{id}/password-link");
        var link = await answer.ReadAsync<InvitationMade>();
        Assert.Equal(HttpStatusCode.OK, await lost.StatusAsync("GET", "api/proofs"));
        using var client = server.Stranger();
        const string Another = "seven glasses on a tray";
        Assert.Equal(
            HttpStatusCode.OK,
            await client.StatusAsync("POST", "api/invitations/accept", new Acceptance(link.Token, "", Another))
        );
        Assert.Equal(id, (await client.MeAsync()).Account!.Id);
        Assert.Equal(HttpStatusCode.Unauthorized, await lost.StatusAsync("GET", "api/proofs"));
        using var old = await server.Stranger().SignInAsync("Ines Calloway");
        Assert.Equal(HttpStatusCode.Unauthorized, old.StatusCode);
        using var now = await server.Stranger().SignInAsync("Ines Calloway", Another);
        Assert.Equal(HttpStatusCode.OK, now.StatusCode);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task A_change_of_role_holds_at_the_very_next_call_and_the_last_of_the_office_stays(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        using var second = await server.JoinAsync(office, Roles.Office, "Bram Oakes");
        var (first, other) = ((await office.MeAsync()).Account!.Id, (await second.MeAsync()).Account!.Id);
        Assert.Equal(HttpStatusCode.OK, await second.StatusAsync("GET", "api/audit"));
        Assert.Equal(
            HttpStatusCode.NoContent,
            await office.StatusAsync("PUT", $"api/accounts/{other}", new AccountChange(Roles.Technician, [], false))
        );
        Assert.Equal(HttpStatusCode.Forbidden, await second.StatusAsync("GET", "api/audit"));
        Assert.Equal(HttpStatusCode.OK, await second.StatusAsync("GET", "api/proofs"));
        foreach (var change in new[] { new AccountChange(Roles.Technician, [], false), new AccountChange(Roles.Office, [], true) })
        {
            Assert.Equal(HttpStatusCode.BadRequest, await office.StatusAsync("PUT", $"api/accounts/{first}", change));
        }

        Assert.Equal(
            HttpStatusCode.NoContent,
            await office.StatusAsync("PUT", $"api/accounts/{other}", new AccountChange(Roles.Technician, [], true))
        );
        Assert.Equal(HttpStatusCode.Unauthorized, await second.StatusAsync("GET", "api/proofs"));
        Assert.Equal(
            HttpStatusCode.NoContent,
            await office.StatusAsync("PUT", $"api/accounts/{other}", new AccountChange(Roles.Office, [], false))
        );
        using var back = await server.Stranger().SignInAsync("Bram Oakes");
        Assert.Equal(HttpStatusCode.OK, back.StatusCode);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Two_of_the_office_who_put_each_other_out_at_once_leave_one(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        using var second = await server.JoinAsync(office, Roles.Office, "Bram Oakes");
        var (first, other) = ((await office.MeAsync()).Account!.Id, (await second.MeAsync()).Account!.Id);
        await Task.WhenAll(
            office.StatusAsync("PUT", $"api/accounts/{other}", new AccountChange(Roles.Office, [], true)),
            second.StatusAsync("PUT", $"api/accounts/{first}", new AccountChange(Roles.Office, [], true))
        );
        await using var scope = server.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        Assert.Equal(1, await db.Accounts.CountAsync(a => !a.Disabled, TestContext.Current.CancellationToken));
    }
}
