namespace Rinsewright.Server.Hosting;

/// <summary>Headers on every answer.</summary>
public static class SecurityHeaders
{
    /// <summary>
    /// What pages of this server may do: own files only; no inline script; WebAssembly may be compiled; pictures may come from memory (a drawn chart, a photo before
    /// it is sent); nobody may put a page of ours into a frame.
    /// </summary>
    public const string ContentPolicy =
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; style-src-attr 'unsafe-inline'; img-src 'self' blob: data:; font-src 'self'; "
        + "connect-src 'self'; worker-src 'self'; manifest-src 'self'; frame-src 'self' blob:; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    /// <summary>Puts them on.</summary>
    public static void UseSecurityHeaders(this IApplicationBuilder app) =>
        app.Use(
            (context, next) =>
            {
                // At the end, so that an answer rewritten after a failure carries them too.
                context.Response.OnStarting(() =>
                {
                    var headers = context.Response.Headers;
                    headers.ContentSecurityPolicy = ContentPolicy;
                    headers.XContentTypeOptions = "nosniff";
                    headers.XFrameOptions = "DENY";
                    headers["Referrer-Policy"] = "no-referrer";
                    headers["Cross-Origin-Opener-Policy"] = "same-origin";
                    headers["Cross-Origin-Resource-Policy"] = "same-origin";
                    headers["Permissions-Policy"] = "camera=(self), geolocation=(), microphone=(), payment=(), usb=()";
                    if (context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal) && headers.CacheControl.Count == 0)
                    {
                        headers.CacheControl = "no-store";
                    }

                    return Task.CompletedTask;
                });
                return next(context);
            }
        );
}
