using System.Net.Mime;
using Microsoft.Net.Http.Headers;

namespace Rinsewright.Server.Hosting;

/// <summary>
/// Refuses changes that a page of another site makes a browser send here. A browser says where a request comes from (Fetch Metadata; the Origin header where
/// it knows no Fetch Metadata). Beside that, a POST as a plain web form could send it needs <see cref="Header"/>: no page can send that header, JSON, PUT or DELETE
/// to another site unless that site allows it, and this server never does.
/// </summary>
public static class SameOrigin
{
    /// <summary>A POST with a form, plain text or nothing in it must carry this header, with any value.</summary>
    public const string Header = "X-Rinsewright";

    /// <summary>Puts the check before every endpoint.</summary>
    public static void UseSameOrigin(this IApplicationBuilder app) =>
        app.Use(
            (context, next) =>
                Fault(context.Request) is { } fault
                    ? Problems.Write(context, StatusCodes.Status403Forbidden, fault, ("header", Header))
                    : next(context)
        );

    private static string? Fault(HttpRequest request)
    {
        if (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method) || HttpMethods.IsOptions(request.Method))
        {
            return null;
        }

        var site = request.Headers["Sec-Fetch-Site"].ToString();
        var origin = request.Headers[HeaderNames.Origin].ToString();
        var foreign = site.Length > 0 ? site is not ("same-origin" or "none") : origin.Length > 0 && !IsOwn(origin, request);
        return foreign ? "server.problem.other-site"
            : !IsAsFromForm(request) || request.Headers.ContainsKey(Header) ? null
            : "server.problem.own-header";
    }

    // The host is compared, not the scheme: behind a reverse proxy the browser says https while the proxy speaks http here.
    private static bool IsOwn(string origin, HttpRequest request) =>
        Uri.TryCreate(origin, UriKind.Absolute, out var uri)
        && string.Equals(uri.Authority, HostWithoutDefaultPort(request, uri), StringComparison.OrdinalIgnoreCase);

    private static string HostWithoutDefaultPort(HttpRequest request, Uri origin) =>
        request.Host.Port is { } port && port == (origin.Scheme == Uri.UriSchemeHttps ? 443 : 80)
            ? request.Host.Host
            : request.Host.Value ?? "";

    private static bool IsAsFromForm(HttpRequest request) =>
        HttpMethods.IsPost(request.Method)
        && (
            !MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
            || FormTypes.Contains(type.MediaType.ToString(), StringComparer.OrdinalIgnoreCase)
        );

    private static readonly string[] FormTypes =
    [
        MediaTypeNames.Multipart.FormData,
        MediaTypeNames.Application.FormUrlEncoded,
        MediaTypeNames.Text.Plain,
    ];
}
