using Microsoft.EntityFrameworkCore;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Accounts;

/// <summary>Whether there is an account. None is ever deleted, so a yes holds; a no is asked again each time, since another process may have made the first.</summary>
public sealed class AccountPresence
{
    private volatile bool any;

    /// <summary>Whether there is one.</summary>
    public async ValueTask<bool> AnyAsync(AppDb db, CancellationToken ct) => any || (any = await db.Accounts.AnyAsync(ct));
}
