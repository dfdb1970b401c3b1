using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace Rinsewright.Server.Hosting;

/// <summary>The document at /openapi/v1.json: the same text wherever the server runs.</summary>
public static class OpenApiText
{
    /// <summary>Sets title and drops the address of the server it was asked from.</summary>
    public static void Set(OpenApiOptions options) =>
        options.AddDocumentTransformer(
            (document, _, _) =>
            {
                document.Info = new OpenApiInfo
                {
                    Title = "Rinsewright",
                    Version = "1",
                    Description =
                        "Proofs of sanitization, their original files, and changes between devices. A POST that carries no JSON carries the header "
                        + SameOrigin.Header
                        + ". Requests that change something come from the server's own pages or from a program that is not a browser. Once there are accounts, a program signs in at /api/sign-in and "
                        + "sends the cookie: 401 says that nobody is signed in, 403 that the account may not.",
                };
                document.Servers?.Clear();
                return Task.CompletedTask;
            }
        );
}
