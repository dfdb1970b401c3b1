using Rinsewright.Contracts.Records;
using Rinsewright.Server.Hosting;

namespace Rinsewright.Server.Records;

/// <summary>How devices and the store come to agree: operations in, changes out.</summary>
public static class OperationEndpoints
{
    /// <summary>POST /operations, GET /changes, GET /documents/{id}/history.</summary>
    public static void MapOperations(this IEndpointRouteBuilder api)
    {
        api.MapPost("/operations", SendAsync)
            .RequireAuthorization(Access.Work)
            .WithName("send-operations")
            .WithSummary("Apply a list of operations, each once; sending it again gives the same answers")
            .Takes(Limits.MostOperationBytes)
            .Produces<OperationResults>()
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge);
        api.MapGet("/changes", (string? after, string? seen, ChangeFeed feed, CancellationToken ct) => feed.ChangesAsync(after, seen, ct))
            .RequireAuthorization(Access.Read)
            .WithName("changes")
            .WithSummary("Documents changed after a cursor, a page at a time");
        api.MapGet("/documents/{id:guid}/history", HistoryAsync)
            .RequireAuthorization(Access.Work)
            .WithName("document-history")
            .WithSummary("Every change of a document with who wrote it, the latest written first")
            .Produces<IReadOnlyList<DocumentVersion>>()
            .ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static async Task<IResult> HistoryAsync(Guid id, ProofStore store, HttpContext context, CancellationToken ct) =>
        await store.HistoryAsync(id, ct) is { Count: > 0 } versions
            ? TypedResults.Ok(versions)
            : Problems.Result(context, StatusCodes.Status404NotFound, "server.problem.no-document");

    private static async Task<IResult> SendAsync(
        IReadOnlyList<Operation> operations,
        OperationLog log,
        LostFiles lost,
        HttpContext context,
        CancellationToken ct
    )
    {
        if (operations.Count > OperationLog.MostAtOnce)
        {
            return Problems.Result(
                context,
                StatusCodes.Status400BadRequest,
                "server.problem.many-operations",
                ("most", $"{OperationLog.MostAtOnce}")
            );
        }

        if (operations.Any(o => o is null))
        {
            return Problems.Result(context, StatusCodes.Status400BadRequest, "server.problem.null-operation");
        }

        var answer = await log.ApplyAsync(operations, Problems.WordsFor(context), demo: false, ct);
        var kept = operations.Zip(answer.Results).Where(o => o.Second.Outcome != "refused").Select(o => o.First);
        return TypedResults.Ok(
            answer with
            {
                WantedFiles = lost.Look(kept.SelectMany(NamedFiles.Of)) is { Count: > 0 } wanted ? wanted : null,
            }
        );
    }
}
