using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Server.Accounts;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Records;

/// <summary>
/// Takes operations in, each once. The whole list is one transaction: either all of it is kept or nothing, and an answer lost on the way is given again when
/// the list is sent again. Where two devices changed one document the later writer stands, of a document of fields in each field; the other version stays in the
/// history.
/// </summary>
public sealed class OperationLog(AppDb db, Caller caller, TimeProvider clock)
{
    /// <summary>Most operations in one list.</summary>
    public const int MostAtOnce = 500;

    private Dictionary<Guid, OperationRow> known = [];
    private Dictionary<Guid, DocumentRow> documents = [];

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
        var turn = await db.Store.Select(s => s.Revision).SingleAsync(ct);
        var revision = turn - operations.Count;

        // What is here of the list is read at once, not operation by operation; from here on Find sees it, and what this list adds.
        await FindAllAsync(operations, ct);
        var results = new List<OperationResult>(operations.Count);
        foreach (var operation in operations)
        {
            results.Add(
                await KeeperFaultAsync(operation, words, ct) is { } fault
                    ? new OperationResult(operation.Id, "refused", 0, Repeated: false, fault)
                    : await ApplyOneAsync(Stamped(operation), ++revision, words, demo, ct)
            );
        }

        if (operations.Count > 0)
        {
            db.Turns.Add(new TurnRow { Number = turn, Tag = Guid.NewGuid() });
        }

        await db.SaveChangesAsync(ct);
        var store = await db.Store.AsNoTracking().SingleAsync(ct);
        var last = results.Where(r => r.Revision > 0).Select(r => r.Revision).DefaultIfEmpty().Max();
        var place = last > 0 ? await ChangeCursor.AfterAsync(db, store, last, ct) : null;
        await transaction.CommitAsync(ct);
        return new OperationResults(results, place);
    }

    // The store row's lock is held, so nobody else adds any of these meanwhile.
    private async Task FindAllAsync(IReadOnlyList<Operation> operations, CancellationToken ct)
    {
        List<Guid> ids = [.. operations.Select(o => o.Id).Distinct()],
            documentIds = [.. operations.Select(o => o.DocumentId).Distinct()];
        known = await db.Operations.Where(o => ids.Contains(o.Id)).ToDictionaryAsync(o => o.Id, ct);
        documents = await db.Documents.Where(d => documentIds.Contains(d.Id)).ToDictionaryAsync(d => d.Id, ct);
    }

    // Where accounts are needed the author is who is signed in, whatever the device says; before that, the device's word is all there is. What is sent again after a restoration keeps its author; who
    // sent it stands beside.
    private Operation Stamped(Operation operation) =>
        caller.Account is not { } account ? operation with { Account = null }
        : operation.Again ? operation with { Account = account.Id }
        : operation with { Author = account.UserName!, Account = account.Id };

    // What one person kept is not sent in the name of another.
    private async Task<string?> KeeperFaultAsync(Operation operation, Words words, CancellationToken ct)
    {
        if (operation.Account is not { } keeper || caller.Account is not { } account || keeper == account.Id)
        {
            return null;
        }

        var name = await db.Accounts.Where(a => a.Id == keeper).Select(a => a.UserName).SingleOrDefaultAsync(ct);
        return words.Say("server.operation.other-account", ("name", name ?? operation.Author), ("you", account.UserName!));
    }

    private async Task<OperationResult> ApplyOneAsync(Operation operation, long revision, Words words, bool demo, CancellationToken ct)
    {
        if (OperationCheck.Fault(operation) is { } fault)
        {
            return new OperationResult(operation.Id, "refused", 0, Repeated: false, words.Say(fault));
        }

        // What this list has already added is among the known, so an operation twice in one list is also applied once.
        if (known.TryGetValue(operation.Id, out var had))
        {
            if (had.DocumentId != operation.DocumentId || had.Action != operation.Action || !SameTime(had.StatedAt, operation.At))
            {
                return new OperationResult(operation.Id, "refused", 0, Repeated: false, words["server.operation.id-used"]);
            }

            ShowAgain(had, revision);
            var at = Completes(operation, had, revision) ? revision : had.Revision;
            return new OperationResult(had.Id, had.Outcome, at, Repeated: true, Replaced: had.Replaced);
        }

        var document = documents.GetValueOrDefault(operation.DocumentId);
        if (document is not null && document.Kind != operation.Kind)
        {
            return new OperationResult(operation.Id, "refused", 0, Repeated: false, words["server.operation.other-kind"]);
        }

        var row = new OperationRow
        {
            Id = operation.Id,
            DocumentId = operation.DocumentId,
            Kind = operation.Kind,
            Action = operation.Action,
            Author = operation.Author,
            AccountId = operation.Account,
            Device = operation.Device,
            StatedAt = operation.At,
            ReceivedAt = clock.GetUtcNow(),
            Outcome = "applied",
            Revision = revision,
        };
        db.Operations.Add(row);
        known[row.Id] = row;
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
            documents[document.Id] = document;
        }

        var kitchen = document.KitchenId;
        if (DocumentKinds.Find(operation.Kind)!.OfFields is { } summary)
        {
            Join(operation, row, document, summary);
        }
        else
        {
            await ReplaceAsync(operation, row, document, ct);
        }

        if (kitchen is { } left && document.KitchenId != left)
        {
            await LeaveAsync(document.Id, left, revision, ct);
        }

        document.Versions++;
        document.Revision = revision; // also where another version stands: the device learns that there are more versions now
        return new OperationResult(operation.Id, row.Outcome, revision, Repeated: false, Replaced: row.Replaced);
    }

    // While the answer to its change was on the way the device took over nothing that another had written instead, and has asked past it since: it is told once more.
    private void ShowAgain(OperationRow had, long revision)
    {
        if (
            DocumentKinds.Find(had.Kind)!.OfFields is null
            && documents.GetValueOrDefault(had.DocumentId) is { } document
            && document.OperationId != had.Id
        )
        {
            document.Revision = revision;
        }
    }

    // After a restoration devices send what stands with them: of one operation another device may have more left than the first.
    private bool Completes(Operation operation, OperationRow had, long revision)
    {
        if (
            !operation.Again
            || operation.Fields is not { } fields
            || documents.GetValueOrDefault(operation.DocumentId) is not { } document
            || StoredText.Document(document.Json) is not { } before
            || before.Has(operation)
        )
        {
            return false;
        }

        var written = StoredText.Fields(had.Json) ?? [];
        had.Json = StoredText.Of([.. written, .. fields.Where(f => !written.Any(h => h.Path == f.Path))]);
        document.Json = StoredText.Of(before.With(operation));
        document.Revision = revision;
        return true;
    }

    // Devices of the kitchen that a document leaves are told by the next changes.
    private async Task LeaveAsync(Guid document, Guid kitchen, long revision, CancellationToken ct)
    {
        if (await db.LeftKitchens.FindAsync([document, kitchen], ct) is { } row)
        {
            row.Revision = revision;
        }
        else
        {
            db.LeftKitchens.Add(
                new LeftKitchenRow
                {
                    DocumentId = document,
                    KitchenId = kitchen,
                    Revision = revision,
                }
            );
        }
    }

    // Field by field: what this operation writes beside what stands, whatever came first.
    private static void Join(
        Operation operation,
        OperationRow row,
        DocumentRow document,
        Func<FieldDocument, DateTimeOffset, DocumentSummary> summary
    )
    {
        var before = StoredText.Document(document.Json) ?? FieldDocument.Empty(document.Id, document.Kind);
        var after = before.With(operation);
        row.Json = StoredText.Of(operation.Fields!);
        row.Outcome = operation.Fields!.Any(f => after.Fields[f.Path].Operation == operation.Id) ? "applied" : "superseded";
        foreach (var field in operation.Fields!)
        {
            // Whom this one replaced, or gave way to, without having seen it.
            var other = after.Fields[field.Path].Operation == operation.Id ? after.Fields[field.Path].Other : after.Fields[field.Path];
            row.Replaced ??= other is not null && other.Author != operation.Author ? other.Operation : null;
        }

        document.Json = StoredText.Of(after);
        if (row.Outcome == "applied")
        {
            document.OperationId = operation.Id;
            document.Author = operation.Author;
            document.StatedAt = operation.At;
        }

        var first = after.Fields.Values.Min(f => f.At);
        document.WrittenAt = DateTimeOffset.FromUnixTimeMilliseconds(after.Fields.Values.Max(f => f.Order));
        Show(summary(after, first), document);
    }

    // A whole document by one author: the later writer stands.
    private async Task ReplaceAsync(Operation operation, OperationRow row, DocumentRow document, CancellationToken ct)
    {
        var isNew = document.OperationId == Guid.Empty;
        var writtenAt = operation.At < row.ReceivedAt ? operation.At : row.ReceivedAt; // a device whose clock runs ahead must not win for ever
        var stands = isNew || IsLater(writtenAt, operation.Id, document);
        row.Json = operation.Proof is { } proof ? JsonSerializer.Serialize(proof, ContractsJson.Default.ProofDocument) : null;
        row.Outcome = stands ? "applied" : "superseded";
        row.Replaced = isNew ? null : await OtherWriterAsync(document.OperationId, operation, ct);
        if (stands)
        {
            document.WrittenAt = writtenAt;
            document.OperationId = operation.Id;
            document.Json = row.Json;
            document.Author = operation.Author;
            document.StatedAt = operation.At;
            Show(Summary(operation), document);
        }
    }

    private static DocumentSummary Summary(Operation operation) =>
        operation.Proof is { } p
            ? new(
                p.At,
                p.Kitchen,
                p.Machine,
                p.Technician,
                p.Unjudged is true ? "undetermined" : p.Report.Verdict,
                p.Report.Passes.Count,
                p.KitchenId
            )
            : new(operation.At);

    private static void Show(DocumentSummary summary, DocumentRow document)
    {
        document.MadeAt = summary.MadeAt;
        document.OffsetMinutes = (int)summary.MadeAt.Offset.TotalMinutes;
        document.Kitchen = summary.Kitchen;
        document.Machine = summary.Machine;
        document.Technician = summary.Technician;
        document.Verdict = summary.Verdict;
        document.Passes = summary.Passes;
        document.KitchenId = summary.KitchenId;
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
