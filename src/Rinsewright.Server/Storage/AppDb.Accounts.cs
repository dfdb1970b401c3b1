using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.EntityFrameworkCore.Infrastructure;

namespace Rinsewright.Server.Storage;

// Accounts and what guards them.
public abstract partial class AppDb
{
    /// <summary>Accounts.</summary>
    public DbSet<Account> Accounts => Users;

    /// <summary>Devices on which somebody is or was signed in.</summary>
    public DbSet<SessionRow> Sessions => Set<SessionRow>();

    /// <summary>Invitations.</summary>
    public DbSet<InvitationRow> Invitations => Set<InvitationRow>();

    /// <summary>The audit trail.</summary>
    public DbSet<AuditRow> Audit => Set<AuditRow>();

    /// <summary>Kitchens that documents have left.</summary>
    public DbSet<LeftKitchenRow> LeftKitchens => Set<LeftKitchenRow>();

    /// <summary>Keys that sign cookies; here, so that all processes of a team share them and a backup of the database holds them.</summary>
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    /// <inheritdoc/>
    public override Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        RefuseAuditChanges();
        return base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
    }

    /// <inheritdoc/>
    public override int SaveChanges(bool acceptAllChangesOnSuccess)
    {
        RefuseAuditChanges();
        return base.SaveChanges(acceptAllChangesOnSuccess);
    }

    // Which tables the accounts have is read from options of the application a context works for. One made by hand, by the migration tool or a test, works for none and would
    // leave the passkeys out.
    private static readonly IServiceProvider Alone = new ServiceCollection()
        .Configure<IdentityOptions>(o => o.Stores.SchemaVersion = IdentitySchemaVersions.Version3)
        .BuildServiceProvider();

    /// <summary>What holds for every context, however it is made.</summary>
    protected override void OnConfiguring(DbContextOptionsBuilder optionsBuilder)
    {
        optionsBuilder.ConfigureWarnings(w => w.Ignore(CoreEventId.MappedPropertyIgnoredWarning)); // that columns nobody uses are left out below is meant
        if (optionsBuilder.Options.FindExtension<CoreOptionsExtension>()?.ApplicationServiceProvider is null)
        {
            optionsBuilder.UseApplicationServiceProvider(Alone);
        }
    }

    private void RefuseAuditChanges()
    {
        if (ChangeTracker.Entries<AuditRow>().Any(e => e.State is EntityState.Modified or EntityState.Deleted))
        {
            throw new InvalidOperationException("A line of the audit trail is written once and never changed.");
        }
    }

    private static void AccountModel(ModelBuilder model)
    {
        model.Entity<Account>(account =>
        {
            account.ToTable("Accounts");
            account.Property(a => a.Id).ValueGeneratedNever();
            account.Property(a => a.Role).HasMaxLength(TextLimits.Kind);
            account.HasMany(a => a.Kitchens).WithOne().HasForeignKey(k => k.AccountId);
            // Nobody signs in with these.
            account.Ignore(a => a.Email);
            account.Ignore(a => a.NormalizedEmail);
            account.Ignore(a => a.EmailConfirmed);
            account.Ignore(a => a.PhoneNumber);
            account.Ignore(a => a.PhoneNumberConfirmed);
            account.Ignore(a => a.TwoFactorEnabled);
        });
        model.Entity<IdentityUserClaim<Guid>>().ToTable("AccountClaims");
        model.Entity<IdentityUserLogin<Guid>>().ToTable("AccountLogins");
        model.Entity<IdentityUserToken<Guid>>().ToTable("AccountTokens");
        model.Entity<IdentityUserPasskey<Guid>>().ToTable("AccountPasskeys");
        model.Entity<AccountKitchenRow>(kitchen =>
        {
            kitchen.ToTable("AccountKitchens");
            kitchen.HasKey(k => new { k.AccountId, k.KitchenId });
        });
        model.Entity<SessionRow>(session =>
        {
            session.Property(s => s.Id).ValueGeneratedNever();
            session.HasOne<Account>().WithMany().HasForeignKey(s => s.AccountId);
            session.Property(s => s.Device).HasMaxLength(TextLimits.Name);
            session.Property(s => s.Address).HasMaxLength(TextLimits.Address);
        });
        model.Entity<InvitationRow>(invitation =>
        {
            invitation.Property(i => i.Id).ValueGeneratedNever();
            invitation.HasIndex(i => i.TokenHash).IsUnique();
            invitation.Property(i => i.TokenHash).HasMaxLength(TextLimits.Hash);
            invitation.Property(i => i.Role).HasMaxLength(TextLimits.Kind);
            invitation.Property(i => i.Name).HasMaxLength(TextLimits.Name);
            invitation.Property(i => i.MadeBy).HasMaxLength(TextLimits.Name);
        });
        model.Entity<AuditRow>(audit =>
        {
            audit.Property(a => a.Id).ValueGeneratedNever();
            audit.HasIndex(a => a.At);
            audit.Property(a => a.What).HasMaxLength(TextLimits.Kind);
            audit.Property(a => a.Who).HasMaxLength(TextLimits.Name);
            audit.Property(a => a.About).HasMaxLength(TextLimits.Name);
            audit.Property(a => a.Address).HasMaxLength(TextLimits.Address);
            audit.Property(a => a.Device).HasMaxLength(TextLimits.Name);
        });
        model.Entity<LeftKitchenRow>(left =>
        {
            left.HasKey(l => new { l.DocumentId, l.KitchenId });
            left.HasIndex(l => new { l.KitchenId, l.Revision });
        });
    }
}
