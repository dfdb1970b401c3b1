using System.Net.Mime;
using System.Text.Json;
using Microsoft.AspNetCore.Mvc;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Files.Sanitization;
using Rinsewright.Server.Hosting;

namespace Rinsewright.Server.Sanitization;

/// <summary>Proofs computed on the server by the same run as in the browser and on the command line. Nothing is kept.</summary>
public static class ProofEndpoints
{
    /// <summary>POST /sanitization/proof, GET /sanitization/rule-sets.</summary>
    public static void MapProof(this IEndpointRouteBuilder api)
    {
        var sanitization = api.MapGroup("/sanitization");
        sanitization
            .MapPost("/proof", ProveAsync)
            .RequireAuthorization(Access.Work)
            .WithName("compute-proof")
            .WithSummary(
                "Judge a logger file (form part 'file') and typed-in readings by a request (form part 'request', JSON); either part may be absent"
            )
            .Accepts<ProofForm>(MediaTypeNames.Multipart.FormData)
            .DisableAntiforgery() // SameOrigin has refused pages of other sites before this
            .Takes(Limits.MostProofBytes)
            .Produces<ProofReport>()
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .RequireRateLimiting(Limits.Computing)
            .WithRequestTimeout(Limits.Long);
        sanitization
            .MapGet("/rule-sets", () => RuleSets.BuiltIn.Select(Travelling).ToList())
            .RequireAuthorization(Access.Read)
            .WithName("rule-sets")
            .WithSummary("The built-in rule sets with every limit and its citation, the default one first")
            .Produces<IReadOnlyList<RuleSetDto>>();
    }

    /// <summary>The form's parts, for the OpenAPI document.</summary>
    /// <param name="File">Logger file as it came.</param>
    /// <param name="Request">A proof request as JSON.</param>
    public sealed record ProofForm(IFormFile? File, string? Request);

    private static async Task<IResult> ProveAsync(HttpContext context, CancellationToken ct)
    {
        if (!context.Request.HasFormContentType)
        {
            return Problems.Result(context, StatusCodes.Status415UnsupportedMediaType, "server.problem.no-form");
        }

        var form = await context.Request.ReadFormAsync(ct); // parts over 64 KiB rest in a temporary file until the answer is sent
        var text = form["request"].ToString();
        var request =
            text.Length == 0 ? new ProofRequest() : JsonSerializer.Deserialize<ProofRequest>(text, Json.Options) ?? new ProofRequest();
        if (form.Files.GetFile("file") is not { } file)
        {
            return TypedResults.Ok(await ProofRun.RunAsync(request, null, null, null, ct));
        }

        await using var stream = file.OpenReadStream();
        return TypedResults.Ok(await ProofRun.RunAsync(request, stream, Path.GetFileName(file.FileName), null, ct));
    }

    private static RuleSetDto Travelling(RuleSet set) =>
        new(set.Id, set.Title, set.Jurisdiction, set.Edition, set.BasedOn, [.. set.Limits.Select(ProofReportMapping.Limit)], set.Remarks);
}
