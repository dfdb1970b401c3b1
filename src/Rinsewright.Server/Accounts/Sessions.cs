using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Accounts;

/// <summary>Who is signed in where. The cookie names a session; what the account may do is looked up at every call, so that a change or an end holds from the very next one.</summary>
public sealed class Sessions(AppDb db, TimeProvider clock)
{
    /// <summary>How long a session holds that nobody uses.</summary>
    public static readonly TimeSpan Holds = TimeSpan.FromDays(30);

    /// <summary>How often at most the time of the last call is written.</summary>
    public static readonly TimeSpan SeenEvery = TimeSpan.FromMinutes(5);

    private const string SessionClaim = "session";

    /// <summary>Opens a session and gives the cookie; whoever calls saves.</summary>
    public async Task OpenAsync(HttpContext context, Account account)
    {
        var now = clock.GetUtcNow();
        var session = new SessionRow
        {
            Id = Guid.CreateVersion7(),
            AccountId = account.Id,
            Device = Origin.DeviceOf(context),
            Address = Origin.AddressOf(context),
            FirstSeen = now,
            LastSeen = now,
        };
        db.Sessions.Add(session);
        var identity = new ClaimsIdentity([new Claim(SessionClaim, session.Id.ToString())], IdentityConstants.ApplicationScheme);
        await context.SignInAsync(
            IdentityConstants.ApplicationScheme,
            new ClaimsPrincipal(identity),
            new AuthenticationProperties { IsPersistent = true }
        );
        context.RequestServices.GetRequiredService<Caller>().Is(account, session);
    }

    /// <summary>Ends sessions now.</summary>
    /// <param name="account">Whose.</param>
    /// <param name="only">The one; null for all.</param>
    /// <param name="except">One that stays; null for none.</param>
    /// <param name="ct">Cancels.</param>
    /// <returns>How many were ended.</returns>
    public Task<int> EndAsync(Guid account, Guid? only, Guid? except, CancellationToken ct)
    {
        var now = clock.GetUtcNow();
        return db
            .Sessions.Where(s =>
                s.AccountId == account && s.EndedAt == null && (only == null || s.Id == only) && (except == null || s.Id != except)
            )
            .ExecuteUpdateAsync(s => s.SetProperty(r => r.EndedAt, now), ct);
    }

    /// <summary>Sessions that hold, the last seen first.</summary>
    public Task<List<SessionRow>> OpenOnesAsync(Guid account, CancellationToken ct)
    {
        var since = clock.GetUtcNow() - Holds;
        return db
            .Sessions.AsNoTracking()
            .Where(s => s.AccountId == account && s.EndedAt == null && s.LastSeen > since)
            .OrderByDescending(s => s.LastSeen)
            .ToListAsync(ct);
    }

    /// <summary>Checks the cookie's session; every call of the interface comes through here.</summary>
    public static async Task CheckAsync(CookieValidatePrincipalContext context)
    {
        // The files of the client are the same for everybody; they need no look into the database.
        var http = context.HttpContext;
        if (
            !http.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal)
            || !Guid.TryParse(context.Principal?.FindFirst(SessionClaim)?.Value, out var id)
            || !await http.RequestServices.GetRequiredService<Sessions>().RecognizeAsync(http, id)
        )
        {
            context.RejectPrincipal();
        }
    }

    private async Task<bool> RecognizeAsync(HttpContext http, Guid id)
    {
        var ct = http.RequestAborted;
        var now = clock.GetUtcNow();
        var session = await db.Sessions.AsNoTracking().SingleOrDefaultAsync(s => s.Id == id, ct);
        if (session is null || session.EndedAt is not null || session.LastSeen <= now - Holds)
        {
            return false;
        }

        var account = await db.Accounts.AsNoTracking().Include(a => a.Kitchens).SingleAsync(a => a.Id == session.AccountId, ct);
        if (account.Disabled)
        {
            return false;
        }

        if (session.LastSeen <= now - SeenEvery)
        {
            await db.Sessions.Where(s => s.Id == id).ExecuteUpdateAsync(s => s.SetProperty(r => r.LastSeen, now), ct);
        }

        http.RequestServices.GetRequiredService<Caller>().Is(account, session);
        return true;
    }
}
