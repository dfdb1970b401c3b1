using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Records;

/// <summary>
/// A place in the list of changes: the store, the number of a change, and the operation that had it. A store put back to an older copy gives numbers a second time; by the operation the
/// place is known for one of before.
/// </summary>
internal static class ChangeCursor
{
    /// <summary>The place after a change, as text.</summary>
    public static async Task<string> AfterAsync(AppDb db, StoreRow store, long number, CancellationToken ct)
    {
        var place = $"{store.StoreId:n}-{number.ToString(CultureInfo.InvariantCulture)}";
        return await OperationAsync(db, number, ct) is { } operation ? $"{place}-{operation:n}" : place;
    }

    /// <summary>The number a place stands for. One of another store, of a number this store has not reached, or of an operation it does not have there starts again.</summary>
    public static async Task<(long Number, bool Restarted)> ReadAsync(AppDb db, StoreRow store, string? text, CancellationToken ct)
    {
        if (string.IsNullOrEmpty(text))
        {
            return (0, false);
        }

        // Places given before operations stood in them have two parts.
        var parts = text.Split('-');
        return
            parts is [var id, var written, .. var rest]
            && id == store.StoreId.ToString("n")
            && long.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && number <= store.Revision
            && (
                rest is []
                || (
                    rest is [var operation]
                    && Guid.TryParseExact(operation, "n", out var had)
                    && await OperationAsync(db, number, ct) == had
                )
            )
            ? (number, false)
            : (0, true);
    }

    private static async Task<Guid?> OperationAsync(AppDb db, long number, CancellationToken ct) =>
        await db.Operations.Where(o => o.Revision == number).Select(o => (Guid?)o.Id).FirstOrDefaultAsync(ct);
}
