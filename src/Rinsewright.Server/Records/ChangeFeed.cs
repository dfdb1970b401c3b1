using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Rinsewright.Contracts.Records;
using Rinsewright.Server.Accounts;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Records;

/// <summary>Hands out changes by cursor. A kitchen's account gets the documents of its kitchens, and of what left them no more than that it is gone.</summary>
public sealed class ChangeFeed(AppDb db, Caller caller, LostFiles lost)
{
    /// <summary>Documents handed out at once.</summary>
    public const int ChangesPerPage = 50;

    /// <summary>Documents changed after a cursor, in the order of their changes.</summary>
    /// <param name="after">Cursor of the last answer; null or empty from the start.</param>
    /// <param name="seen">Places of what the device sent since the office last knew them all, apart by spaces; null or empty for none.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<Changes> ChangesAsync(string? after, string? seen, CancellationToken ct)
    {
        var store = await db.Store.AsNoTracking().SingleAsync(ct);
        var scope = ScopeOf(caller.OnlyKitchens);
        var (known, restarted) = await KnownAsync(after, seen, store, scope, ct);
        var documents = db.Documents.AsNoTracking().Where(d => d.Revision > known);
        List<(long Revision, Change Change)> changes;
        if (caller.OnlyKitchens is { } kitchens)
        {
            var rows = await documents
                .Where(d => d.KitchenId != null && kitchens.Contains(d.KitchenId.Value))
                .OrderBy(d => d.Revision)
                .Take(ChangesPerPage + 1)
                .ToListAsync(ct);
            changes = [.. rows.Select(d => (d.Revision, ToChange(d))), .. await LeftAsync(kitchens, known, ct)];
            changes.Sort((a, b) => a.Revision.CompareTo(b.Revision));
        }
        else
        {
            changes =
            [
                .. (await documents.OrderBy(d => d.Revision).Take(ChangesPerPage + 1).ToListAsync(ct)).Select(d =>
                    (d.Revision, ToChange(d))
                ),
            ];
        }

        var page = changes.Take(ChangesPerPage).ToList();
        var last = page.Count > 0 ? page[^1].Revision : known;
        return new Changes(
            [.. page.Select(c => c.Change)],
            await ChangeCursor.AfterAsync(db, store, last, ct) + (scope.Length > 0 ? "-" + scope : ""),
            changes.Count > page.Count,
            restarted,
            scope.Length > 0 ? null : lost.Wanted() // a kitchen's account sends nothing
        );
    }

    // What belonged to one of the kitchens and belongs to none of them now: its id, which the device has, and nothing that was written since.
    private async Task<IEnumerable<(long Revision, Change Change)>> LeftAsync(
        IReadOnlyList<Guid> kitchens,
        long known,
        CancellationToken ct
    )
    {
        var left = await db
            .LeftKitchens.AsNoTracking()
            .Where(l => kitchens.Contains(l.KitchenId) && l.Revision > known)
            .Join(
                db.Documents,
                l => l.DocumentId,
                d => d.Id,
                (l, d) =>
                    new
                    {
                        Left = l,
                        d.Kind,
                        d.KitchenId,
                        d.Demo,
                    }
            )
            .Where(l => l.KitchenId == null || !kitchens.Contains(l.KitchenId.Value))
            .OrderBy(l => l.Left.Revision)
            .Take(ChangesPerPage + 1)
            .ToListAsync(ct);
        return left.Select(l =>
            (l.Left.Revision, new Change(l.Left.DocumentId, l.Kind, "delete", DateTimeOffset.UnixEpoch, "", l.Demo, 0, null))
        );
    }

    /// <summary>
    /// A cursor is a place (<see cref="ChangeCursor"/>); of a kitchen's account, which sends nothing, with what the kitchens were behind it. One of another store, of other
    /// kitchens, or of what this store does not have, starts again.
    /// </summary>
    private async Task<(long Known, bool Restarted)> KnownAsync(
        string? after,
        string? seen,
        StoreRow store,
        string scope,
        CancellationToken ct
    )
    {
        if (scope.Length > 0)
        {
            return string.IsNullOrEmpty(after) ? (0, false)
                : after.EndsWith("-" + scope, StringComparison.Ordinal)
                    ? await ChangeCursor.ReadAsync(db, store, after[..^(scope.Length + 1)], ct)
                : (0, true);
        }

        foreach (var place in (seen ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if ((await ChangeCursor.ReadAsync(db, store, place, ct)).Restarted)
            {
                return (0, true);
            }
        }

        return await ChangeCursor.ReadAsync(db, store, after, ct);
    }

    private static string ScopeOf(IReadOnlyList<Guid>? kitchens) =>
        kitchens is null ? "" : Convert.ToHexStringLower(SHA256.HashData([.. kitchens.Order().SelectMany(k => k.ToByteArray())]))[..16];

    private static Change ToChange(DocumentRow row)
    {
        var proof = row.Kind == Kinds.Proof ? StoredText.Proof(row.Json) : null;
        var document = row.Kind == Kinds.Proof ? null : StoredText.Document(row.Json);
        var action = row.Json is null ? "delete" : "put";
        return new Change(row.Id, row.Kind, action, row.StatedAt, row.Author, row.Demo, row.Versions, proof, document);
    }
}
