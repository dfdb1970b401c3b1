namespace Rinsewright.Contracts.Accounts;

/// <summary>What a person may do. The words stand in GLOSSARY.md.</summary>
public static class Roles
{
    /// <summary>The service office: everything, and the accounts.</summary>
    public const string Office = "office";

    /// <summary>A technician: reads and writes every document of the service.</summary>
    public const string Technician = "technician";

    /// <summary>A kitchen's supervisor: reads the documents of the kitchens the account names, and writes nothing.</summary>
    public const string Kitchen = "kitchen";

    /// <summary>All three.</summary>
    public static IReadOnlyList<string> All { get; } = [Office, Technician, Kitchen];
}

/// <summary>What a password must be, the same on the screen and on the server.</summary>
public static class PasswordRule
{
    /// <summary>Fewest characters.</summary>
    public const int Shortest = 12;

    /// <summary>Most characters.</summary>
    public const int Longest = 200;

    /// <summary>Fewest different characters among them.</summary>
    public const int Different = 5;

    /// <summary>Longest name of a person, characters.</summary>
    public const int LongestName = 80;

    /// <summary>Word key of what is wrong with a password; null where it can be used.</summary>
    /// <param name="password">As typed.</param>
    /// <param name="name">Name of the account, which must not be it.</param>
    public static string? Fault(string password, string name) =>
        password.Length < Shortest ? "account.password.short"
        : password.Length > Longest ? "account.password.long"
        : password.Distinct().Count() < Different ? "account.password.same"
        : string.Equals(password, name, StringComparison.OrdinalIgnoreCase) ? "account.password.name"
        : null;

    /// <summary>Word key of what is wrong with a name; null where it can be used.</summary>
    public static string? NameFault(string name) =>
        Records.Forgiving.Fold(name).Length < 2 ? "account.name.short"
        : name.Length > LongestName || name.Any(char.IsControl) ? "account.name.long"
        : null;
}
