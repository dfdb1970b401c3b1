using System.Globalization;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.Timeouts;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.RateLimiting;
using Rinsewright.Server.Accounts;
using Rinsewright.Server.Records;

namespace Rinsewright.Server.Hosting;

/// <summary>How much one request may carry, how long it may take and how many may come. Generous for people, bounded for accidents.</summary>
public static class Limits
{
    /// <summary>Any request that says nothing else, bytes.</summary>
    public const long MostBytes = 1L << 20;

    /// <summary>A list of operations, bytes.</summary>
    public const long MostOperationBytes = 8L << 20;

    /// <summary>A logger file with the request around it, bytes.</summary>
    public const long MostProofBytes = OriginalFiles.MostBytes + MostBytes;

    /// <summary>Requests a minute from one address.</summary>
    public const int RequestsPerMinute = 1200;

    /// <summary>Name of the time limit for work on whole files.</summary>
    public const string Long = "Long";

    /// <summary>Name of the limit on proofs computed at once.</summary>
    public const string Computing = "Computing";

    /// <summary>Name of the limit on tries to sign in.</summary>
    public const string SigningIn = "SigningIn";

    /// <summary>Tries to sign in, or to take an invitation, a minute from one address.</summary>
    public const int SignInsPerMinute = 30;

    /// <summary>Registers them.</summary>
    public static void AddLimits(this WebApplicationBuilder builder)
    {
        builder.WebHost.ConfigureKestrel(k =>
        {
            k.AddServerHeader = false;
            k.Limits.MaxRequestBodySize = MostBytes;
        });
        builder.Services.Configure<FormOptions>(f => f.MultipartBodyLengthLimit = OriginalFiles.MostBytes);
        builder.Services.AddRequestTimeouts(t =>
        {
            t.DefaultPolicy = Within(TimeSpan.FromSeconds(60));
            t.AddPolicy(Long, Within(TimeSpan.FromMinutes(10)));
        });
        builder.Services.AddRateLimiter(r =>
        {
            r.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(PerAddress);
            r.AddPolicy(SigningIn, c => PerMinute(c, SignInsPerMinute));
            r.AddConcurrencyLimiter(
                Computing,
                c =>
                {
                    c.PermitLimit = Math.Max(2, Environment.ProcessorCount);
                    c.QueueLimit = 64;
                }
            );
            r.OnRejected = (c, _) =>
            {
                var wait = c.Lease.TryGetMetadata(MetadataName.RetryAfter, out var after) ? after : TimeSpan.FromSeconds(10);
                c.HttpContext.Response.Headers.RetryAfter = Math.Ceiling(wait.TotalSeconds).ToString(CultureInfo.InvariantCulture);
                return new ValueTask(Problems.Write(c.HttpContext, StatusCodes.Status429TooManyRequests, "server.problem.429"));
            };
        });
    }

    /// <summary>Lets an endpoint take more than <see cref="MostBytes"/>.</summary>
    public static TBuilder Takes<TBuilder>(this TBuilder endpoint, long bytes)
        where TBuilder : IEndpointConventionBuilder => endpoint.WithMetadata(new RequestSizeLimitAttribute(bytes));

    private static RequestTimeoutPolicy Within(TimeSpan time) =>
        new() { Timeout = time, WriteTimeoutResponse = c => Problems.Write(c, StatusCodes.Status504GatewayTimeout, "server.problem.504") };

    // Only the interface is counted: the first load of the client is a few hundred small files.
    private static RateLimitPartition<string> PerAddress(HttpContext context) =>
        context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal)
            ? PerMinute(context, RequestsPerMinute)
            : RateLimitPartition.GetNoLimiter("");

    private static RateLimitPartition<string> PerMinute(HttpContext context, int most) =>
        RateLimitPartition.GetFixedWindowLimiter(
            Origin.AddressOf(context),
            _ => new FixedWindowRateLimiterOptions { PermitLimit = most, Window = TimeSpan.FromMinutes(1) }
        );
}
