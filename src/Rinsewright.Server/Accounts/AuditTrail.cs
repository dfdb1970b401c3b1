using System.Globalization;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Accounts;

/// <summary>Who did what, when, from where. A line is kept in the same transaction as what it tells of.</summary>
public sealed class AuditTrail(AppDb db, Caller caller, TimeProvider clock, IHttpContextAccessor http)
{
    /// <summary>Most lines at once.</summary>
    public const int MostAtOnce = 200;

    /// <summary>Most lines in a table.</summary>
    public const int MostInTable = 50_000;

    /// <summary>Adds a line; whoever calls saves it with the rest.</summary>
    /// <param name="what">One of <see cref="AuditActs"/>.</param>
    /// <param name="about">Whom or what it is about.</param>
    /// <param name="by">Account that did it; null for the caller.</param>
    public void Add(string what, string about = "", Account? by = null)
    {
        var account = by ?? caller.Account;
        db.Audit.Add(
            new AuditRow
            {
                Id = Guid.CreateVersion7(),
                At = clock.GetUtcNow(),
                What = what,
                AccountId = account?.Id,
                Who = account?.UserName ?? "",
                About = about.Length <= TextLimits.Name ? about : about[..TextLimits.Name],
                Address = http.HttpContext is { } context ? Origin.AddressOf(context) : "",
                Device = http.HttpContext is { } c ? Origin.DeviceOf(c) : "",
            }
        );
    }

    /// <summary>A page of lines, the latest first.</summary>
    /// <param name="wanted">What is wanted.</param>
    /// <param name="most">How many at most.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<AuditPage> ReadAsync(AuditWish wanted, int most, CancellationToken ct)
    {
        var lines = db.Audit.AsNoTracking();
        lines = wanted.What is { Length: > 0 } what ? lines.Where(a => a.What == what) : lines;
        lines = wanted.Account is { } account ? lines.Where(a => a.AccountId == account) : lines;
        lines = wanted.From is { } from ? lines.Where(a => a.At >= from) : lines;
        lines = wanted.To is { } to ? lines.Where(a => a.At < to) : lines;
        var rows = await lines
            .OrderByDescending(a => a.At)
            .ThenByDescending(a => a.Id)
            .Skip(Math.Max(0, wanted.Skip))
            .Take(most + 1)
            .ToListAsync(ct);
        return new AuditPage(
            [.. rows.Take(most).Select(a => new AuditEntry(a.Id, a.At, a.What, a.Who, a.About, a.Address, a.Device))],
            rows.Count > most
        );
    }

    /// <summary>Lines as a table in UTF-8 for a spreadsheet. A cell that a spreadsheet would take for a formula gets an apostrophe in front.</summary>
    public static byte[] Table(IEnumerable<AuditEntry> lines)
    {
        var text = new StringBuilder("\ufefftime,what,who,about,address,device\r\n");
        foreach (var line in lines)
        {
            text.AppendJoin(
                    ',',
                    new[]
                    {
                        line.At.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture),
                        line.What,
                        line.Who,
                        line.About,
                        line.Address,
                        line.Device,
                    }.Select(Cell)
                )
                .Append("\r\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static string Cell(string text)
    {
        var safe = text.Length > 0 && "=+-@\t\r".Contains(text[0], StringComparison.Ordinal) ? "'" + text : text;
        return safe.AsSpan().IndexOfAny(",\"\r\n") >= 0 ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : safe;
    }
}

/// <summary>Which lines of the audit trail are wanted.</summary>
/// <param name="What">One of <see cref="AuditActs"/>; null for all.</param>
/// <param name="Account">Who did it; null for all.</param>
/// <param name="From">Not before; null for all.</param>
/// <param name="To">Before; null for all.</param>
/// <param name="Skip">How many to pass over.</param>
public sealed record AuditWish(string? What, Guid? Account, DateTimeOffset? From, DateTimeOffset? To, int Skip = 0);
