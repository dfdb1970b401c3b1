using Microsoft.EntityFrameworkCore;
using Rinsewright.Contracts.Records;
using Rinsewright.Server.Accounts;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Records;

/// <summary>Asks the store for documents.</summary>
public sealed class ProofStore(AppDb db, Caller caller)
{
    /// <summary>Proofs, the latest made first.</summary>
    /// <param name="skip">How many to pass over, 0 or more.</param>
    /// <param name="take">How many, 1 to 500.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<ProofSummary>> ListAsync(int skip, int take, CancellationToken ct)
    {
        var rows = await Seen.Where(d => d.Kind == Kinds.Proof && d.Json != null)
            .OrderByDescending(d => d.MadeAt)
            .ThenBy(d => d.Id)
            .Skip(skip)
            .Take(take)
            .Select(d => new
            {
                d.Id,
                d.Kitchen,
                d.Machine,
                d.Technician,
                d.MadeAt,
                d.OffsetMinutes,
                d.Verdict,
                d.Passes,
                d.Demo,
                d.Versions,
            })
            .ToListAsync(ct);
        return
        [
            .. rows.Select(d => new ProofSummary(
                d.Id,
                d.Kitchen,
                d.Machine,
                d.Technician,
                d.MadeAt.ToOffset(TimeSpan.FromMinutes(d.OffsetMinutes)),
                d.Verdict,
                d.Passes,
                d.Demo,
                d.Versions
            )),
        ];
    }

    /// <summary>A proof as it now stands; null where there is none or it is deleted.</summary>
    public async Task<ProofDocument?> FindAsync(Guid id, CancellationToken ct) =>
        StoredText.Proof(await Seen.Where(d => d.Id == id && d.Kind == Kinds.Proof).Select(d => d.Json).SingleOrDefaultAsync(ct));

    /// <summary>Whether a file may be given out: everybody of the service may have any; a kitchen's account those that a document of its kitchens names.</summary>
    public async Task<bool> MayHaveAsync(string sha256, CancellationToken ct)
    {
        if (caller.OnlyKitchens is null)
        {
            return true;
        }

        // The text only finds candidates; what counts is that the document names the file as its own, not that somebody wrote its number into a note.
        var candidates = await Seen.Where(d => d.Json != null && d.Json.Contains(sha256))
            .Select(d => new { d.Kind, d.Json })
            .ToListAsync(ct);
        return candidates.Exists(d => NamedFiles.Of(d.Kind, d.Json!).Contains(sha256));
    }

    /// <summary>Every version of a document, the latest written first; empty where it was never there.</summary>
    public async Task<IReadOnlyList<DocumentVersion>> HistoryAsync(Guid id, CancellationToken ct)
    {
        var current = await Seen.SingleOrDefaultAsync(d => d.Id == id, ct);
        if (current is null)
        {
            return [];
        }

        var fields = current.Kind == Kinds.Proof ? null : current.Json;
        var rows = await db
            .Operations.AsNoTracking()
            .Where(o => o.DocumentId == id)
            .OrderByDescending(o => o.StatedAt)
            .ThenByDescending(o => o.Revision)
            .ToListAsync(ct);
        var document = fields is null ? null : StoredText.Document(fields);
        return
        [
            .. rows.Select(o =>
            {
                var written = o.Kind == Kinds.Proof ? null : StoredText.Fields(o.Json);
                return new DocumentVersion(
                    o.Id,
                    o.Action,
                    o.StatedAt,
                    o.ReceivedAt,
                    o.Author,
                    o.Device,
                    written is null ? o.Id == current.OperationId : written.Any(f => document?.Fields[f.Path].Operation == o.Id),
                    o.Kind == Kinds.Proof ? StoredText.Proof(o.Json) : null,
                    written
                );
            }),
        ];
    }

    // What this caller may see.
    private IQueryable<DocumentRow> Seen =>
        caller.OnlyKitchens is { } kitchens
            ? db.Documents.AsNoTracking().Where(d => d.KitchenId != null && kitchens.Contains(d.KitchenId.Value))
            : db.Documents.AsNoTracking();
}
