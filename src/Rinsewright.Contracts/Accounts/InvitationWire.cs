namespace Rinsewright.Contracts.Accounts;

/// <summary>Whom the office invites.</summary>
/// <param name="role">One of <see cref="Roles"/>.</param>
/// <param name="kitchens">Kitchens the account will see, where the role is a kitchen's; at least one then.</param>
/// <param name="name">For whom it is, as a note; the person may write the name otherwise.</param>
/// <param name="hours">How long it holds, hours, 1 to 720.</param>
public sealed class InvitationWish(string role, IReadOnlyList<Guid> kitchens, string name, int hours)
{
    /// <summary>Longest time an invitation holds, hours.</summary>
    public const int MostHours = 720;

    /// <summary>One of <see cref="Roles"/>.</summary>
    public string Role { get; init; } = role;

    /// <summary>Kitchens the account will see.</summary>
    public IReadOnlyList<Guid> Kitchens { get; init; } = kitchens;

    /// <summary>For whom it is.</summary>
    public string Name { get; init; } = name;

    /// <summary>How long it holds, hours.</summary>
    public int Hours { get; init; } = hours;
}

/// <summary>An invitation as the office sees it.</summary>
public sealed class InvitationView(
    Guid id,
    string role,
    IReadOnlyList<Guid> kitchens,
    string name,
    string madeBy,
    DateTimeOffset madeAt,
    DateTimeOffset expiresAt,
    string state,
    bool renews
)
{
    /// <summary>Its id.</summary>
    public Guid Id { get; init; } = id;

    /// <summary>One of <see cref="Roles"/>.</summary>
    public string Role { get; init; } = role;

    /// <summary>Kitchens the account will see.</summary>
    public IReadOnlyList<Guid> Kitchens { get; init; } = kitchens;

    /// <summary>For whom it is; the name of the account where it gives a new password.</summary>
    public string Name { get; init; } = name;

    /// <summary>Who made it; empty for the server itself.</summary>
    public string MadeBy { get; init; } = madeBy;

    /// <summary>When it was made.</summary>
    public DateTimeOffset MadeAt { get; init; } = madeAt;

    /// <summary>Until when it holds.</summary>
    public DateTimeOffset ExpiresAt { get; init; } = expiresAt;

    /// <summary><c>open</c>, <c>accepted</c>, <c>revoked</c> or <c>expired</c>.</summary>
    public string State { get; init; } = state;

    /// <summary>Whether it gives an account that is there a new password.</summary>
    public bool Renews { get; init; } = renews;
}

/// <summary>A new invitation with its secret, which is never told again.</summary>
public sealed class InvitationMade(InvitationView invitation, string token)
{
    /// <summary>The invitation.</summary>
    public InvitationView Invitation { get; init; } = invitation;

    /// <summary>Its secret; the link is <c>accept#token</c>.</summary>
    public string Token { get; init; } = token;
}

/// <summary>The secret of an invitation.</summary>
public sealed class InvitationToken(string token)
{
    /// <summary>The secret.</summary>
    public string Token { get; init; } = token;
}

/// <summary>What whoever has the link is told of it.</summary>
public sealed class Invited(string role, IReadOnlyList<string> kitchens, string name, string madeBy, DateTimeOffset expiresAt, bool renews)
{
    /// <summary>One of <see cref="Roles"/>.</summary>
    public string Role { get; init; } = role;

    /// <summary>Names of the kitchens the account will see.</summary>
    public IReadOnlyList<string> Kitchens { get; init; } = kitchens;

    /// <summary>For whom it is.</summary>
    public string Name { get; init; } = name;

    /// <summary>Who made it; empty for the server itself.</summary>
    public string MadeBy { get; init; } = madeBy;

    /// <summary>Until when it holds.</summary>
    public DateTimeOffset ExpiresAt { get; init; } = expiresAt;

    /// <summary>Whether it gives an account that is there a new password; its name stays then.</summary>
    public bool Renews { get; init; } = renews;
}

/// <summary>An invitation taken.</summary>
public sealed class Acceptance(string token, string name, string password)
{
    /// <summary>The secret of the link.</summary>
    public string Token { get; init; } = token;

    /// <summary>Name of the person.</summary>
    public string Name { get; init; } = name;

    /// <summary>Password chosen.</summary>
    public string Password { get; init; } = password;
}

/// <summary>One line of the audit trail: who did what, when, from where.</summary>
public sealed class AuditEntry(Guid id, DateTimeOffset at, string what, string who, string about, string address, string device)
{
    /// <summary>Its id.</summary>
    public Guid Id { get; init; } = id;

    /// <summary>When, by the server's clock.</summary>
    public DateTimeOffset At { get; init; } = at;

    /// <summary>One of <see cref="AuditActs"/>.</summary>
    public string What { get; init; } = what;

    /// <summary>Name of the account; empty where nobody was signed in.</summary>
    public string Who { get; init; } = who;

    /// <summary>Whom or what it was about.</summary>
    public string About { get; init; } = about;

    /// <summary>Network address.</summary>
    public string Address { get; init; } = address;

    /// <summary>Browser and system as it names itself.</summary>
    public string Device { get; init; } = device;
}

/// <summary>A page of the audit trail, the latest first.</summary>
public sealed class AuditPage(IReadOnlyList<AuditEntry> items, bool more)
{
    /// <summary>Lines.</summary>
    public IReadOnlyList<AuditEntry> Items { get; init; } = items;

    /// <summary>Whether there are earlier ones.</summary>
    public bool More { get; init; } = more;
}

/// <summary>What the audit trail knows; their words are <c>account.audit.…</c>.</summary>
public static class AuditActs
{
#pragma warning disable CS1591 // each says itself
    public const string SetUp = "set-up";
    public const string SignIn = "sign-in";
    public const string SignInPasskey = "sign-in-passkey";
    public const string SignInFailed = "sign-in-failed";
    public const string SignOut = "sign-out";
    public const string PasswordChanged = "password-changed";
    public const string PasskeyAdded = "passkey-added";
    public const string PasskeyRemoved = "passkey-removed";
    public const string InvitationMade = "invitation-made";
    public const string InvitationRevoked = "invitation-revoked";
    public const string InvitationAccepted = "invitation-accepted";
    public const string PasswordLink = "password-link";
    public const string PasswordRenewed = "password-renewed";
    public const string RoleChanged = "role-changed";
    public const string Disabled = "disabled";
    public const string Enabled = "enabled";
    public const string SessionRevoked = "session-revoked";
    public const string SessionsRevoked = "sessions-revoked";
    public const string DemoRemoved = "demo-removed";
#pragma warning restore CS1591

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        SetUp,
        SignIn,
        SignInPasskey,
        SignInFailed,
        SignOut,
        PasswordChanged,
        PasskeyAdded,
        PasskeyRemoved,
        InvitationMade,
        InvitationRevoked,
        InvitationAccepted,
        PasswordLink,
        PasswordRenewed,
        RoleChanged,
        Disabled,
        Enabled,
        SessionRevoked,
        SessionsRevoked,
        DemoRemoved,
    ];
}
