using Rinsewright.Contracts.Accounts;
using Rinsewright.Server.Accounts;
using Rinsewright.Server.Hosting;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Demo;

/// <summary>The invented demo service can be taken out.</summary>
public static class DemoEndpoints
{
    /// <summary>DELETE /demo.</summary>
    public static void MapDemo(this IEndpointRouteBuilder api) =>
        api.MapDelete("/demo", RemoveAsync)
            .RequireAuthorization(Access.Office)
            .WithName("remove-demo")
            .WithSummary("Remove the demo service's kitchens, machines, proofs and files; they do not come back");

    private static async Task<DemoRemoved> RemoveAsync(DemoService demo, AuditTrail audit, AppDb db, CancellationToken ct)
    {
        var removed = await demo.RemoveAsync(ct);
        audit.Add(AuditActs.DemoRemoved);
        await db.SaveChangesAsync(ct);
        return new DemoRemoved(removed);
    }

    /// <summary>What was removed.</summary>
    /// <param name="Documents">How many documents.</param>
    public sealed record DemoRemoved(int Documents);
}
