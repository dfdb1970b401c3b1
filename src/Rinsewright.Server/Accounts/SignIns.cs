using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Accounts;

/// <summary>
/// Tries names and passwords. Whoever tries learns nothing but whether both were right: an unknown name, a disabled account and a name with too many wrong tries get the
/// same answer after the same work.
/// </summary>
public sealed class SignIns(AppDb db, IPasswordHasher<Account> hasher, NameBook names, AuditTrail audit, TimeProvider clock)
{
    /// <summary>Wrong tries in a row after which a name has to wait.</summary>
    public const int MostWrong = 8;

    /// <summary>How long it waits.</summary>
    public static readonly TimeSpan Wait = TimeSpan.FromMinutes(10);

    // A hash that no password has, so that an unknown name costs what a known one costs. Made once.
    private static readonly Lock Making = new();
    private static (Account Account, string Hash)? nobody;

    /// <summary>The account, if name and password are right and it may sign in; else null. A wrong try is counted and written into the audit trail.</summary>
    public async Task<Account?> TryAsync(string name, string password, CancellationToken ct)
    {
        var folded = names.NormalizeName(name);
        var account = await db.Accounts.Include(a => a.Kitchens).SingleOrDefaultAsync(a => a.NormalizedUserName == folded, ct);
        if (await IsRightAsync(account, password, ct))
        {
            return account;
        }

        // An unknown name is not written down: people type their password into the wrong box.
        audit.Add(AuditActs.SignInFailed, account?.UserName ?? "");
        await db.SaveChangesAsync(ct);
        return null;
    }

    /// <summary>Whether a password is that of an account, counting wrong tries; also the check before a password is changed.</summary>
    public async Task<bool> IsRightAsync(Account? account, string password, CancellationToken ct)
    {
        var now = clock.GetUtcNow();
        var may = account is { Disabled: false, PasswordHash: not null } && !(account.LockoutEnd > now);
        var (owner, hash) = may ? (account!, account!.PasswordHash!) : Nobody();
        var said = password.Length > PasswordRule.Longest ? "" : password;
        var right = hasher.VerifyHashedPassword(owner, hash, said) != PasswordVerificationResult.Failed;
        if (may && right)
        {
            if (account!.AccessFailedCount > 0)
            {
                await db
                    .Accounts.Where(a => a.Id == account.Id)
                    .ExecuteUpdateAsync(
                        a => a.SetProperty(r => r.AccessFailedCount, 0).SetProperty(r => r.LockoutEnd, (DateTimeOffset?)null),
                        ct
                    );
            }

            return true;
        }

        // Counted in the database, so that tries at the same time all count; the same statement, which meets nothing, where there is no such account.
        var id = may ? account!.Id : Guid.Empty;
        await db
            .Accounts.Where(a => a.Id == id)
            .ExecuteUpdateAsync(a => a.SetProperty(r => r.AccessFailedCount, r => r.AccessFailedCount + 1), ct);
        var until = now + Wait;
        await db
            .Accounts.Where(a => a.Id == id && a.AccessFailedCount >= MostWrong)
            .ExecuteUpdateAsync(a => a.SetProperty(r => r.AccessFailedCount, 0).SetProperty(r => r.LockoutEnd, until), ct);
        return false;
    }

    private (Account Account, string Hash) Nobody()
    {
        lock (Making)
        {
            if (nobody is null)
            {
                var account = new Account { Role = "" };
                nobody = (account, hasher.HashPassword(account, Guid.NewGuid().ToString()));
            }

            return nobody.Value;
        }
    }
}
