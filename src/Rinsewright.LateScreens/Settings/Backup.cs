using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Records;

/// <summary>What became of an import.</summary>
public sealed record BackupResult(int Added, int Kept, int Refused);

/// <summary>Brings the documents of a backup in. What is already here and not older stays; nothing is overwritten by something older.</summary>
public static class Backup
{
    /// <summary>Imports; null where the file is not a backup.</summary>
    public static async Task<BackupResult?> ImportAsync(BackupContent content, Work work)
    {
        if (content.Schema != BackupHead.CurrentSchema)
        {
            return null;
        }

        int added = 0,
            kept = 0,
            refused = content.Refused;
        foreach (var text in content.Documents)
        {
            if (Fields(text) is { } document)
            {
                var any = await work.ImportAsync(document);
                Count(any);
                continue;
            }

            if (Read(text) is not { } proof)
            {
                refused++;
                continue;
            }

            if (await work.OpenAsync(proof.Id) is { } here && here.At >= proof.At)
            {
                kept++;
                continue;
            }

            await work.SaveAsync(proof);
            Count(true);
        }

        return new BackupResult(added, kept, refused);

        // What the device had no room for was not brought in.
        void Count(bool any)
        {
            if (!any)
            {
                kept++;
            }
            else if (work.Trouble is null)
            {
                added++;
            }
            else
            {
                refused++;
            }
        }
    }

    // A kitchen or machine; null where it is neither, or of a version this one does not know.
    private static FieldDocument? Fields(string text)
    {
        try
        {
            return
                JsonSerializer.Deserialize(text, ContractsJson.Default.FieldDocument)
                    is { Kind: not null, Fields: not null, Version: <= FieldDocument.CurrentVersion } document
                && document.Id != Guid.Empty
                ? document
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static ProofDocument? Read(string text)
    {
        try
        {
            return
                JsonSerializer.Deserialize(text, ContractsJson.Default.ProofDocument)
                    is { Report: not null, Request: not null, Version: <= ProofDocument.CurrentVersion } proof
                ? proof
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
