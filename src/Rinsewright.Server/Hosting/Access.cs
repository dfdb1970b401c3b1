using System.Net;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Authorization.Policy;
using Rinsewright.Contracts.Language;

namespace Rinsewright.Server.Hosting;

/// <summary>Who may call an endpoint. Every endpoint names one of these policies; one that names none is refused to all by the fallback.</summary>
public static class Access
{
    /// <summary>People at this computer, and others only where the open network was allowed by the setting.</summary>
    public const string Local = "Local";

    /// <summary>Registers the policies.</summary>
    public static void AddAccess(this IServiceCollection services)
    {
        services.AddSingleton<IAuthorizationHandler, LocalHandler>();
        services.AddSingleton<IAuthorizationMiddlewareResultHandler, RefusalInWords>();
        services
            .AddAuthorizationBuilder()
            .AddPolicy(Local, policy => policy.AddRequirements(new LocalRequirement()))
            .SetFallbackPolicy(new AuthorizationPolicyBuilder().RequireAssertion(_ => false).Build());
    }

    private sealed class LocalRequirement : IAuthorizationRequirement;

    private sealed class LocalHandler(ServerSettings settings) : AuthorizationHandler<LocalRequirement>
    {
        protected override Task HandleRequirementAsync(AuthorizationHandlerContext context, LocalRequirement requirement)
        {
            // No remote address: a Unix socket or an in-process call, both on this computer.
            var remote = (context.Resource as HttpContext)?.Connection.RemoteIpAddress;
            if (settings.AllowOpenNetwork || remote is null || IPAddress.IsLoopback(remote))
            {
                context.Succeed(requirement);
            }

            return Task.CompletedTask;
        }
    }

    // There is no sign-in to send anybody to, so a refusal is an answer in words.
    private sealed class RefusalInWords : IAuthorizationMiddlewareResultHandler
    {
        public Task HandleAsync(
            RequestDelegate next,
            HttpContext context,
            AuthorizationPolicy policy,
            PolicyAuthorizationResult authorizeResult
        ) =>
            authorizeResult.Succeeded || context.GetEndpoint() is not RouteEndpoint // nothing there to be kept out of: 404, 405 or 415
                ? next(context)
                : Problems.Write(context, StatusCodes.Status403Forbidden, "server.problem.not-local");
    }
}
