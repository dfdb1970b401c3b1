using Microsoft.EntityFrameworkCore;
using Rinsewright.Server.Hosting;

namespace Rinsewright.Server.Storage;

/// <summary>Registers the store and brings its tables up to date.</summary>
public static class StoreOpening
{
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

    /// <summary>Creates the store or moves it to this version. Several processes may start at once: the database's own migration lock lets one through at a time.</summary>
    /// <exception cref="StartRefusedException">The database cannot be reached or written.</exception>
    public static async Task OpenAsync(IServiceProvider services, ServerSettings settings, CancellationToken ct)
    {
        await using var scope = services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        try
        {
            await db.Database.MigrateAsync(ct);
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
}
