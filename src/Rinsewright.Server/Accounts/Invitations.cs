using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Contracts.Records;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Accounts;

/// <summary>Invitations: one use, for a time, known here by the hash of their secret alone.</summary>
public sealed class Invitations(AppDb db, People people, Caller caller, AuditTrail audit, TimeProvider clock)
{
    private const int SecretBytes = 32;

    /// <summary>How long a link for a new password holds.</summary>
    public static readonly TimeSpan LinkHolds = TimeSpan.FromHours(24);

    /// <summary>Makes one, keeps it, and tells its secret this once.</summary>
    public async Task<InvitationMade> MakeAsync(
        string role,
        IReadOnlyList<Guid> kitchens,
        string name,
        TimeSpan holds,
        Account? renews,
        CancellationToken ct
    )
    {
        var now = clock.GetUtcNow();
        var token = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(SecretBytes));
        var row = new InvitationRow
        {
            Id = Guid.CreateVersion7(),
            TokenHash = Hash(token),
            Role = role,
            Kitchens = role == Roles.Kitchen ? string.Join(' ', kitchens.Distinct()) : "",
            Name = name,
            RenewsId = renews?.Id,
            MadeBy = caller.Account?.UserName ?? "",
            MadeAt = now,
            ExpiresAt = now + holds,
        };
        db.Invitations.Add(row);
        audit.Add(renews is null ? AuditActs.InvitationMade : AuditActs.PasswordLink, name.Length > 0 ? $"{name}: {role}" : role);
        await db.SaveChangesAsync(ct);
        return new InvitationMade(View(row), token);
    }

    /// <summary>Every invitation, the latest first.</summary>
    public async Task<IReadOnlyList<InvitationView>> ListAsync(CancellationToken ct) =>
        [
            .. (
                await db.Invitations.AsNoTracking().OrderByDescending(i => i.MadeAt).ThenByDescending(i => i.Id).Take(500).ToListAsync(ct)
            ).Select(View),
        ];

    /// <summary>Takes one back; false where it does not hold any more.</summary>
    public async Task<bool> RevokeAsync(Guid id, CancellationToken ct)
    {
        var now = clock.GetUtcNow();
        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        var row = await db.Invitations.AsNoTracking().SingleOrDefaultAsync(i => i.Id == id, ct);
        if (
            row is null
            || await db
                .Invitations.Where(i => i.Id == id && i.AcceptedAt == null && i.RevokedAt == null)
                .ExecuteUpdateAsync(i => i.SetProperty(r => r.RevokedAt, now), ct) == 0
        )
        {
            return false;
        }

        audit.Add(AuditActs.InvitationRevoked, row.Name.Length > 0 ? $"{row.Name}: {row.Role}" : row.Role);
        await db.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return true;
    }

    /// <summary>What whoever has the link may know of it; null where it does not hold.</summary>
    public async Task<Invited?> LookAsync(string token, CancellationToken ct)
    {
        if (await FindAsync(token, ct) is not { } row)
        {
            return null;
        }

        var ids = KitchensOf(row);
        var kitchens = await db
            .Documents.AsNoTracking()
            .Where(d => d.Kind == Kinds.Kitchen && ids.Contains(d.Id) && d.Json != null)
            .Select(d => d.Kitchen)
            .ToListAsync(ct);
        return new Invited(row.Role, kitchens, row.Name, row.MadeBy, row.ExpiresAt, row.RenewsId is not null);
    }

    /// <summary>Takes one: the account it made or renewed, or what is wrong. Of two that take it at once, one does.</summary>
    public async Task<(Account? Account, string? Fault)> AcceptAsync(Acceptance acceptance, CancellationToken ct)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        await people.TurnAsync(ct);
        if (await FindAsync(acceptance.Token, ct) is not { } row)
        {
            return (null, "account.problem.invitation");
        }

        var (account, fault) = row.RenewsId is { } id
            ? await RenewAsync(id, acceptance.Password, ct)
            : await people.MakeAsync(acceptance.Name, acceptance.Password, row.Role, KitchensOf(row));
        if (account is null)
        {
            return (null, fault); // the transaction ends undone and the invitation still holds
        }

        var now = clock.GetUtcNow();
        await db.Invitations.Where(i => i.Id == row.Id).ExecuteUpdateAsync(i => i.SetProperty(r => r.AcceptedAt, now), ct);
        audit.Add(
            row.RenewsId is null ? AuditActs.InvitationAccepted : AuditActs.PasswordRenewed,
            $"{account.UserName}: {account.Role}",
            account
        );
        await db.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return (account, null);
    }

    // Whoever needed a link for a new password may have lost the device: its passkeys go with its sessions.
    private async Task<(Account? Account, string? Fault)> RenewAsync(Guid id, string password, CancellationToken ct)
    {
        var account = await db.Accounts.Include(a => a.Kitchens).SingleAsync(a => a.Id == id, ct);
        if ((account.Disabled ? "account.problem.invitation" : PasswordRule.Fault(password, account.UserName!)) is { } fault)
        {
            return (null, fault);
        }

        await people.RenewAsync(id, password, null, ct);
        await db.UserPasskeys.Where(p => p.UserId == id).ExecuteDeleteAsync(ct);
        return (account, null);
    }

    private async Task<InvitationRow?> FindAsync(string token, CancellationToken ct)
    {
        var hash = Hash(token);
        var now = clock.GetUtcNow();
        return await db
            .Invitations.AsNoTracking()
            .SingleOrDefaultAsync(i => i.TokenHash == hash && i.AcceptedAt == null && i.RevokedAt == null && i.ExpiresAt > now, ct);
    }

    private InvitationView View(InvitationRow row) =>
        new(
            row.Id,
            row.Role,
            KitchensOf(row),
            row.Name,
            row.MadeBy,
            row.MadeAt,
            row.ExpiresAt,
            row.AcceptedAt is not null ? "accepted"
                : row.RevokedAt is not null ? "revoked"
                : row.ExpiresAt <= clock.GetUtcNow() ? "expired"
                : "open",
            row.RenewsId is not null
        );

    private static Guid[] KitchensOf(InvitationRow row) =>
        [.. row.Kitchens.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Guid.Parse)];

    private static string Hash(string token) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token)));
}
