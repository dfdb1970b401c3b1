using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;

namespace Rinsewright.Server.Records;

/// <summary>Original files that documents and operations name as their own, by SHA-256.</summary>
public static class NamedFiles
{
    private const string Photos = VisitPaths.Record + "photos";

    /// <summary>Files of a document as it rests.</summary>
    /// <param name="kind">Kind, <see cref="Kinds"/>.</param>
    /// <param name="json">Its text.</param>
    public static IEnumerable<string> Of(string kind, string json)
    {
        if (kind == Kinds.Proof)
        {
            return StoredText.Proof(json)!.Files.Select(f => f.Sha256).Where(OriginalFiles.IsSha256);
        }

        return (
            kind switch
            {
                Kinds.Machine => [StoredText.Document(json)![MachinePaths.Photograph]],
                Kinds.Visit => PhotosOf(StoredText.Document(json)![Photos]),
                _ => Array.Empty<string>(),
            }
        ).Where(OriginalFiles.IsSha256);
    }

    /// <summary>Files that an operation names.</summary>
    public static IEnumerable<string> Of(Operation operation)
    {
        var named = operation.Proof?.Files.Select(f => f.Sha256) ?? [];
        foreach (var field in operation.Fields ?? [])
        {
            if (operation.Kind == Kinds.Machine && field.Path == MachinePaths.Photograph)
            {
                named = named.Append(field.Value);
            }
            else if (operation.Kind == Kinds.Visit && field.Path == Photos)
            {
                named = named.Concat(PhotosOf(field.Value));
            }
        }

        return named.Where(OriginalFiles.IsSha256);
    }

    private static string[] PhotosOf(string text)
    {
        try
        {
            using var photos = JsonDocument.Parse(text.Length > 0 ? text : "[]");
            return [.. photos.RootElement.EnumerateArray().Select(p => p.GetProperty("sha256").GetString() ?? "")];
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or KeyNotFoundException)
        {
            return []; // what cannot be read names nothing
        }
    }
}
