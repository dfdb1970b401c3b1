using Rinsewright.Contracts.Language;

namespace Rinsewright.Server.Hosting;

/// <summary>The settings of the section <c>Rinsewright</c> (command line <c>--Rinsewright:Data=…</c>, environment <c>Rinsewright__Data=…</c>, appsettings.json).</summary>
/// <param name="DataFolder">Where the SQLite file and, unless set apart, original files lie.</param>
/// <param name="FilesFolder">Where original files lie; shared between server processes of a team.</param>
/// <param name="PostgresConnection">PostgreSQL connection string; null for the SQLite file.</param>
/// <param name="AllowOpenNetwork">Whether other computers may reach the server itself; while there is no account they may do everything then.</param>
/// <param name="Demo">Whether the demo service is put into a new store.</param>
/// <param name="Language">Language of what the server prints when it starts.</param>
/// <param name="InviteOffice">Whether the start prints a link that makes an account of the office, once, within an hour: for whoever has lost every password.</param>
public sealed record ServerSettings(
    string DataFolder,
    string FilesFolder,
    string? PostgresConnection,
    bool AllowOpenNetwork,
    bool Demo,
    string Language,
    bool InviteOffice = false
)
{
    /// <summary>Address where no other is set.</summary>
    public const string DefaultUrl = "http://127.0.0.1:5230";

    /// <summary>The SQLite file.</summary>
    public string DatabaseFile => Path.Combine(DataFolder, "rinsewright.db");

    /// <summary>Where the data is, for people. Never the connection string: it can hold a password.</summary>
    public string StorePlace => PostgresConnection is null ? DataFolder : $"PostgreSQL, {FilesFolder}";

    /// <summary>Spanish where the system's language is Spanish, else English.</summary>
    public static string SystemLanguage =>
        Environment.GetEnvironmentVariable("LANG")?.StartsWith("es", StringComparison.Ordinal) is true ? "es" : "en";

    /// <summary>Words of <see cref="Language"/>.</summary>
    public Words Words => Words.For(Language);

    /// <summary>Values that hold where nobody sets others: this computer only, and only under its own names (a page of another site that has its name point here is refused).</summary>
    public static IReadOnlyDictionary<string, string?> Defaults { get; } =
        new Dictionary<string, string?>(StringComparer.OrdinalIgnoreCase)
        {
            ["AllowedHosts"] = "localhost;127.0.0.1;[::1]",
            ["Logging:LogLevel:Default"] = "Warning",
            ["Logging:LogLevel:Microsoft.Hosting.Lifetime"] = "Warning",
            // That the address is taken is said in our own words (ServerHost), without the stack trace.
            ["Logging:LogLevel:Microsoft.Extensions.Hosting.Internal.Host"] = "Critical",
            // A failed command comes up as an exception anyway; on a new PostgreSQL database the first question for migrations is one that fails.
            ["Logging:LogLevel:Microsoft.EntityFrameworkCore.Database.Command"] = "None",
            // That keys of cookies rest as they are is our decision (decision 14) and no news at every start.
            ["Logging:LogLevel:Microsoft.AspNetCore.DataProtection"] = "Error",
            ["Rinsewright:Demo"] = "true",
        };

    /// <summary>Reads the settings.</summary>
    /// <exception cref="StartRefusedException">A yes-or-no setting is neither.</exception>
    public static ServerSettings From(IConfiguration configuration)
    {
        var section = configuration.GetSection("Rinsewright");
        var data = Path.GetFullPath(Text(section["Data"]) ?? PersonalFolder());
        return new ServerSettings(
            data,
            Path.GetFullPath(Text(section["Files"]) ?? Path.Combine(data, "files")),
            Text(section["Database"]),
            YesOrNo(section, "AllowOpenNetwork"),
            YesOrNo(section, "Demo"),
            Text(section["Language"]) ?? SystemLanguage,
            YesOrNo(section, "InviteOffice")
        );
    }

    private static string? Text(string? value) => string.IsNullOrWhiteSpace(value) ? null : value.Trim();

    private static bool YesOrNo(IConfigurationSection section, string name) =>
        Text(section[name]) switch
        {
            null => false,
            { } text when bool.TryParse(text, out var value) => value,
            { } text => throw new StartRefusedException("server.start.yes-or-no", null, ("name", "Rinsewright:" + name), ("value", text)),
        };

    private static string PersonalFolder() =>
        Path.Combine(
            Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create),
            "Rinsewright"
        );
}

/// <summary>The server does not start: says why and what to do, in words from the language files.</summary>
public sealed class StartRefusedException(string key, Exception? inner, params (string Name, string Value)[] values) : Exception(key, inner)
{
    /// <summary>The message in words.</summary>
    public string Say(Words words) => words.Say(Message, values);
}
