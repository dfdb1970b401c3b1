using Rinsewright.Contracts.Accounts;

namespace Rinsewright.Server.Accounts;

/// <summary>The way back in for whoever runs the server and has lost every password: a start with the setting <c>Rinsewright:InviteOffice</c> makes an invitation for an account of the office.</summary>
public static class OfficeLink
{
    /// <summary>How long it holds.</summary>
    public static readonly TimeSpan Holds = TimeSpan.FromHours(1);

    /// <summary>Makes the invitation and gives its secret.</summary>
    public static async Task<string> MakeAsync(IServiceProvider services, CancellationToken ct)
    {
        await using var scope = services.CreateAsyncScope();
        var invitations = scope.ServiceProvider.GetRequiredService<Invitations>();
        return (await invitations.MakeAsync(Roles.Office, [], "", Holds, null, ct)).Token;
    }

    /// <summary>The link at an address. The secret stands behind the number sign, which no server and no proxy gets to see.</summary>
    public static string At(string address, string token) => $"{address.TrimEnd('/')}/accept#{token}";
}
