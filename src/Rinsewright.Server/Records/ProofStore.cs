using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Rinsewright.Contracts.Records;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Records;

/// <summary>Asks the store for documents.</summary>
public sealed class ProofStore(AppDb db)
{
    /// <summary>Documents handed out at once where changes are asked for.</summary>
    public const int ChangesPerPage = 50;

    /// <summary>Documents changed after a cursor, in the order of their changes.</summary>
    /// <param name="after">Cursor of the last answer; null or empty from the start.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<Changes> ChangesAsync(string? after, CancellationToken ct)
    {
        var store = await db.Store.AsNoTracking().SingleAsync(ct);
        var known = Cursor(after, store, out var restarted);
        var rows = await db
            .Documents.AsNoTracking()
            .Where(d => d.Revision > known)
            .OrderBy(d => d.Revision)
            .Take(ChangesPerPage + 1)
            .ToListAsync(ct);
        var page = rows.Take(ChangesPerPage).ToList();
        return new Changes(
            [.. page.Select(ToChange)],
            $"{store.StoreId:n}-{(page.Count > 0 ? page[^1].Revision : known).ToString(CultureInfo.InvariantCulture)}",
            rows.Count > page.Count,
            restarted
        );
    }

    /// <summary>Proofs, the latest made first.</summary>
    /// <param name="skip">How many to pass over, 0 or more.</param>
    /// <param name="take">How many, 1 to 500.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<ProofSummary>> ListAsync(int skip, int take, CancellationToken ct)
    {
        var rows = await db
            .Documents.AsNoTracking()
            .Where(d => d.Kind == Kinds.Proof && d.Json != null)
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
        StoredText.Proof(
            await db.Documents.AsNoTracking().Where(d => d.Id == id && d.Kind == Kinds.Proof).Select(d => d.Json).SingleOrDefaultAsync(ct)
        );

    /// <summary>Every version of a document, the latest written first; empty where it was never there.</summary>
    public async Task<IReadOnlyList<DocumentVersion>> HistoryAsync(Guid id, CancellationToken ct)
    {
        var current = await db.Documents.AsNoTracking().SingleOrDefaultAsync(d => d.Id == id, ct);
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

    /// <summary>A cursor is the store's id and a number. One of another store, or a number this store has not reached, starts again.</summary>
    private static long Cursor(string? after, StoreRow store, out bool restarted)
    {
        restarted = false;
        if (string.IsNullOrEmpty(after))
        {
            return 0;
        }

        var parts = after.Split('-');
        if (
            parts is [var id, var number]
            && id == store.StoreId.ToString("n")
            && long.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var revision)
            && revision <= store.Revision
        )
        {
            return revision;
        }

        restarted = true;
        return 0;
    }

    private static Change ToChange(DocumentRow row)
    {
        var proof = row.Kind == Kinds.Proof ? StoredText.Proof(row.Json) : null;
        var document = row.Kind == Kinds.Proof ? null : StoredText.Document(row.Json);
        var action = row.Json is null ? "delete" : "put";
        return new Change(row.Id, row.Kind, action, row.StatedAt, row.Author, row.Demo, row.Versions, proof, document);
    }
}
