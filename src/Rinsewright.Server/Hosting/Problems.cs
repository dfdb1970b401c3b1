using System.Text.Json;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Mvc;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Files.Loggers;

namespace Rinsewright.Server.Hosting;

/// <summary>Refusals and failures as problem details (RFC 9457) in the caller's language: what, where, and how to mend it; never a stack trace.</summary>
public static partial class Problems
{
    /// <summary>Words of the language the caller prefers by Accept-Language; English otherwise.</summary>
    public static Words WordsFor(HttpContext context)
    {
        var preferred = context
            .Request.GetTypedHeaders()
            .AcceptLanguage.OrderByDescending(l => l.Quality ?? 1)
            .Select(l => l.Value.ToString());
        return Words.For(preferred.Select(l => l.Split('-')[0]).FirstOrDefault(l => Words.Languages.Contains(l)));
    }

    /// <summary>A problem with a detail from the language files.</summary>
    public static ProblemDetails Of(HttpContext context, int status, string key, params (string Name, string Value)[] values) =>
        Say(WordsFor(context), status, WordsFor(context).Say(key, values));

    /// <summary>The same as a result of an endpoint.</summary>
    public static IResult Result(HttpContext context, int status, string key, params (string Name, string Value)[] values) =>
        TypedResults.Problem(Of(context, status, key, values));

    /// <summary>The same from a middleware.</summary>
    public static Task Write(HttpContext context, int status, string key, params (string Name, string Value)[] values) =>
        Result(context, status, key, values).ExecuteAsync(context);

    /// <summary>Registers them for exceptions and for empty answers.</summary>
    public static void AddProblems(this IServiceCollection services)
    {
        services.AddProblemDetails(o =>
            o.CustomizeProblemDetails = c =>
            {
                var status = c.ProblemDetails.Status ?? c.HttpContext.Response.StatusCode;
                var words = WordsFor(c.HttpContext);
                c.ProblemDetails.Title = Title(words, status);
                c.ProblemDetails.Detail ??= Detail(words, status);
            }
        );
        services.AddExceptionHandler<InWords>();
        services.Configure<RouteHandlerOptions>(o => o.ThrowOnBadRequest = true); // so that the reason reaches InWords in every environment
    }

    private static ProblemDetails Say(Words words, int status, string detail) =>
        new()
        {
            Status = status,
            Title = Title(words, status),
            Detail = detail,
        };

    private static string Title(Words words, int status)
    {
        var key = $"server.status.{status}";
        return words.Keys.Contains(key) ? words[key] : words[status < 500 ? "server.status.400" : "server.status.500"];
    }

    private static string? Detail(Words words, int status)
    {
        var key = $"server.problem.{status}";
        return words.Keys.Contains(key) ? words[key] : null;
    }

    private sealed partial class InWords(ILogger<InWords> log) : IExceptionHandler
    {
        public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
        {
            var words = WordsFor(httpContext);
            var problem = exception switch
            {
                UnreadableFileException e => Say(words, StatusCodes.Status422UnprocessableEntity, words.Say(Wire.From(e.Says))),
                ContractException e => Say(
                    words,
                    StatusCodes.Status400BadRequest,
                    words.Say("server.problem.field", ("field", e.Field), ("problem", e.Problem))
                ),
                RuleSetException e => Say(
                    words,
                    StatusCodes.Status400BadRequest,
                    words.Say("server.problem.rule-set", ("path", e.Path), ("problem", e.Problem))
                ),
                BadHttpRequestException { InnerException: JsonException e } => Say(words, StatusCodes.Status400BadRequest, Json(words, e)),
                JsonException e => Say(words, StatusCodes.Status400BadRequest, Json(words, e)),
                BadHttpRequestException e => Say(words, e.StatusCode, Detail(words, e.StatusCode) ?? words["server.problem.400"]),
                InvalidDataException => Say(words, StatusCodes.Status413PayloadTooLarge, words["server.problem.413"]), // a form over its limit
                IOException e when IsDiskFull(e) => Say(words, StatusCodes.Status507InsufficientStorage, words["server.problem.507"]),
                OperationCanceledException when httpContext.RequestAborted.IsCancellationRequested => null,
                _ => Say(
                    words,
                    StatusCodes.Status500InternalServerError,
                    words.Say("server.problem.500", ("id", httpContext.TraceIdentifier))
                ),
            };
            if (problem is null)
            {
                return true; // the caller is gone
            }

            if (problem.Status >= StatusCodes.Status500InternalServerError)
            {
                Failed(log, exception, httpContext.Request.Method, httpContext.Request.Path, httpContext.TraceIdentifier);
            }

            await TypedResults.Problem(problem).ExecuteAsync(httpContext);
            return true;
        }

        // The library's sentence names .NET types, which tell a caller nothing: where it is, and what is missing, are enough.
        private static string Json(Words words, JsonException e)
        {
            var missing = e.Message.Split("including: ") is [_, var names] ? names.Split(". Path")[0].TrimEnd('.') : "";
            return words.Say(
                missing.Length > 0 ? "server.problem.json-missing" : "server.problem.json",
                ("path", e.Path ?? "$"),
                ("line", ((e.LineNumber ?? 0) + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)),
                ("names", missing)
            );
        }

        private static bool IsDiskFull(IOException e) => (e.HResult & 0xFFFF) is 28 or 112; // ENOSPC; ERROR_DISK_FULL

        [LoggerMessage(LogLevel.Error, "{Method} {Path} failed; the answer carries the number {Id}")]
        private static partial void Failed(ILogger log, Exception exception, string method, string path, string id);
    }
}
