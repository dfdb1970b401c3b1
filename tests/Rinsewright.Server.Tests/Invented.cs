using System.Net.Http.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Server.Tests;

/// <summary>Invented documents and operations.</summary>
public static class Invented
{
    /// <summary>A morning in the kitchen.</summary>
    public static readonly DateTimeOffset Morning = new(2026, 11, 20, 9, 30, 0, TimeSpan.FromHours(-7));

    /// <summary>A small proof without a file.</summary>
    public static ProofDocument Proof(Guid id, string note = "", string kitchen = "Larkspur Lodge") =>
        new(
            id,
            ProofDocument.CurrentVersion,
            kitchen,
            "Two-tank rack conveyor",
            "Ines Calloway",
            Morning,
            new ProofRequest(),
            new ProofReport(
                ProofReport.CurrentSchema,
                null,
                0,
                0,
                [],
                [],
                [],
                [],
                [],
                [],
                "undetermined",
                ["No reading of the ware's surface."],
                [],
                [],
                [],
                new TermsDto(
                    "multitankConveyor",
                    "hotWater",
                    "fda-food-code",
                    "FDA Food Code",
                    "2022",
                    null,
                    new AmountDto(3, "[degF]{diff}"),
                    false,
                    null,
                    null
                )
            ),
            [],
            note
        );

    /// <summary>A put by a technician's phone.</summary>
    public static Operation Put(
        Guid document,
        string note = "",
        DateTimeOffset? at = null,
        string author = "Ines Calloway",
        string device = "phone"
    ) => new(Guid.CreateVersion7(), "proof", document, author, device, at ?? Morning, "put", Proof(document, note));

    /// <summary>A delete by a technician's phone.</summary>
    public static Operation Delete(Guid document, DateTimeOffset at) =>
        new(Guid.CreateVersion7(), "proof", document, "Ines Calloway", "phone", at, "delete", null);

    /// <summary>Sends operations.</summary>
    public static async Task<IReadOnlyList<OperationResult>> SendAsync(this HttpClient client, params Operation[] operations)
    {
        using var response = await client.PostOperationsAsync(operations);
        response.EnsureSuccessStatusCode();
        var results = await response.Content.ReadFromJsonAsync(
            ContractsJson.Default.OperationResults,
            TestContext.Current.CancellationToken
        );
        return results!.Results;
    }

    /// <summary>Sends operations and gives the bare answer.</summary>
    public static Task<HttpResponseMessage> PostOperationsAsync(this HttpClient client, params IReadOnlyList<Operation> operations) =>
        client.PostAsync(
            new Uri("api/operations", UriKind.Relative),
            JsonContent.Create(operations, ContractsJson.Default.IReadOnlyListOperation),
            TestContext.Current.CancellationToken
        );

    /// <summary>What changed after a cursor.</summary>
    public static async Task<Changes> ChangesAsync(this HttpClient client, string after = "") =>
        (
            await client.GetFromJsonAsync(
                "api/changes?after=" + after,
                ContractsJson.Default.Changes,
                TestContext.Current.CancellationToken
            )
        )!;

    /// <summary>Every version of a document.</summary>
    public static async Task<IReadOnlyList<DocumentVersion>> HistoryAsync(this HttpClient client, Guid id) =>
        (
            await client.GetFromJsonAsync(
                $"api/proofs/{id}/history",
                ContractsJson.Default.IReadOnlyListDocumentVersion,
                TestContext.Current.CancellationToken
            )
        )!;

    /// <summary>Saved proofs.</summary>
    public static async Task<IReadOnlyList<ProofSummary>> ProofsAsync(this HttpClient client) =>
        (
            await client.GetFromJsonAsync(
                "api/proofs",
                ContractsJson.Default.IReadOnlyListProofSummary,
                TestContext.Current.CancellationToken
            )
        )!;
}
