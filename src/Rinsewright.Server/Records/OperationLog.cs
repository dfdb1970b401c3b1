using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Records;

/// <summary>
/// Takes operations in, each once. The whole list is one transaction: either all of it is kept or nothing, and an answer lost on the way is given again when
/// the list is sent again. Where two devices changed one document the later writer stands; the other version stays in the history.
/// </summary>
public sealed class OperationLog(AppDb db, TimeProvider clock)
{
    /// <summary>Most operations in one list.</summary>
    public const int MostAtOnce = 500;

    /// <summary>Applies the operations in the order given and answers for each.</summary>
    /// <param name="operations">What the device sent.</param>
    /// <param name="words">Language of reasons.</param>
    /// <param name="demo">Whether the documents belong to the demo service.</param>
    /// <param name="ct">Cancels before anything is kept.</param>
    public async Task<OperationResults> ApplyAsync(IReadOnlyList<Operation> operations, Words words, bool demo, CancellationToken ct)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(ct);

        // Raising the number first takes the lock of the one store row until the commit. So lists are applied one after another on both databases, and
        // nobody who asks for changes by number can ever see a later number before an earlier one.
        await db.Store.ExecuteUpdateAsync(s => s.SetProperty(r => r.Revision, r => r.Revision + operations.Count), ct);
        var revision = await db.Store.Select(s => s.Revision).SingleAsync(ct) - operations.Count;

        var results = new List<OperationResult>(operations.Count);
        foreach (var operation in operations)
        {
            results.Add(await ApplyOneAsync(operation, ++revision, words, demo, ct));
        }

        await db.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return new OperationResults(results);
    }

    private async Task<OperationResult> ApplyOneAsync(Operation operation, long revision, Words words, bool demo, CancellationToken ct)
    {
        if (OperationCheck.Fault(operation) is { } fault)
        {
            return new OperationResult(operation.Id, "refused", 0, Repeated: false, words.Say(fault));
        }

        // FindAsync sees what this list has already added, so an operation twice in one list is also applied once.
        if (await db.Operations.FindAsync([operation.Id], ct) is { } known)
        {
            return known.DocumentId == operation.DocumentId && known.Action == operation.Action && SameTime(known.StatedAt, operation.At)
                ? new OperationResult(known.Id, known.Outcome, known.Revision, Repeated: true, Replaced: known.Replaced)
                : new OperationResult(operation.Id, "refused", 0, Repeated: false, words["server.operation.id-used"]);
        }

        var document = await db.Documents.FindAsync([operation.DocumentId], ct);
        var receivedAt = clock.GetUtcNow();
        var writtenAt = operation.At < receivedAt ? operation.At : receivedAt; // a device whose clock runs ahead must not win for ever
        var stands = document is null || IsLater(writtenAt, operation.Id, document);
        var json = operation.Proof is { } proof ? JsonSerializer.Serialize(proof, ContractsJson.Default.ProofDocument) : null;
        var row = new OperationRow
        {
            Id = operation.Id,
            DocumentId = operation.DocumentId,
            Action = operation.Action,
            Author = operation.Author,
            Device = operation.Device,
            StatedAt = operation.At,
            ReceivedAt = receivedAt,
            Outcome = stands ? "applied" : "superseded",
            Revision = revision,
            Replaced = document is null ? null : await OtherWriterAsync(document.OperationId, operation, ct),
            Json = json,
        };
        db.Operations.Add(row);
        if (document is null)
        {
            document = new DocumentRow
            {
                Id = operation.DocumentId,
                Kind = operation.Kind,
                Author = operation.Author,
                Demo = demo,
            };
            db.Documents.Add(document);
        }

        if (stands)
        {
            document.WrittenAt = writtenAt;
            Write(operation, json, document);
        }

        document.Versions++;
        document.Revision = revision; // also where another version stands: the device learns that there are more versions now
        return new OperationResult(operation.Id, row.Outcome, revision, Repeated: false, Replaced: row.Replaced);
    }

    private static void Write(Operation operation, string? json, DocumentRow document)
    {
        document.OperationId = operation.Id;
        document.Json = json;
        document.Author = operation.Author;
        document.StatedAt = operation.At;
        var madeAt = operation.Proof?.At ?? operation.At;
        document.MadeAt = madeAt;
        document.OffsetMinutes = (int)madeAt.Offset.TotalMinutes;
        document.Kitchen = operation.Proof?.Kitchen ?? "";
        document.Machine = operation.Proof?.Machine ?? "";
        document.Technician = operation.Proof?.Technician ?? "";
        document.Verdict = operation.Proof?.Report.Verdict ?? "";
        document.Passes = operation.Proof?.Report.Passes.Count ?? 0;
    }

    private static bool IsLater(DateTimeOffset at, Guid id, DocumentRow document)
    {
        var (mine, theirs) = (at.ToUnixTimeMilliseconds(), document.WrittenAt.ToUnixTimeMilliseconds());
        return mine > theirs || (mine == theirs && id.CompareTo(document.OperationId) > 0);
    }

    private static bool SameTime(DateTimeOffset a, DateTimeOffset b) => a.ToUnixTimeMilliseconds() == b.ToUnixTimeMilliseconds();

    private async Task<Guid?> OtherWriterAsync(Guid id, Operation operation, CancellationToken ct) =>
        await db.Operations.FindAsync([id], ct) is { } other && (other.Author != operation.Author || other.Device != operation.Device)
            ? id
            : null;
}
