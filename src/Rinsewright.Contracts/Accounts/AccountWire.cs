namespace Rinsewright.Contracts.Accounts;

// Plain classes and not records: they stand in the library that the first page fetches, and nothing compares them.

/// <summary>Who asks, and how far the server is set up.</summary>
/// <param name="accounts">Whether there is an account at all; without one whoever is at the server's computer may do everything.</param>
/// <param name="setUp">Whether the first account can be made from here.</param>
/// <param name="account">The account signed in; null for none.</param>
public sealed class WhoAmI(bool accounts, bool setUp, AccountView? account)
{
    /// <summary>Whether there is an account.</summary>
    public bool Accounts { get; init; } = accounts;

    /// <summary>Whether the first one can be made from here.</summary>
    public bool SetUp { get; init; } = setUp;

    /// <summary>The account signed in; null for none.</summary>
    public AccountView? Account { get; init; } = account;
}

/// <summary>An account.</summary>
/// <param name="id">Its id.</param>
/// <param name="name">Name of the person, which stands on what they write.</param>
/// <param name="role">One of <see cref="Roles"/>.</param>
/// <param name="kitchens">Kitchens it sees, where its role is a kitchen's.</param>
/// <param name="disabled">Whether it may sign in no more.</param>
/// <param name="madeAt">When it was made.</param>
/// <param name="seenAt">When it was last seen; null for never.</param>
/// <param name="passkeys">How many passkeys it has.</param>
public sealed class AccountView(
    Guid id,
    string name,
    string role,
    IReadOnlyList<Guid> kitchens,
    bool disabled,
    DateTimeOffset madeAt,
    DateTimeOffset? seenAt = null,
    int passkeys = 0
)
{
    /// <summary>Its id.</summary>
    public Guid Id { get; init; } = id;

    /// <summary>Name of the person.</summary>
    public string Name { get; init; } = name;

    /// <summary>One of <see cref="Roles"/>.</summary>
    public string Role { get; init; } = role;

    /// <summary>Kitchens it sees.</summary>
    public IReadOnlyList<Guid> Kitchens { get; init; } = kitchens;

    /// <summary>Whether it may sign in no more.</summary>
    public bool Disabled { get; init; } = disabled;

    /// <summary>When it was made.</summary>
    public DateTimeOffset MadeAt { get; init; } = madeAt;

    /// <summary>When it was last seen.</summary>
    public DateTimeOffset? SeenAt { get; init; } = seenAt;

    /// <summary>How many passkeys it has.</summary>
    public int Passkeys { get; init; } = passkeys;
}

/// <summary>Name and password, to sign in or to make the first account.</summary>
public sealed class NameAndPassword(string name, string password)
{
    /// <summary>Name; case, accents and spaces are forgiven.</summary>
    public string Name { get; init; } = name;

    /// <summary>Password.</summary>
    public string Password { get; init; } = password;
}

/// <summary>Another password.</summary>
public sealed class PasswordChange(string old, string password)
{
    /// <summary>The one until now.</summary>
    public string Old { get; init; } = old;

    /// <summary>The one from now on.</summary>
    public string Password { get; init; } = password;
}

/// <summary>What the office gives an account.</summary>
public sealed class AccountChange(string role, IReadOnlyList<Guid> kitchens, bool disabled)
{
    /// <summary>One of <see cref="Roles"/>.</summary>
    public string Role { get; init; } = role;

    /// <summary>Kitchens it sees, where its role is a kitchen's.</summary>
    public IReadOnlyList<Guid> Kitchens { get; init; } = kitchens;

    /// <summary>Whether it may sign in no more.</summary>
    public bool Disabled { get; init; } = disabled;
}

/// <summary>A device on which somebody is signed in.</summary>
public sealed class SessionView(Guid id, string device, string address, DateTimeOffset firstSeen, DateTimeOffset lastSeen, bool here)
{
    /// <summary>Its id.</summary>
    public Guid Id { get; init; } = id;

    /// <summary>Browser and system as it names itself.</summary>
    public string Device { get; init; } = device;

    /// <summary>Network address it signed in from.</summary>
    public string Address { get; init; } = address;

    /// <summary>When it signed in.</summary>
    public DateTimeOffset FirstSeen { get; init; } = firstSeen;

    /// <summary>When it last asked for something, to within some minutes.</summary>
    public DateTimeOffset LastSeen { get; init; } = lastSeen;

    /// <summary>Whether it is the one that asks.</summary>
    public bool Here { get; init; } = here;
}

/// <summary>A passkey, without its secret, which never leaves the device it is on.</summary>
public sealed class PasskeyView(string id, string name, DateTimeOffset madeAt)
{
    /// <summary>Its id, base64url.</summary>
    public string Id { get; init; } = id;

    /// <summary>Name the person gave it.</summary>
    public string Name { get; init; } = name;

    /// <summary>When it was added.</summary>
    public DateTimeOffset MadeAt { get; init; } = madeAt;
}

/// <summary>What a passkey answered, as the browser's <c>toJSON</c> writes it.</summary>
public sealed class PasskeyAnswer(string credential, string? name = null)
{
    /// <summary>The credential as JSON text.</summary>
    public string Credential { get; init; } = credential;

    /// <summary>Name for a new one.</summary>
    public string? Name { get; init; } = name;
}

/// <summary>What a passkey is asked, as <c>parseCreationOptionsFromJSON</c> or <c>parseRequestOptionsFromJSON</c> of the browser reads it.</summary>
public sealed class PasskeyQuestion(string options)
{
    /// <summary>The options as JSON text.</summary>
    public string Options { get; init; } = options;
}
