using Rinsewright.Server.Hosting;

namespace Rinsewright.Server.Demo;

/// <summary>The invented demo service can be taken out.</summary>
public static class DemoEndpoints
{
    /// <summary>DELETE /demo.</summary>
    public static void MapDemo(this IEndpointRouteBuilder api) =>
        api.MapDelete("/demo", async (DemoService demo, CancellationToken ct) => new DemoRemoved(await demo.RemoveAsync(ct)))
            .WithName("remove-demo")
            .WithSummary("Remove the demo service's kitchens, machines, proofs and files; they do not come back");

    /// <summary>What was removed.</summary>
    /// <param name="Documents">How many documents.</param>
    public sealed record DemoRemoved(int Documents);
}
