using System.Buffers.Text;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Identity;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Server.Hosting;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Accounts;

/// <summary>Passkeys: adding one to the own account, taking it away, signing in with it.</summary>
public static class PasskeyEndpoints
{
    private const int LongestName = 60;
    private const int MostPasskeys = 20;

    /// <summary>POST /sign-in/passkey/ask and /sign-in/passkey; GET and POST /me/passkeys, POST /me/passkeys/ask, DELETE /me/passkeys/{id}.</summary>
    public static void MapPasskeys(this IEndpointRouteBuilder api)
    {
        api.MapPost("/sign-in/passkey/ask", AskAsync)
            .RequireAuthorization(Access.Door)
            .RequireRateLimiting(Limits.SigningIn)
            .WithName("ask-passkey")
            .WithSummary("What a passkey has to answer to sign in");
        api.MapPost("/sign-in/passkey", SignInAsync)
            .RequireAuthorization(Access.Door)
            .RequireRateLimiting(Limits.SigningIn)
            .WithName("sign-in-passkey")
            .WithSummary("Sign in with the answer of a passkey")
            .Produces<WhoAmI>()
            .ProducesProblem(StatusCodes.Status401Unauthorized);
        var mine = api.MapGroup("/me/passkeys").RequireAuthorization(Access.Own);
        mine.MapGet("", ListAsync).WithName("passkeys").WithSummary("Passkeys of the own account");
        mine.MapPost("/ask", AskNewAsync).WithName("ask-new-passkey").WithSummary("What a new passkey has to answer");
        mine.MapPost("", AddAsync)
            .WithName("add-passkey")
            .WithSummary("Add a passkey by its answer")
            .Produces<PasskeyView>()
            .ProducesProblem(StatusCodes.Status400BadRequest);
        mine.MapDelete("/{id}", RemoveAsync)
            .WithName("remove-passkey")
            .WithSummary("Take a passkey away; it signs in no more")
            .Produces(StatusCodes.Status204NoContent)
            .ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static async Task<PasskeyQuestion> AskAsync(SignInManager<Account> manager) =>
        new(await manager.MakePasskeyRequestOptionsAsync(null)); // for nobody in particular, so that nobody learns who has one

    private static async Task<IResult> SignInAsync(
        PasskeyAnswer answer,
        SignInManager<Account> manager,
        UserManager<Account> users,
        Sessions sessions,
        AuditTrail audit,
        AppDb db,
        HttpContext context,
        CancellationToken ct
    )
    {
        var result = await TriedAsync(context, () => manager.PerformPasskeyAssertionAsync(answer.Credential));
        if (result is not { Succeeded: true, User: { Disabled: false } account })
        {
            audit.Add(AuditActs.SignInFailed, result?.User?.UserName ?? "");
            await db.SaveChangesAsync(ct);
            return Problems.Result(context, StatusCodes.Status401Unauthorized, "account.problem.passkey-sign-in");
        }

        await users.AddOrUpdatePasskeyAsync(account, result.Passkey); // its counter, by which a copied one is noticed
        await db.Entry(account).Collection(a => a.Kitchens).LoadAsync(ct);
        audit.Add(AuditActs.SignInPasskey, "", account);
        await sessions.OpenAsync(context, account);
        await db.SaveChangesAsync(ct);
        return TypedResults.Ok(new WhoAmI(true, false, SignInEndpoints.View(account)));
    }

    private static async Task<IReadOnlyList<PasskeyView>> ListAsync(Caller caller, UserManager<Account> users) =>
        [.. (await users.GetPasskeysAsync(caller.Account!)).OrderBy(p => p.CreatedAt).Select(View)];

    private static async Task<PasskeyQuestion> AskNewAsync(Caller caller, SignInManager<Account> manager)
    {
        var account = caller.Account!;
        var entity = new PasskeyUserEntity
        {
            Id = account.Id.ToString(),
            Name = account.UserName!,
            DisplayName = account.UserName!,
        };
        return new(await manager.MakePasskeyCreationOptionsAsync(entity));
    }

    private static async Task<IResult> AddAsync(
        PasskeyAnswer answer,
        Caller caller,
        SignInManager<Account> manager,
        UserManager<Account> users,
        AuditTrail audit,
        AppDb db,
        HttpContext context,
        CancellationToken ct
    )
    {
        var account = (await users.FindByIdAsync(caller.Account!.Id.ToString()))!;
        var result = await TriedAsync(context, () => manager.PerformPasskeyAttestationAsync(answer.Credential));
        if (
            result is not { Succeeded: true }
            || result.UserEntity.Id != account.Id.ToString()
            || (await users.GetPasskeysAsync(account)).Count >= MostPasskeys
        )
        {
            return Problems.Result(context, StatusCodes.Status400BadRequest, "account.problem.passkey");
        }

        var name = string.Concat((answer.Name ?? "").Trim().Where(c => !char.IsControl(c)));
        result.Passkey.Name = name.Length <= LongestName ? name : name[..LongestName];
        await users.AddOrUpdatePasskeyAsync(account, result.Passkey);
        audit.Add(AuditActs.PasskeyAdded, result.Passkey.Name);
        await db.SaveChangesAsync(ct);
        return TypedResults.Ok(View(result.Passkey));
    }

    private static async Task<IResult> RemoveAsync(
        string id,
        Caller caller,
        UserManager<Account> users,
        AuditTrail audit,
        AppDb db,
        HttpContext context,
        CancellationToken ct
    )
    {
        var account = (await users.FindByIdAsync(caller.Account!.Id.ToString()))!;
        var passkey = Base64Url.IsValid(id) ? await users.GetPasskeyAsync(account, Base64Url.DecodeFromChars(id)) : null;
        if (passkey is null)
        {
            return Problems.Result(context, StatusCodes.Status404NotFound, "account.problem.none");
        }

        await users.RemovePasskeyAsync(account, passkey.CredentialId);
        audit.Add(AuditActs.PasskeyRemoved, passkey.Name ?? "");
        await db.SaveChangesAsync(ct);
        return TypedResults.NoContent();
    }

    // What was asked is used up by the first answer, right or wrong. An answer to no question, or one that is no answer at all, is a failed try like any other.
    private static async Task<T?> TriedAsync<T>(HttpContext context, Func<Task<T>> perform)
        where T : class
    {
        try
        {
            return await perform();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
        finally
        {
            await context.SignOutAsync(IdentityConstants.TwoFactorUserIdScheme);
        }
    }

    private static PasskeyView View(UserPasskeyInfo passkey) =>
        new(Base64Url.EncodeToString(passkey.CredentialId), passkey.Name ?? "", passkey.CreatedAt);
}
