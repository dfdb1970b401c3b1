namespace Rinsewright.Server.Hosting;

/// <summary>Every page of the client is index.html: a link to any of them, or a reload on it, answers with that file.</summary>
public static class ClientPages
{
    private static readonly string[] NotPages = ["/api", "/health", "/openapi"];

    /// <summary>Turns the address of a page into that of index.html. A rewrite and not a catch-all route, which would hide wrong methods and unknown addresses.</summary>
    public static void UseClientPages(this IApplicationBuilder app) =>
        app.Use(
            (context, next) =>
            {
                if (IsPage(context.Request))
                {
                    context.Request.Path = "/index.html";
                }

                return next(context);
            }
        );

    private static bool IsPage(HttpRequest request) =>
        (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method))
        && !Path.HasExtension(request.Path.Value)
        && !Array.Exists(NotPages, p => request.Path.StartsWithSegments(p, StringComparison.Ordinal));
}
