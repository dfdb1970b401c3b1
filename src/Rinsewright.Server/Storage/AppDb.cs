using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Rinsewright.Server.Storage;

/// <summary>What the server keeps. Everything here works alike on SQLite and PostgreSQL: no raw SQL, no assumption about upper and lower case.</summary>
public abstract partial class AppDb(DbContextOptions options) : IdentityUserContext<Account, Guid>(options), IDataProtectionKeyContext
{
    /// <summary>Documents as they now stand.</summary>
    public DbSet<DocumentRow> Documents => Set<DocumentRow>();

    /// <summary>Every operation received.</summary>
    public DbSet<OperationRow> Operations => Set<OperationRow>();

    /// <summary>Every list received.</summary>
    public DbSet<TurnRow> Turns => Set<TurnRow>();

    /// <summary>The one row about the store.</summary>
    public DbSet<StoreRow> Store => Set<StoreRow>();

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        AccountModel(builder);
        builder.Entity<DocumentRow>(document =>
        {
            document.Property(d => d.Id).ValueGeneratedNever();
            document.HasIndex(d => d.Revision).IsUnique();
            document.HasIndex(d => new { d.Kind, d.MadeAt });
            document.HasIndex(d => d.KitchenId);
            document.Property(d => d.Kind).HasMaxLength(TextLimits.Kind);
            document.Property(d => d.Author).HasMaxLength(TextLimits.Name);
            document.Property(d => d.Kitchen).HasMaxLength(TextLimits.Name);
            document.Property(d => d.Machine).HasMaxLength(TextLimits.Name);
            document.Property(d => d.Technician).HasMaxLength(TextLimits.Name);
            document.Property(d => d.Verdict).HasMaxLength(TextLimits.Kind);
        });
        builder.Entity<OperationRow>(operation =>
        {
            operation.Property(o => o.Id).ValueGeneratedNever();
            operation.HasIndex(o => o.DocumentId);
            operation.HasIndex(o => o.Revision);
            operation.Property(o => o.Kind).HasMaxLength(TextLimits.Kind).HasDefaultValue(Contracts.Records.Kinds.Proof); // of what came before there were others
            operation.Property(o => o.Action).HasMaxLength(TextLimits.Kind);
            operation.Property(o => o.Outcome).HasMaxLength(TextLimits.Kind);
            operation.Property(o => o.Author).HasMaxLength(TextLimits.Name);
            operation.Property(o => o.Device).HasMaxLength(TextLimits.Name);
        });
        builder.Entity<TurnRow>(turn =>
        {
            turn.HasKey(t => t.Number);
            turn.Property(t => t.Number).ValueGeneratedNever();
        });
        builder.Entity<StoreRow>().Property(s => s.Id).ValueGeneratedNever();
    }

    /// <summary>Times rest as milliseconds since 1970 UTC: SQLite cannot order by an offset time and PostgreSQL keeps none. The offset stays in the document.</summary>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UnixMilliseconds>();

    private sealed class UnixMilliseconds()
        : ValueConverter<DateTimeOffset, long>(t => t.ToUnixTimeMilliseconds(), ms => DateTimeOffset.FromUnixTimeMilliseconds(ms));
}

/// <summary>Longest texts the store takes, in characters.</summary>
public static class TextLimits
{
    /// <summary>A kind or an action.</summary>
    public const int Kind = 32;

    /// <summary>A name of a person, a device, a kitchen or a machine.</summary>
    public const int Name = 200;

    /// <summary>A network address.</summary>
    public const int Address = 64;

    /// <summary>A SHA-256 in hex.</summary>
    public const int Hash = 64;
}
