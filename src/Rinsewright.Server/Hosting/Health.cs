using Microsoft.EntityFrameworkCore;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Hosting;

/// <summary>Whether the server can do its work.</summary>
/// <param name="Status"><c>healthy</c> or <c>unhealthy</c>.</param>
/// <param name="Database">Whether the store answers and its tables are of this version.</param>
/// <param name="Files">Whether the folder of original files is there.</param>
/// <param name="Version">Version of the program.</param>
public sealed record HealthReport(string Status, bool Database, bool Files, string Version);

/// <summary>The health endpoint, for a proxy or a monitor.</summary>
public static class Health
{
    /// <summary>GET /health: 200, or 503 where something is wrong.</summary>
    public static RouteHandlerBuilder MapHealth(this IEndpointRouteBuilder app) =>
        app.MapGet("/health", CheckAsync)
            .WithName("health")
            .WithSummary("Whether the database and the folder of original files can be used")
            .Produces<HealthReport>()
            .Produces<HealthReport>(StatusCodes.Status503ServiceUnavailable);

    private static async Task<IResult> CheckAsync(AppDb db, ServerSettings settings, ILogger<HealthReport> log, CancellationToken ct)
    {
        var database = await AnswersAsync(db, log, ct);
        var files = Directory.Exists(settings.FilesFolder);
        var version = typeof(Health).Assembly.GetName().Version!.ToString(3);
        return TypedResults.Json(
            new HealthReport(database && files ? "healthy" : "unhealthy", database, files, version),
            statusCode: database && files ? StatusCodes.Status200OK : StatusCodes.Status503ServiceUnavailable
        );
    }

    private static async Task<bool> AnswersAsync(AppDb db, ILogger log, CancellationToken ct)
    {
        try
        {
            return await db.Store.AnyAsync(ct) && !(await db.Database.GetPendingMigrationsAsync(ct)).Any();
        }
        catch (Exception e) when (e is System.Data.Common.DbException or InvalidOperationException)
        {
            log.LogWarning(e, "The database does not answer");
            return false;
        }
    }
}
