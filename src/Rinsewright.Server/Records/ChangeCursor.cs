using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Records;

/// <summary>
/// A place in the list of changes: the store, the number of a change, and the tag of the list it came with. A store put back to an older copy gives numbers a second time, even to the same
/// changes sent again; by the tag the place is known for one of before.
/// </summary>
internal static class ChangeCursor
{
    /// <summary>The place after a change, as text.</summary>
    public static async Task<string> AfterAsync(AppDb db, StoreRow store, long number, CancellationToken ct)
    {
        var place = $"{store.StoreId:n}-{number.ToString(CultureInfo.InvariantCulture)}";
        return await TagAsync(db, number, ct) is { } tag ? $"{place}-{tag:n}" : place;
    }

    /// <summary>The number a place stands for. One of another store, of a number this store has not reached, or of a list it does not have there starts again.</summary>
    public static async Task<(long Number, bool Restarted)> ReadAsync(AppDb db, StoreRow store, string? text, CancellationToken ct)
    {
        if (string.IsNullOrEmpty(text))
        {
            return (0, false);
        }

        // Places given before tags stood in them have two parts.
        var parts = text.Split('-');
        return
            parts is [var id, var written, .. var rest]
            && id == store.StoreId.ToString("n")
            && long.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && number <= store.Revision
            && (rest is [] || (rest is [var tag] && Guid.TryParseExact(tag, "n", out var had) && await TagAsync(db, number, ct) == had))
            ? (number, false)
            : (0, true);
    }

    /// <summary>The tag of the list a number came with. Of what came before there were any, the operation's id.</summary>
    public static async Task<Guid?> TagAsync(AppDb db, long number, CancellationToken ct)
    {
        var turn = await db.Turns.AsNoTracking().Where(t => t.Number >= number).OrderBy(t => t.Number).FirstOrDefaultAsync(ct);
        return turn?.Tag != TurnRow.BeforeTags
            ? turn?.Tag
            : await db.Operations.Where(o => o.Revision == number).Select(o => (Guid?)o.Id).FirstOrDefaultAsync(ct);
    }
}
