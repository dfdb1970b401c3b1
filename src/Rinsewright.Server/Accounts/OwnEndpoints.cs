using Rinsewright.Contracts.Accounts;
using Rinsewright.Server.Hosting;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Accounts;

/// <summary>What everybody may do with the own account: password, and where one is signed in.</summary>
public static class OwnEndpoints
{
    /// <summary>PUT /me/password, GET and DELETE /me/sessions, DELETE /me/sessions/{id}.</summary>
    public static void MapOwn(this IEndpointRouteBuilder api)
    {
        var me = api.MapGroup("/me").RequireAuthorization(Access.Own);
        me.MapPut("/password", PasswordAsync)
            .RequireRateLimiting(Limits.SigningIn)
            .WithName("change-password")
            .WithSummary("Change the own password; every other session of the account ends")
            .Produces(StatusCodes.Status204NoContent)
            .ProducesProblem(StatusCodes.Status400BadRequest);
        me.MapGet("/sessions", SessionsAsync).WithName("own-sessions").WithSummary("Where the account is signed in, the last seen first");
        me.MapDelete("/sessions", EndOthersAsync)
            .WithName("end-other-sessions")
            .WithSummary("End every session of the account but the one that asks")
            .Produces(StatusCodes.Status204NoContent);
        me.MapDelete("/sessions/{id:guid}", EndAsync)
            .WithName("end-own-session")
            .WithSummary("End one session of the account")
            .Produces(StatusCodes.Status204NoContent)
            .ProducesProblem(StatusCodes.Status404NotFound);
    }

    /// <summary>Sessions as they travel.</summary>
    public static IReadOnlyList<SessionView> View(IEnumerable<SessionRow> sessions, Guid? here) =>
        [.. sessions.Select(s => new SessionView(s.Id, s.Device, s.Address, s.FirstSeen, s.LastSeen, s.Id == here))];

    private static async Task<IResult> PasswordAsync(
        PasswordChange change,
        Caller caller,
        SignIns signIns,
        People people,
        AuditTrail audit,
        AppDb db,
        HttpContext context,
        CancellationToken ct
    )
    {
        var account = caller.Account!;
        if (PasswordRule.Fault(change.Password, account.UserName!) is { } fault)
        {
            return Problems.Result(context, StatusCodes.Status400BadRequest, fault);
        }

        if (!await signIns.IsRightAsync(account, change.Old, ct))
        {
            return Problems.Result(context, StatusCodes.Status400BadRequest, "account.problem.old-password");
        }

        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        await people.RenewAsync(account.Id, change.Password, caller.Session!.Id, ct);
        audit.Add(AuditActs.PasswordChanged);
        await db.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return TypedResults.NoContent();
    }

    private static async Task<IReadOnlyList<SessionView>> SessionsAsync(Caller caller, Sessions sessions, CancellationToken ct) =>
        View(await sessions.OpenOnesAsync(caller.Account!.Id, ct), caller.Session!.Id);

    private static async Task<IResult> EndOthersAsync(Caller caller, Sessions sessions, AuditTrail audit, AppDb db, CancellationToken ct)
    {
        await sessions.EndAsync(caller.Account!.Id, null, caller.Session!.Id, ct);
        audit.Add(AuditActs.SessionsRevoked, caller.Account.UserName!);
        await db.SaveChangesAsync(ct);
        return TypedResults.NoContent();
    }

    private static async Task<IResult> EndAsync(
        Guid id,
        Caller caller,
        Sessions sessions,
        AuditTrail audit,
        AppDb db,
        HttpContext context,
        CancellationToken ct
    )
    {
        if (await sessions.EndAsync(caller.Account!.Id, id, null, ct) == 0)
        {
            return Problems.Result(context, StatusCodes.Status404NotFound, "account.problem.none");
        }

        audit.Add(AuditActs.SessionRevoked, caller.Account.UserName!);
        await db.SaveChangesAsync(ct);
        return TypedResults.NoContent();
    }
}
