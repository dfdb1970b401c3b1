using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Tests.Accounts;

/// <summary>Sessions and the audit trail.</summary>
public sealed class SessionTests
{
    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task A_session_that_is_ended_fails_at_the_very_next_call(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        using var phone = await server.JoinAsync(office, Roles.Technician, "Ines Calloway");
        using var tablet = server.Stranger();
        tablet.DefaultRequestHeaders.Add("User-Agent", "Tablet on the wall");
        using var signed = await tablet.SignInAsync("Ines Calloway");
        var id = (await phone.MeAsync()).Account!.Id;
        var mine = await phone.AskAsync<List<SessionView>>("api/me/sessions");
        Assert.Equal(2, mine.Count);
        Assert.Single(mine, s => s.Here);
        var wall = mine.Single(s => s.Device == "Tablet on the wall");
        Assert.False(wall.Here);
        Assert.StartsWith("198.51.", wall.Address, StringComparison.Ordinal);

        Assert.Equal(HttpStatusCode.OK, await tablet.StatusAsync("GET", "api/changes"));
        Assert.Equal(HttpStatusCode.NoContent, await phone.StatusAsync("DELETE", $"api/me/sessions/{wall.Id}"));
        Assert.Equal(HttpStatusCode.Unauthorized, await tablet.StatusAsync("GET", "api/changes"));
        Assert.Null((await tablet.MeAsync()).Account);
        Assert.Equal(HttpStatusCode.NotFound, await phone.StatusAsync("DELETE", $"api/me/sessions/{wall.Id}"));

        // Nobody ends a session of somebody else through the own list; the office does through its own.
        var officeSession = Assert.Single(await office.AskAsync<List<SessionView>>("api/me/sessions"));
        Assert.Equal(HttpStatusCode.NotFound, await phone.StatusAsync("DELETE", $"api/me/sessions/{officeSession.Id}"));
        using var third = server.Stranger();
        using var again = await third.SignInAsync("Ines Calloway");
        Assert.Equal(2, (await office.AskAsync<List<SessionView>>($"api/accounts/{id}/sessions")).Count);
        Assert.Equal(HttpStatusCode.NoContent, await office.StatusAsync("DELETE", $"api/accounts/{id}/sessions"));
        Assert.Equal(HttpStatusCode.Unauthorized, await phone.StatusAsync("GET", "api/changes"));
        Assert.Equal(HttpStatusCode.Unauthorized, await third.StatusAsync("GET", "api/changes"));
        Assert.Equal(HttpStatusCode.OK, await office.StatusAsync("GET", "api/changes"));
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task Signing_out_and_a_new_password_end_what_they_should(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        using var second = server.Stranger();
        using var signed = await second.SignInAsync("Odile Marsh");
        var stolen = signed.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
        using var thief = server.Stranger();
        thief.DefaultRequestHeaders.Add("Cookie", stolen);
        Assert.Equal(HttpStatusCode.OK, await thief.StatusAsync("GET", "api/proofs"));
        Assert.Equal(HttpStatusCode.NoContent, await second.StatusAsync("POST", "api/sign-out"));
        Assert.Equal(HttpStatusCode.Unauthorized, await thief.StatusAsync("GET", "api/proofs")); // the cookie itself is worth nothing now

        using var third = server.Stranger();
        using var once = await third.SignInAsync("Odile Marsh");
        const string Another = "seven glasses on a tray";
        Assert.Equal(
            HttpStatusCode.BadRequest,
            await office.StatusAsync("PUT", "api/me/password", new PasswordChange("not it at all", Another))
        );
        Assert.Equal(
            HttpStatusCode.BadRequest,
            await office.StatusAsync("PUT", "api/me/password", new PasswordChange(Crew.Password, "short"))
        );
        Assert.Equal(
            HttpStatusCode.NoContent,
            await office.StatusAsync("PUT", "api/me/password", new PasswordChange(Crew.Password, Another))
        );
        Assert.Equal(HttpStatusCode.OK, await office.StatusAsync("GET", "api/proofs"));
        Assert.Equal(HttpStatusCode.Unauthorized, await third.StatusAsync("GET", "api/proofs"));
        using var old = await third.SignInAsync("Odile Marsh");
        Assert.Equal(HttpStatusCode.Unauthorized, old.StatusCode);
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task The_audit_trail_tells_who_did_what_from_where(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        using var ines = await server.JoinAsync(office, Roles.Technician, "=Ines, \"the\" Calloway");
        var id = (await ines.MeAsync()).Account!.Id;
        using var stranger = server.Stranger();
        using var known = await stranger.SignInAsync("Odile Marsh", "wrong password here");
        using var unknown = await stranger.SignInAsync("my secret password", "oops");
        await office.StatusAsync("PUT", $"api/accounts/{id}", new AccountChange(Roles.Kitchen, [Guid.CreateVersion7()], false));
        await office.StatusAsync("PUT", $"api/accounts/{id}", new AccountChange(Roles.Kitchen, [Guid.CreateVersion7()], true));
        await office.StatusAsync("PUT", $"api/accounts/{id}", new AccountChange(Roles.Technician, [], false));
        var invitation = await office.InviteAsync(Roles.Office);
        await office.StatusAsync("DELETE", $"api/invitations/{invitation.Invitation.Id}");
        await office.StatusAsync("DELETE", $"api/accounts/{id}/sessions");
        await office.StatusAsync("DELETE", "api/demo");

        var page = await office.AskAsync<AuditPage>("api/audit");
        string[] expected =
        [
            AuditActs.DemoRemoved,
            AuditActs.SessionsRevoked,
            AuditActs.InvitationRevoked,
            AuditActs.InvitationMade,
            AuditActs.Enabled,
            AuditActs.RoleChanged,
            AuditActs.Disabled,
            AuditActs.RoleChanged,
            AuditActs.RoleChanged,
            AuditActs.SignInFailed,
            AuditActs.SignInFailed,
            AuditActs.InvitationAccepted,
            AuditActs.InvitationMade,
            AuditActs.SetUp,
        ];
        Assert.Equal(expected.Order(), page.Items.Select(i => i.What).Order());
        Assert.Equal(page.Items.OrderByDescending(i => i.At).Select(i => i.At), page.Items.Select(i => i.At));
        var accepted = page.Items.Single(i => i.What == AuditActs.InvitationAccepted);
        Assert.Equal("=Ines, \"the\" Calloway", accepted.Who);
        Assert.StartsWith("198.51.", accepted.Address, StringComparison.Ordinal);
        Assert.Contains("technician → kitchen", page.Items.Last(i => i.What == AuditActs.RoleChanged).About, StringComparison.Ordinal);
        var failed = page.Items.Where(i => i.What == AuditActs.SignInFailed).Select(i => i.About).Order().ToList();
        Assert.Equal(["", "Odile Marsh"], failed); // what was typed into the wrong box is nowhere
        Assert.All(page.Items, i => Assert.DoesNotContain("secret", i.About + i.Who, StringComparison.Ordinal));

        Assert.Equal(3, (await office.AskAsync<AuditPage>("api/audit?what=role-changed")).Items.Count);
        Assert.Single((await office.AskAsync<AuditPage>($"api/audit?account={id}")).Items);
        Assert.Empty((await office.AskAsync<AuditPage>("api/audit?to=2020-01-01T00:00:00Z")).Items);
        Assert.Equal(12, (await office.AskAsync<AuditPage>("api/audit?skip=2")).Items.Count);
        var table = await office.GetStringAsync(
            new Uri("api/audit/table?what=invitation-accepted", UriKind.Relative),
            TestContext.Current.CancellationToken
        );
        Assert.Contains("invitation-accepted,\"'=Ines, \"\"the\"\" Calloway\",", table, StringComparison.Ordinal);
        Assert.Equal(3, table.Split("\r\n").Length); // head, one line, end
    }

    [Theory, InlineData(Database.Sqlite), InlineData(Database.Postgres)]
    public async Task A_line_of_the_audit_trail_cannot_be_changed_or_deleted(Database database)
    {
        await using var server = await TestServer.MakeAsync(database);
        using var office = await server.SetUpAsync();
        foreach (var delete in new[] { false, true })
        {
            await using var scope = server.Services.CreateAsyncScope();
            var db = scope.ServiceProvider.GetRequiredService<AppDb>();
            var line = await db.Audit.FirstAsync(TestContext.Current.CancellationToken);
            if (delete)
            {
                db.Audit.Remove(line);
            }
            else
            {
                line.Who = "Somebody Else";
            }

            await Assert.ThrowsAsync<InvalidOperationException>(() => db.SaveChangesAsync(TestContext.Current.CancellationToken));
        }
    }
}
