using System.Net;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Authorization.Policy;
using Rinsewright.Contracts.Accounts;
using Rinsewright.Server.Accounts;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Hosting;

/// <summary>
/// Who may call an endpoint. Every endpoint names one of these policies; one that names none is refused to all by the fallback. As long as there is no account, whoever is at
/// this computer (or, where the setting allows it, on the open network) may do everything but what needs an account; from the first account on only who is signed in may.
/// </summary>
public static class Access
{
    /// <summary>What is needed to come as far as the sign-in: pages, health, signing in, taking an invitation.</summary>
    public const string Door = "Door";

    /// <summary>Making the first account: at this computer itself, while there is none.</summary>
    public const string SetUp = "SetUp";

    /// <summary>What belongs to the account that is signed in.</summary>
    public const string Own = "Own";

    /// <summary>Reading: everybody; a kitchen's supervisor is shown the documents of the account's kitchens alone.</summary>
    public const string Read = "Read";

    /// <summary>Reading what belongs to no single kitchen, and writing: technicians and the office.</summary>
    public const string Work = "Work";

    /// <summary>The office.</summary>
    public const string Office = "Office";

    /// <summary>Accounts, invitations, sessions of others, the audit trail: an account of the office, never a caller without one.</summary>
    public const string People = "People";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } = [Door, SetUp, Own, Read, Work, Office, People];

    /// <summary>Registers the policies.</summary>
    public static void AddAccess(this IServiceCollection services)
    {
        services.AddScoped<IAuthorizationHandler, Handler>();
        services.AddSingleton<IAuthorizationMiddlewareResultHandler, RefusalInWords>();
        var policies = services
            .AddAuthorizationBuilder()
            .SetFallbackPolicy(new AuthorizationPolicyBuilder().RequireAssertion(_ => false).Build());
        foreach (var name in All)
        {
            policies.AddPolicy(name, policy => policy.AddRequirements(new Requirement(name)));
        }
    }

    /// <summary>Whether a role may, once there are accounts. Role null: nobody is signed in.</summary>
    public static bool Allows(string policy, string? role) =>
        policy switch
        {
            Door => true,
            Own or Read => role is not null,
            Work => role is Roles.Technician or Roles.Office,
            Office or People => role is Roles.Office,
            _ => false,
        };

    /// <summary>Whether a caller may who is taken for the owner of this computer, while there is no account.</summary>
    public static bool AllowsOwner(string policy) => policy is Door or Read or Work or Office;

    /// <summary>Whether the caller is at this computer, or the setting lets the open network in.</summary>
    public static bool IsLocal(HttpContext context, ServerSettings settings)
    {
        // No remote address: a Unix socket or an in-process call, both on this computer.
        var remote = context.Connection.RemoteIpAddress;
        return settings.AllowOpenNetwork || remote is null || IPAddress.IsLoopback(remote);
    }

    private sealed record Requirement(string Policy) : IAuthorizationRequirement;

    private sealed class Handler(ServerSettings settings, AccountPresence presence, AppDb db, Caller caller)
        : AuthorizationHandler<Requirement>
    {
        protected override async Task HandleRequirementAsync(AuthorizationHandlerContext context, Requirement requirement)
        {
            if (context.Resource is HttpContext http && await MayAsync(http, requirement.Policy))
            {
                context.Succeed(requirement);
            }
        }

        private async Task<bool> MayAsync(HttpContext http, string policy) =>
            // The files of the client come by the hundred: at this computer they need no question to the database.
            (policy == Door && IsLocal(http, settings))
            || (
                await presence.AnyAsync(db, http.RequestAborted) ? Allows(policy, caller.Account?.Role)
                : policy == SetUp ? Origin.IsDirectlyHere(http)
                : AllowsOwner(policy) && IsLocal(http, settings)
            );
    }

    // There is no page to send anybody to who calls the interface, so a refusal is an answer in words.
    private sealed class RefusalInWords : IAuthorizationMiddlewareResultHandler
    {
        public async Task HandleAsync(
            RequestDelegate next,
            HttpContext context,
            AuthorizationPolicy policy,
            PolicyAuthorizationResult authorizeResult
        )
        {
            if (authorizeResult.Succeeded || context.GetEndpoint() is not RouteEndpoint) // nothing there to be kept out of: 404, 405 or 415
            {
                await next(context);
                return;
            }

            var services = context.RequestServices;
            var accounts = await services
                .GetRequiredService<AccountPresence>()
                .AnyAsync(services.GetRequiredService<AppDb>(), context.RequestAborted);
            var caller = services.GetRequiredService<Caller>();
            var asked = policy.Requirements.OfType<Requirement>().FirstOrDefault()?.Policy;
            if (accounts && caller.Account is null && asked != SetUp)
            {
                context.Response.Headers.WWWAuthenticate = "Cookie";
                await Problems.Write(context, StatusCodes.Status401Unauthorized, "server.problem.401");
                return;
            }

            var key =
                asked == SetUp ? (accounts ? "server.problem.set-up-done" : "server.problem.set-up-elsewhere")
                : accounts ? "server.problem.role"
                : !IsLocal(context, services.GetRequiredService<ServerSettings>()) ? "server.problem.not-local"
                : "server.problem.no-accounts";
            await Problems.Write(context, StatusCodes.Status403Forbidden, key);
        }
    }
}
