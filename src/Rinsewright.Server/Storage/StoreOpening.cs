using Microsoft.EntityFrameworkCore;
using Rinsewright.Server.Hosting;

namespace Rinsewright.Server.Storage;

/// <summary>Registers the store and brings its tables up to date.</summary>
public static class StoreOpening
{
    private static readonly TimeSpan Wait = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(2);

    /// <summary>PostgreSQL where a connection string is set, else the SQLite file in the data folder.</summary>
    public static void AddStore(this IServiceCollection services, ServerSettings settings)
    {
        if (settings.PostgresConnection is { } connection)
        {
            services.AddDbContext<AppDb, PostgresDb>(o => o.UseNpgsql(connection));
        }
        else
        {
            services.AddDbContext<AppDb, SqliteDb>(o => o.UseSqlite(SqliteDb.ConnectionTo(settings.DatabaseFile)));
        }
    }

    /// <summary>Creates the store or moves it to this version. Several processes may start at once: one is let through at a time.</summary>
    /// <exception cref="StartRefusedException">The database cannot be reached or written.</exception>
    public static async Task OpenAsync(IServiceProvider services, ServerSettings settings, CancellationToken ct)
    {
        await using var scope = services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        try
        {
            await MigrateAsync(db, settings, ct);
            if (!await db.Store.AnyAsync(ct))
            {
                db.Store.Add(new StoreRow { Id = StoreRow.TheOne, StoreId = Guid.CreateVersion7() });
                await db.SaveChangesAsync(ct);
            }
        }
        catch (DbUpdateException) when (!ct.IsCancellationRequested)
        {
            // Another process put the row in between the question and the answer; anything else shows at the first use below.
            db.ChangeTracker.Clear();
            await db.Store.SingleAsync(ct);
        }
        catch (System.Data.Common.DbException e)
        {
            throw new StartRefusedException("server.start.database", e, ("place", settings.StorePlace), ("reason", e.Message));
        }
    }

    // PostgreSQL lets go of its migration lock when a process dies. In SQLite the lock is a row, which a process that was killed in the middle leaves behind, and the next would wait for
    // it without end. There the turn is a file that the system lets go of; whoever holds it knows that a row left over is nobody's.
    private static async Task MigrateAsync(AppDb db, ServerSettings settings, CancellationToken ct)
    {
        if (settings.PostgresConnection is not null)
        {
            await db.Database.MigrateAsync(ct);
            return;
        }

        await using var turn = await TurnAsync(settings.DatabaseFile + ".opening", ct);
        // Said here, because whoever opens the file first makes it, and only the migration's own making of it would say so.
        await db.Database.ExecuteSqlRawAsync("PRAGMA journal_mode = 'wal'", ct);
        await db.Database.ExecuteSqlRawAsync("DROP TABLE IF EXISTS \"__EFMigrationsLock\"", ct);
        await db.Database.MigrateAsync(ct);
    }

    // Null where the folder takes no file: then the database says so itself. A turn that never comes is said, with the file to look at.
    private static async Task<FileStream?> TurnAsync(string file, CancellationToken ct)
    {
        for (var waited = TimeSpan.Zero; ; waited += Wait)
        {
            try
            {
                return new FileStream(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (Exception e) when (e is UnauthorizedAccessException or DirectoryNotFoundException)
            {
                return null;
            }
            catch (IOException) when (!File.Exists(file))
            {
                return null;
            }
            catch (IOException e) when (waited >= Longest)
            {
                throw new StartRefusedException("server.start.database", e, ("place", file), ("reason", e.Message));
            }
            catch (IOException)
            {
                await Task.Delay(Wait, ct);
            }
        }
    }
}
