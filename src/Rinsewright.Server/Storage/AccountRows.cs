using Microsoft.AspNetCore.Identity;

namespace Rinsewright.Server.Storage;

/// <summary>A person's account. It is never deleted, since what was written names it; it can be disabled.</summary>
public sealed class Account : IdentityUser<Guid>
{
    /// <summary>One of <see cref="Contracts.Accounts.Roles"/>.</summary>
    public required string Role { get; set; }

    /// <summary>Whether it may sign in no more.</summary>
    public bool Disabled { get; set; }

    /// <summary>When it was made.</summary>
    public DateTimeOffset MadeAt { get; set; }

    /// <summary>Kitchens it sees, where its role is a kitchen's.</summary>
    public List<AccountKitchenRow> Kitchens { get; } = [];
}

/// <summary>A kitchen that an account sees.</summary>
public sealed class AccountKitchenRow
{
    /// <summary>Account.</summary>
    public Guid AccountId { get; set; }

    /// <summary>Kitchen.</summary>
    public Guid KitchenId { get; set; }
}

/// <summary>A device on which an account is signed in.</summary>
public sealed class SessionRow
{
    /// <summary>Id, which the cookie carries.</summary>
    public Guid Id { get; set; }

    /// <summary>Account.</summary>
    public Guid AccountId { get; set; }

    /// <summary>Browser and system as it names itself.</summary>
    public required string Device { get; set; }

    /// <summary>Network address it signed in from.</summary>
    public required string Address { get; set; }

    /// <summary>When it signed in.</summary>
    public DateTimeOffset FirstSeen { get; set; }

    /// <summary>When it last asked for something; written at most every few minutes.</summary>
    public DateTimeOffset LastSeen { get; set; }

    /// <summary>When it was ended; null while it holds.</summary>
    public DateTimeOffset? EndedAt { get; set; }
}

/// <summary>An invitation. Of its secret only the hash is kept.</summary>
public sealed class InvitationRow
{
    /// <summary>Its id.</summary>
    public Guid Id { get; set; }

    /// <summary>SHA-256 of the secret, lower-case hex.</summary>
    public required string TokenHash { get; set; }

    /// <summary>Role the account will have.</summary>
    public required string Role { get; set; }

    /// <summary>Ids of kitchens, with a space between them.</summary>
    public string Kitchens { get; set; } = "";

    /// <summary>For whom it is.</summary>
    public string Name { get; set; } = "";

    /// <summary>The account that gets a new password; null where a new account is made.</summary>
    public Guid? RenewsId { get; set; }

    /// <summary>Who made it; empty for the server itself.</summary>
    public string MadeBy { get; set; } = "";

    /// <summary>When it was made.</summary>
    public DateTimeOffset MadeAt { get; set; }

    /// <summary>Until when it holds.</summary>
    public DateTimeOffset ExpiresAt { get; set; }

    /// <summary>When it was taken.</summary>
    public DateTimeOffset? AcceptedAt { get; set; }

    /// <summary>When it was taken back.</summary>
    public DateTimeOffset? RevokedAt { get; set; }
}

/// <summary>One line of the audit trail. Written once, never changed.</summary>
public sealed class AuditRow
{
    /// <summary>UUID version 7, which rises with time.</summary>
    public Guid Id { get; set; }

    /// <summary>When.</summary>
    public DateTimeOffset At { get; set; }

    /// <summary>One of <see cref="Contracts.Accounts.AuditActs"/>.</summary>
    public required string What { get; set; }

    /// <summary>Account that did it; null where nobody was signed in.</summary>
    public Guid? AccountId { get; set; }

    /// <summary>Its name then.</summary>
    public string Who { get; set; } = "";

    /// <summary>Whom or what it was about.</summary>
    public string About { get; set; } = "";

    /// <summary>Network address.</summary>
    public string Address { get; set; } = "";

    /// <summary>Browser and system as it names itself.</summary>
    public string Device { get; set; } = "";
}

/// <summary>A kitchen that a document belonged to and has left: its devices are told to drop it.</summary>
public sealed class LeftKitchenRow
{
    /// <summary>Document.</summary>
    public Guid DocumentId { get; set; }

    /// <summary>The kitchen it left.</summary>
    public Guid KitchenId { get; set; }

    /// <summary>Number of the change by which it left last.</summary>
    public long Revision { get; set; }
}
