using Rinsewright.Contracts.Accounts;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Accounts;

/// <summary>Who makes this request. Filled by the session's check before anything else looks; empty where nobody is signed in.</summary>
public sealed class Caller
{
    /// <summary>The account; null for none.</summary>
    public Account? Account { get; private set; }

    /// <summary>The session; null for none.</summary>
    public SessionRow? Session { get; private set; }

    /// <summary>Kitchens whose documents alone may be seen; null where all may.</summary>
    public IReadOnlyList<Guid>? OnlyKitchens =>
        Account?.Role switch
        {
            null or Roles.Office or Roles.Technician => null,
            _ => [.. Account.Kitchens.Select(k => k.KitchenId).Order()], // also for a role this version does not know: the least it could be
        };

    /// <summary>Says who it is.</summary>
    public void Is(Account account, SessionRow session) => (Account, Session) = (account, session);
}

/// <summary>Where a request comes from, for the audit trail and for counting.</summary>
public static class Origin
{
    private const string ForwardedFor = "X-Forwarded-For";

    /// <summary>Network address. Of a proxy on this computer, the address that it names last; its other entries are the caller's own word.</summary>
    public static string AddressOf(HttpContext context)
    {
        var remote = context.Connection.RemoteIpAddress;
        if (remote is null || System.Net.IPAddress.IsLoopback(remote))
        {
            var named = context.Request.Headers[ForwardedFor].ToString().Split(',')[^1].Trim();
            if (System.Net.IPAddress.TryParse(named, out var address))
            {
                return address.ToString();
            }
        }

        return remote?.ToString() ?? "";
    }

    /// <summary>Whether the request was made on this computer itself and not passed on by a proxy: by name, and by what proxies add.</summary>
    public static bool IsDirectlyHere(HttpContext context)
    {
        var remote = context.Connection.RemoteIpAddress;
        var host = context.Request.Host.Host;
        return (remote is null || System.Net.IPAddress.IsLoopback(remote))
            && !context.Request.Headers.ContainsKey(ForwardedFor)
            && !context.Request.Headers.ContainsKey("Forwarded")
            && !context.Request.Headers.ContainsKey("X-Real-IP")
            && (
                string.Equals(host, "localhost", StringComparison.OrdinalIgnoreCase)
                || (System.Net.IPAddress.TryParse(host.Trim('[', ']'), out var ip) && System.Net.IPAddress.IsLoopback(ip))
            );
    }

    /// <summary>Browser and system as it names itself, shortened.</summary>
    public static string DeviceOf(HttpContext context)
    {
        var text = string.Concat(context.Request.Headers.UserAgent.ToString().Where(c => !char.IsControl(c)));
        return text.Length <= TextLimits.Name ? text : text[..TextLimits.Name];
    }
}
