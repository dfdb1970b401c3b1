using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Contracts.Records;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Accounts;

/// <summary>Puts accounts, cookies and their keys together.</summary>
public static class Identities
{
    /// <summary>Name of the cookie.</summary>
    public const string Cookie = "rinsewright";

    private const int HashRounds = 210_000; // PBKDF2 with SHA-512

    /// <summary>Registers them.</summary>
    public static void AddAccounts(this IServiceCollection services)
    {
        services.AddHttpContextAccessor();
        services.AddSingleton<AccountPresence>();
        services.AddSingleton<NameBook>();
        services.AddScoped<Caller>();
        services.AddScoped<AuditTrail>();
        services.AddScoped<Sessions>();
        services.AddScoped<SignIns>();
        services.AddScoped<Invitations>();
        services.AddScoped<People>();
        services.AddScoped<PeopleEndpoints.Endings>();
        services.AddDataProtection().SetApplicationName("Rinsewright").PersistKeysToDbContext<AppDb>();
        services.Configure<PasswordHasherOptions>(o => o.IterationCount = HashRounds);
        services
            .AddIdentityCore<Account>(o =>
            {
                o.User.AllowedUserNameCharacters = ""; // any: names are people's names
                o.Password.RequiredLength = PasswordRule.Shortest;
                o.Password.RequiredUniqueChars = PasswordRule.Different;
                o.Password.RequireDigit =
                    o.Password.RequireLowercase =
                    o.Password.RequireUppercase =
                    o.Password.RequireNonAlphanumeric =
                        false;
                o.Stores.SchemaVersion = IdentitySchemaVersions.Version3;
            })
            .AddEntityFrameworkStores<AppDb>()
            .AddSignInManager();
        services.AddSingleton<ILookupNormalizer, NameBook>(s => s.GetRequiredService<NameBook>());
        services.Configure<IdentityPasskeyOptions>(o =>
        {
            o.ResidentKeyRequirement = "required"; // so that nobody types a name to sign in with it
            o.UserVerificationRequirement = "required"; // it stands for name and password both
        });
        services
            .AddAuthentication(IdentityConstants.ApplicationScheme)
            .AddCookie(
                IdentityConstants.ApplicationScheme,
                o =>
                {
                    Harden(o, Cookie);
                    o.ExpireTimeSpan = Sessions.Holds;
                    o.SlidingExpiration = true;
                    o.Events.OnValidatePrincipal = Sessions.CheckAsync;
                }
            )
            .AddCookie(
                IdentityConstants.TwoFactorUserIdScheme, // what a passkey was asked, until it answers
                o =>
                {
                    Harden(o, Cookie + ".passkey");
                    o.ExpireTimeSpan = TimeSpan.FromMinutes(5);
                }
            );
    }

    private static void Harden(CookieAuthenticationOptions options, string name)
    {
        options.Cookie.Name = name;
        options.Cookie.HttpOnly = true;
        options.Cookie.SameSite = SameSiteMode.Strict;
        options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        options.Cookie.IsEssential = true;
        // Refusals are said by Access; nobody is sent anywhere.
        options.Events.OnRedirectToLogin = c => Answer(c, StatusCodes.Status401Unauthorized);
        options.Events.OnRedirectToAccessDenied = c => Answer(c, StatusCodes.Status403Forbidden);
    }

    private static Task Answer(RedirectContext<CookieAuthenticationOptions> context, int status)
    {
        context.Response.StatusCode = status;
        return Task.CompletedTask;
    }
}

/// <summary>How names are compared: without case, accents and signs, as people type them with one thumb.</summary>
public sealed class NameBook : ILookupNormalizer
{
    /// <inheritdoc/>
    public string? NormalizeName(string? name) => name is null ? null : Forgiving.Fold(name);

    /// <inheritdoc/>
    public string? NormalizeEmail(string? email) => NormalizeName(email);
}
