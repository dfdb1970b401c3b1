using System.Net.Mime;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Files.Sheets;
using Rinsewright.Server.Hosting;

namespace Rinsewright.Server.Records;

/// <summary>Saved proofs.</summary>
public static class ProofDocumentEndpoints
{
    private const int MostAtOnce = 500;

    /// <summary>GET /proofs, /proofs/{id}, /proofs/{id}/history, /proofs/{id}/sheet.</summary>
    public static void MapProofs(this IEndpointRouteBuilder api)
    {
        var proofs = api.MapGroup("/proofs");
        proofs
            .MapGet(
                "",
                (ProofStore store, CancellationToken ct, int skip = 0, int take = 100) =>
                    store.ListAsync(Math.Max(0, skip), Math.Clamp(take, 1, MostAtOnce), ct)
            )
            .RequireAuthorization(Access.Read)
            .WithName("list-proofs")
            .WithSummary("Saved proofs in one line each, the latest made first; at most 500 at once");
        proofs
            .MapGet("/{id:guid}", FindAsync)
            .RequireAuthorization(Access.Read)
            .WithName("proof")
            .WithSummary("One saved proof")
            .Produces<ProofDocument>()
            .ProducesProblem(StatusCodes.Status404NotFound);
        proofs
            .MapGet("/{id:guid}/history", HistoryAsync)
            .RequireAuthorization(Access.Work)
            .WithName("proof-history")
            .WithSummary("Every version of a proof with who wrote it, the latest written first")
            .Produces<IReadOnlyList<DocumentVersion>>()
            .ProducesProblem(StatusCodes.Status404NotFound);
        proofs
            .MapGet("/{id:guid}/sheet", SheetAsync)
            .RequireAuthorization(Access.Read)
            .WithName("proof-sheet")
            .WithSummary("The sheet for the inspector as PDF; paper a4 or letter, language en or es")
            .Produces(StatusCodes.Status200OK, contentType: MediaTypeNames.Application.Pdf)
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .RequireRateLimiting(Limits.Computing);
    }

    private static async Task<IResult> FindAsync(Guid id, ProofStore store, HttpContext context, CancellationToken ct) =>
        await store.FindAsync(id, ct) is { } proof ? TypedResults.Ok(proof) : NotFound(context);

    private static async Task<IResult> HistoryAsync(Guid id, ProofStore store, HttpContext context, CancellationToken ct) =>
        await store.HistoryAsync(id, ct) is { Count: > 0 } versions ? TypedResults.Ok(versions) : NotFound(context);

    private static async Task<IResult> SheetAsync(
        Guid id,
        ProofStore store,
        HttpContext context,
        CancellationToken ct,
        string paper = "a4",
        string? language = null
    )
    {
        language ??= Problems.WordsFor(context).Language;
        if (paper is not ("a4" or "letter"))
        {
            return Problems.Result(context, StatusCodes.Status400BadRequest, "server.problem.paper");
        }

        if (!Words.Languages.Contains(language))
        {
            return Problems.Result(context, StatusCodes.Status400BadRequest, "server.problem.language");
        }

        if (await store.FindAsync(id, ct) is not { } proof)
        {
            return NotFound(context);
        }

        var pdf = ProofSheet.Make(proof, new SheetOptions(paper == "a4" ? Paper.A4 : Paper.Letter, language));
        return TypedResults.Bytes(pdf, MediaTypeNames.Application.Pdf, $"rinsewright-{proof.At:yyyy-MM-dd}-{id.ToString("n")[^6..]}.pdf");
    }

    private static IResult NotFound(HttpContext context) =>
        Problems.Result(context, StatusCodes.Status404NotFound, "server.problem.no-proof");
}
