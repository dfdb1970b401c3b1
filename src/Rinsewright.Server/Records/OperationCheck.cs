using Rinsewright.Contracts.Records;
using Rinsewright.Server.Storage;

namespace Rinsewright.Server.Records;

/// <summary>Whether an operation can be kept.</summary>
public static class OperationCheck
{
    /// <summary>Word key of what is wrong; null where it can be kept.</summary>
    public static string? Fault(Operation operation)
    {
        if (operation.Id == Guid.Empty || operation.DocumentId == Guid.Empty)
        {
            return "server.operation.no-id";
        }

        if (DocumentKinds.Find(operation.Kind) is not { } kind)
        {
            return "server.operation.kind";
        }

        return IsName(operation.Author) && IsName(operation.Device) ? kind.Fault(operation) : "server.operation.name";
    }

    /// <summary>Word key of what is wrong with an operation on a proof; null where it can be kept.</summary>
    public static string? ProofFault(Operation operation)
    {
        if (operation.Fields is not null)
        {
            return "server.operation.whole";
        }

        return operation.Action switch
        {
            "delete" => operation.Proof is null ? null : "server.operation.delete-carries",
            "put" => operation.Proof is { } proof ? Fault(operation.DocumentId, proof) : "server.operation.no-document",
            _ => "server.operation.action",
        };
    }

    private static string? Fault(Guid documentId, ProofDocument proof)
    {
        if (proof.Id != documentId)
        {
            return "server.operation.other-document";
        }

        if (proof.Version is < 1 or > ProofDocument.CurrentVersion)
        {
            return "server.operation.version";
        }

        return !IsName(proof.Kitchen) || !IsName(proof.Machine) || !IsName(proof.Technician) ? "server.operation.name"
            : proof.Report.Verdict is not ("proven" or "notProven" or "undetermined") ? "server.operation.verdict"
            : proof.Files.Any(f => !OriginalFiles.IsSha256(f.Sha256)) ? "server.operation.file-hash"
            : null;
    }

    // PostgreSQL keeps no NUL character, and a name has no use for the other control characters.
    private static bool IsName(string text) => text.Length <= TextLimits.Name && !text.Any(char.IsControl);
}
