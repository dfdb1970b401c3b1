using Microsoft.EntityFrameworkCore;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Server.Hosting;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Accounts;

/// <summary>Accounts, invitations, sessions and the audit trail: the office alone.</summary>
public static class PeopleEndpoints
{
    /// <summary>/accounts, /invitations, /audit.</summary>
    public static void MapPeople(this IEndpointRouteBuilder api)
    {
        var accounts = api.MapGroup("/accounts").RequireAuthorization(Access.People);
        accounts.MapGet("", ListAsync).WithName("accounts").WithSummary("Every account, by name");
        accounts
            .MapPut("/{id:guid}", ChangeAsync)
            .WithName("change-account")
            .WithSummary("Change role and kitchens of an account, disable it or let it in again; holds from its next call")
            .Produces(StatusCodes.Status204NoContent)
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status404NotFound);
        accounts
            .MapPost("/{id:guid}/password-link", LinkAsync)
            .WithName("password-link")
            .WithSummary(
                "A link by which a person who lost the password sets another, once, within a day; it ends every session and takes the passkeys away"
            )
            .Produces<InvitationMade>()
            .ProducesProblem(StatusCodes.Status404NotFound);
        accounts
            .MapGet("/{id:guid}/sessions", SessionsAsync)
            .WithName("account-sessions")
            .WithSummary("Where an account is signed in, the last seen first");
        accounts
            .MapDelete("/{id:guid}/sessions", (Guid id, Endings e, CancellationToken ct) => e.EndAsync(id, null, ct))
            .WithName("end-account-sessions")
            .WithSummary("End every session of an account")
            .Produces(StatusCodes.Status204NoContent)
            .ProducesProblem(StatusCodes.Status404NotFound);
        accounts
            .MapDelete(
                "/{id:guid}/sessions/{session:guid}",
                (Guid id, Guid session, Endings e, CancellationToken ct) => e.EndAsync(id, session, ct)
            )
            .WithName("end-account-session")
            .WithSummary("End one session of an account")
            .Produces(StatusCodes.Status204NoContent)
            .ProducesProblem(StatusCodes.Status404NotFound);
        var invitations = api.MapGroup("/invitations").RequireAuthorization(Access.People);
        invitations
            .MapGet("", (Invitations all, CancellationToken ct) => all.ListAsync(ct))
            .WithName("invitations")
            .WithSummary("Invitations, the latest first; never their secrets");
        invitations
            .MapPost("", InviteAsync)
            .WithName("invite")
            .WithSummary("Invite somebody: the link's secret is told this once")
            .Produces<InvitationMade>()
            .ProducesProblem(StatusCodes.Status400BadRequest);
        invitations
            .MapDelete("/{id:guid}", RevokeAsync)
            .WithName("revoke-invitation")
            .WithSummary("Take an invitation back")
            .Produces(StatusCodes.Status204NoContent)
            .ProducesProblem(StatusCodes.Status404NotFound);
        var audit = api.MapGroup("/audit").RequireAuthorization(Access.People);
        audit
            .MapGet(
                "",
                ([AsParameters] AuditWish wanted, AuditTrail trail, CancellationToken ct) =>
                    trail.ReadAsync(wanted, AuditTrail.MostAtOnce, ct)
            )
            .WithName("audit")
            .WithSummary("Who did what, when, from where, the latest first; at most 200 at once");
        audit
            .MapGet(
                "/table",
                async ([AsParameters] AuditWish wanted, AuditTrail trail, CancellationToken ct) =>
                    TypedResults.File(
                        AuditTrail.Table((await trail.ReadAsync(wanted, AuditTrail.MostInTable, ct)).Items),
                        "text/csv; charset=utf-8",
                        "rinsewright-audit.csv"
                    )
            )
            .WithName("audit-table")
            .WithSummary("The same as CSV; at most 50,000 lines")
            .Produces(StatusCodes.Status200OK, contentType: "text/csv");
    }

    private static async Task<IReadOnlyList<AccountView>> ListAsync(AppDb db, CancellationToken ct)
    {
        var accounts = await db.Accounts.AsNoTracking().Include(a => a.Kitchens).OrderBy(a => a.NormalizedUserName).ToListAsync(ct);
        var seen = await db
            .Sessions.GroupBy(s => s.AccountId)
            .Select(s => new { s.Key, Last = s.Max(x => x.LastSeen) })
            .ToDictionaryAsync(s => s.Key, s => s.Last, ct);
        var passkeys = await db
            .UserPasskeys.GroupBy(p => p.UserId)
            .Select(p => new { p.Key, Count = p.Count() })
            .ToDictionaryAsync(p => p.Key, p => p.Count, ct);
        return
        [
            .. accounts.Select(a =>
                SignInEndpoints.View(a, seen.TryGetValue(a.Id, out var last) ? last : null, passkeys.GetValueOrDefault(a.Id))
            ),
        ];
    }

    private static async Task<IResult> ChangeAsync(
        Guid id,
        AccountChange change,
        People people,
        HttpContext context,
        CancellationToken ct
    ) =>
        await people.ChangeAsync(id, change, ct) switch
        {
            null => TypedResults.NoContent(),
            "account.problem.none" => NotThere(context),
            { } fault => Problems.Result(context, StatusCodes.Status400BadRequest, fault),
        };

    private static async Task<IResult> LinkAsync(Guid id, AppDb db, Invitations invitations, HttpContext context, CancellationToken ct) =>
        await db.Accounts.AsNoTracking().Include(a => a.Kitchens).SingleOrDefaultAsync(a => a.Id == id && !a.Disabled, ct) is { } account
            ? TypedResults.Ok(
                await invitations.MakeAsync(
                    account.Role,
                    [.. account.Kitchens.Select(k => k.KitchenId)],
                    account.UserName!,
                    Invitations.LinkHolds,
                    account,
                    ct
                )
            )
            : NotThere(context);

    private static async Task<IReadOnlyList<SessionView>> SessionsAsync(Guid id, Sessions sessions, Caller caller, CancellationToken ct) =>
        OwnEndpoints.View(await sessions.OpenOnesAsync(id, ct), caller.Session!.Id);

    private static async Task<IResult> InviteAsync(InvitationWish wish, Invitations invitations, HttpContext context, CancellationToken ct)
    {
        var name = wish.Name.Trim();
        var fault =
            People.RoleFault(wish.Role, wish.Kitchens)
            ?? (wish.Hours is < 1 or > InvitationWish.MostHours ? "account.problem.hours" : null)
            ?? (name.Length > PasswordRule.LongestName || name.Any(char.IsControl) ? "account.name.long" : null);
        return fault is null
            ? TypedResults.Ok(await invitations.MakeAsync(wish.Role, wish.Kitchens, name, TimeSpan.FromHours(wish.Hours), null, ct))
            : Problems.Result(context, StatusCodes.Status400BadRequest, fault);
    }

    private static async Task<IResult> RevokeAsync(Guid id, Invitations invitations, HttpContext context, CancellationToken ct) =>
        await invitations.RevokeAsync(id, ct) ? TypedResults.NoContent() : NotThere(context);

    private static IResult NotThere(HttpContext context) => Problems.Result(context, StatusCodes.Status404NotFound, "account.problem.none");

    /// <summary>Ends sessions of others.</summary>
    public sealed class Endings(AppDb db, Sessions sessions, AuditTrail audit, IHttpContextAccessor http)
    {
        /// <summary>Ends one session of an account, or all.</summary>
        public async Task<IResult> EndAsync(Guid account, Guid? only, CancellationToken ct)
        {
            var name = await db.Accounts.Where(a => a.Id == account).Select(a => a.UserName).SingleOrDefaultAsync(ct);
            if (name is null || (await sessions.EndAsync(account, only, null, ct) == 0 && only is not null))
            {
                return NotThere(http.HttpContext!);
            }

            audit.Add(only is null ? AuditActs.SessionsRevoked : AuditActs.SessionRevoked, name);
            await db.SaveChangesAsync(ct);
            return TypedResults.NoContent();
        }
    }
}
