using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Accounts;

/// <summary>Makes and changes accounts. Every method answers with the word key of what is wrong, or null.</summary>
public sealed class People(
    AppDb db,
    UserManager<Account> users,
    IPasswordHasher<Account> hasher,
    Sessions sessions,
    AuditTrail audit,
    TimeProvider clock
)
{
    /// <summary>Adds an account; whoever calls holds the transaction.</summary>
    public async Task<(Account? Account, string? Fault)> MakeAsync(string name, string password, string role, IReadOnlyList<Guid> kitchens)
    {
        var trimmed = string.Join(' ', name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        if ((PasswordRule.NameFault(trimmed) ?? PasswordRule.Fault(password, trimmed)) is { } fault)
        {
            return (null, fault);
        }

        var account = new Account
        {
            Id = Guid.CreateVersion7(),
            UserName = trimmed,
            Role = role,
            MadeAt = clock.GetUtcNow(),
        };
        account.Kitchens.AddRange(kitchens.Distinct().Select(k => new AccountKitchenRow { AccountId = account.Id, KitchenId = k }));
        var made = await users.CreateAsync(account, password);
        return made.Succeeded ? (account, null)
            : made.Errors.Any(e => e.Code == nameof(IdentityErrorDescriber.DuplicateUserName)) ? (null, "account.name.taken")
            : throw new InvalidOperationException(string.Join(' ', made.Errors.Select(e => e.Description)));
    }

    /// <summary>Gives another password; every session but one ends.</summary>
    /// <param name="account">Whose.</param>
    /// <param name="password">The new one, looked at already.</param>
    /// <param name="keep">Session that stays; null for none.</param>
    /// <param name="ct">Cancels.</param>
    public async Task RenewAsync(Guid account, string password, Guid? keep, CancellationToken ct)
    {
        var hash = hasher.HashPassword(new Account { Role = "" }, password);
        var stamp = Guid.NewGuid().ToString("N");
        await db
            .Accounts.Where(a => a.Id == account)
            .ExecuteUpdateAsync(
                a =>
                    a.SetProperty(r => r.PasswordHash, hash)
                        .SetProperty(r => r.SecurityStamp, stamp)
                        .SetProperty(r => r.AccessFailedCount, 0)
                        .SetProperty(r => r.LockoutEnd, (DateTimeOffset?)null),
                ct
            );
        await sessions.EndAsync(account, null, keep, ct);
    }

    /// <summary>Changes role, kitchens and whether an account may sign in. The last account of the office that may stays so.</summary>
    public async Task<string?> ChangeAsync(Guid id, AccountChange change, CancellationToken ct)
    {
        if (RoleFault(change.Role, change.Kitchens) is { } fault)
        {
            return fault;
        }

        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        await TurnAsync(ct); // two of the office that put each other out at once: one comes second
        var account = await db.Accounts.Include(a => a.Kitchens).SingleOrDefaultAsync(a => a.Id == id, ct);
        if (account is null)
        {
            return "account.problem.none";
        }

        var loses = account is { Role: Roles.Office, Disabled: false } && (change.Role != Roles.Office || change.Disabled);
        if (loses && !await db.Accounts.AnyAsync(a => a.Id != id && a.Role == Roles.Office && !a.Disabled, ct))
        {
            return "account.problem.last-office";
        }

        var kitchens = change.Role == Roles.Kitchen ? change.Kitchens.Distinct().Order().ToList() : [];
        if (account.Role != change.Role || !account.Kitchens.Select(k => k.KitchenId).Order().SequenceEqual(kitchens))
        {
            audit.Add(AuditActs.RoleChanged, $"{account.UserName}: {account.Role} → {change.Role}");
            account.Role = change.Role;
            account.Kitchens.Clear();
            account.Kitchens.AddRange(kitchens.Select(k => new AccountKitchenRow { AccountId = id, KitchenId = k }));
        }

        if (account.Disabled != change.Disabled)
        {
            audit.Add(change.Disabled ? AuditActs.Disabled : AuditActs.Enabled, account.UserName!);
            account.Disabled = change.Disabled;
            if (change.Disabled)
            {
                await sessions.EndAsync(id, null, null, ct);
            }
        }

        await db.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return null;
    }

    /// <summary>Waits for the turn at what only one may do at a time, until the transaction ends.</summary>
    public Task TurnAsync(CancellationToken ct) => db.Store.ExecuteUpdateAsync(s => s.SetProperty(r => r.Revision, r => r.Revision), ct);

    /// <summary>Word key of what is wrong with a role and its kitchens; null where they can be given.</summary>
    public static string? RoleFault(string role, IReadOnlyList<Guid> kitchens) =>
        !Roles.All.Contains(role) ? "account.problem.role"
        : role == Roles.Kitchen && kitchens.Count == 0 ? "account.problem.no-kitchen"
        : kitchens.Count > MostKitchens ? "account.problem.many-kitchens"
        : null;

    /// <summary>Most kitchens of one account.</summary>
    public const int MostKitchens = 100;
}
