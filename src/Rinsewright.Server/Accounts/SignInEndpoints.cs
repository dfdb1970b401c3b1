using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Server.Hosting;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Accounts;

/// <summary>The way in: who am I, the first account, signing in and out, taking an invitation.</summary>
public static class SignInEndpoints
{
    /// <summary>GET /me, POST /set-up, /sign-in, /sign-out, /invitations/look and /invitations/accept.</summary>
    public static void MapSignIn(this IEndpointRouteBuilder api)
    {
        api.MapGet("/me", WhoAsync)
            .RequireAuthorization(Access.Door)
            .WithName("me")
            .WithSummary("Who is signed in, and whether there is an account at all");
        api.MapPost("/set-up", SetUpAsync)
            .RequireAuthorization(Access.SetUp)
            .RequireRateLimiting(Limits.SigningIn)
            .WithName("set-up")
            .WithSummary("Make the first account, of the office, at the server's own computer")
            .Produces<WhoAmI>()
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status403Forbidden);
        api.MapPost("/sign-in", SignInAsync)
            .RequireAuthorization(Access.Door)
            .RequireRateLimiting(Limits.SigningIn)
            .WithName("sign-in")
            .WithSummary("Sign in with name and password; the cookie that comes back holds 30 days from its last use")
            .Produces<WhoAmI>()
            .ProducesProblem(StatusCodes.Status401Unauthorized)
            .ProducesProblem(StatusCodes.Status429TooManyRequests);
        api.MapPost("/sign-out", SignOutAsync)
            .RequireAuthorization(Access.Own)
            .WithName("sign-out")
            .WithSummary("End the session that asks")
            .Produces(StatusCodes.Status204NoContent)
            .ProducesProblem(StatusCodes.Status401Unauthorized);
        api.MapPost("/invitations/look", LookAsync)
            .RequireAuthorization(Access.Door)
            .RequireRateLimiting(Limits.SigningIn)
            .WithName("look-at-invitation")
            .WithSummary("What an invitation is for, by the secret of its link")
            .Produces<Invited>()
            .ProducesProblem(StatusCodes.Status404NotFound);
        api.MapPost("/invitations/accept", AcceptAsync)
            .RequireAuthorization(Access.Door)
            .RequireRateLimiting(Limits.SigningIn)
            .WithName("accept-invitation")
            .WithSummary("Take an invitation once: makes the account, or gives an account another password, and signs in")
            .Produces<WhoAmI>()
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status404NotFound);
    }

    /// <summary>An account as it travels.</summary>
    public static AccountView View(Account account, DateTimeOffset? seen = null, int passkeys = 0) =>
        new(
            account.Id,
            account.UserName!,
            account.Role,
            [.. account.Kitchens.Select(k => k.KitchenId).Order()],
            account.Disabled,
            account.MadeAt,
            seen,
            passkeys
        );

    private static async Task<WhoAmI> WhoAsync(Caller caller, AccountPresence presence, AppDb db, HttpContext context, CancellationToken ct)
    {
        var any = await presence.AnyAsync(db, ct);
        return new WhoAmI(any, !any && Origin.IsDirectlyHere(context), caller.Account is { } account ? View(account) : null);
    }

    private static async Task<IResult> SetUpAsync(
        NameAndPassword first,
        People people,
        Sessions sessions,
        AuditTrail audit,
        AppDb db,
        HttpContext context,
        CancellationToken ct
    )
    {
        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        await people.TurnAsync(ct);
        if (await db.Accounts.AnyAsync(ct)) // another was faster
        {
            return Problems.Result(context, StatusCodes.Status403Forbidden, "server.problem.set-up-done");
        }

        var (account, fault) = await people.MakeAsync(first.Name, first.Password, Roles.Office, []);
        if (account is null)
        {
            return Problems.Result(context, StatusCodes.Status400BadRequest, fault!);
        }

        audit.Add(AuditActs.SetUp, account.UserName!, account);
        await sessions.OpenAsync(context, account);
        await db.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return TypedResults.Ok(new WhoAmI(true, false, View(account)));
    }

    private static async Task<IResult> SignInAsync(
        NameAndPassword said,
        SignIns signIns,
        Sessions sessions,
        AuditTrail audit,
        AppDb db,
        HttpContext context,
        CancellationToken ct
    )
    {
        if (await signIns.TryAsync(said.Name, said.Password, ct) is not { } account)
        {
            return Problems.Result(context, StatusCodes.Status401Unauthorized, "account.problem.sign-in");
        }

        audit.Add(AuditActs.SignIn, "", account);
        await sessions.OpenAsync(context, account);
        await db.SaveChangesAsync(ct);
        return TypedResults.Ok(new WhoAmI(true, false, View(account)));
    }

    private static async Task<IResult> SignOutAsync(
        Caller caller,
        Sessions sessions,
        AuditTrail audit,
        AppDb db,
        HttpContext context,
        CancellationToken ct
    )
    {
        await sessions.EndAsync(caller.Account!.Id, caller.Session!.Id, null, ct);
        audit.Add(AuditActs.SignOut);
        await db.SaveChangesAsync(ct);
        await context.SignOutAsync(IdentityConstants.ApplicationScheme);
        return TypedResults.NoContent();
    }

    private static async Task<IResult> LookAsync(
        InvitationToken token,
        Invitations invitations,
        HttpContext context,
        CancellationToken ct
    ) =>
        await invitations.LookAsync(token.Token, ct) is { } invited
            ? TypedResults.Ok(invited)
            : Problems.Result(context, StatusCodes.Status404NotFound, "account.problem.invitation");

    private static async Task<IResult> AcceptAsync(
        Acceptance acceptance,
        Invitations invitations,
        Sessions sessions,
        AppDb db,
        HttpContext context,
        CancellationToken ct
    )
    {
        var (account, fault) = await invitations.AcceptAsync(acceptance, ct);
        if (account is null)
        {
            var status = fault == "account.problem.invitation" ? StatusCodes.Status404NotFound : StatusCodes.Status400BadRequest;
            return Problems.Result(context, status, fault!);
        }

        await sessions.OpenAsync(context, account);
        await db.SaveChangesAsync(ct);
        return TypedResults.Ok(new WhoAmI(true, false, View(account)));
    }
}
