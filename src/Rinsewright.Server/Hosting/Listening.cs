using System.Net;
using Microsoft.AspNetCore.Http;

namespace Rinsewright.Server.Hosting;

/// <summary>Which addresses the server listens on, and whether another computer could reach them.</summary>
public static class Listening
{
    /// <summary>Every address the configuration asks for: <c>urls</c>, <c>http_ports</c>, <c>https_ports</c> and Kestrel's endpoints.</summary>
    public static IReadOnlyList<string> Asked(IConfiguration configuration)
    {
        var asked = new List<string>(Parts(configuration["urls"]));
        if (asked.Count == 0)
        {
            asked.AddRange(Parts(configuration["http_ports"]).Select(p => "http://*:" + p));
            asked.AddRange(Parts(configuration["https_ports"]).Select(p => "https://*:" + p));
        }

        asked.AddRange(configuration.GetSection("Kestrel:Endpoints").GetChildren().Select(e => e["Url"]).OfType<string>());
        return asked;
    }

    /// <summary>Whether only this computer can reach the address: a loopback address, the name localhost, or a Unix socket.</summary>
    public static bool IsLocal(string address)
    {
        BindingAddress parsed;
        try
        {
            parsed = BindingAddress.Parse(address);
        }
        catch (FormatException)
        {
            return false;
        }

        return parsed.IsUnixPipe
            || string.Equals(parsed.Host, "localhost", StringComparison.OrdinalIgnoreCase)
            || (IPAddress.TryParse(parsed.Host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip));
    }

    /// <summary>Refuses an open address: whoever could reach it could read and change everything, since nobody signs in yet.</summary>
    /// <exception cref="StartRefusedException">An address is open and that is not allowed by the setting.</exception>
    public static void RefuseOpen(IEnumerable<string> addresses, ServerSettings settings)
    {
        if (!settings.AllowOpenNetwork && addresses.FirstOrDefault(a => !IsLocal(a)) is { } open)
        {
            throw new StartRefusedException("server.start.open-network", null, ("address", open), ("default", ServerSettings.DefaultUrl));
        }
    }

    private static string[] Parts(string? list) =>
        list?.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries) ?? [];
}
