using System.Net.Mime;
using Microsoft.Net.Http.Headers;
using Rinsewright.Contracts.Records;
using Rinsewright.Server.Hosting;

namespace Rinsewright.Server.Records;

/// <summary>Original logger files by their content.</summary>
public static class FileEndpoints
{
    /// <summary>PUT and GET /files/{sha256}.</summary>
    public static void MapFiles(this IEndpointRouteBuilder api)
    {
        api.MapPut("/files/{sha256}", PutAsync)
            .RequireAuthorization(Access.Work)
            .WithName("put-file")
            .WithSummary("Keep an original file under the SHA-256 of its bytes; 201 where it is new, 200 where it was there")
            .Accepts<Stream>(MediaTypeNames.Application.Octet, "*/*")
            .Takes(OriginalFiles.MostBytes)
            .Produces(StatusCodes.Status200OK)
            .Produces(StatusCodes.Status201Created)
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status413PayloadTooLarge)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity)
            .WithRequestTimeout(Limits.Long);
        api.MapGet("/files/{sha256}", GetAsync)
            .RequireAuthorization(Access.Read)
            .WithName("file")
            .WithSummary("An original file, byte for byte")
            .Produces(StatusCodes.Status200OK, contentType: MediaTypeNames.Application.Octet)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .WithRequestTimeout(Limits.Long);
    }

    private static async Task<IResult> PutAsync(string sha256, HttpContext context, OriginalFiles files, CancellationToken ct)
    {
        if (!OriginalFiles.IsSha256(sha256))
        {
            return Problems.Result(context, StatusCodes.Status400BadRequest, "server.problem.no-sha256");
        }

        if (context.Request.ContentLength > OriginalFiles.MostBytes)
        {
            return Problems.Result(context, StatusCodes.Status413PayloadTooLarge, "server.problem.413");
        }

        return await files.PutAsync(sha256, context.Request.Body, ct) switch
        {
            OriginalFiles.Outcome.Stored => TypedResults.Created((string?)null),
            OriginalFiles.Outcome.Known => TypedResults.Ok(),
            _ => Problems.Result(context, StatusCodes.Status422UnprocessableEntity, "server.problem.file-damaged"),
        };
    }

    private static async Task<IResult> GetAsync(
        string sha256,
        HttpContext context,
        OriginalFiles files,
        ProofStore store,
        CancellationToken ct
    )
    {
        if (!OriginalFiles.IsSha256(sha256) || !await store.MayHaveAsync(sha256, ct) || files.Open(sha256) is not { } file)
        {
            return Problems.Result(context, StatusCodes.Status404NotFound, "server.problem.no-file");
        }

        context.Response.Headers.CacheControl = "private, max-age=31536000, immutable"; // the address is the content
        return TypedResults.Stream(
            file,
            MediaTypeNames.Application.Octet,
            fileDownloadName: sha256,
            entityTag: new EntityTagHeaderValue($"\"{sha256}\""),
            enableRangeProcessing: true
        );
    }
}
