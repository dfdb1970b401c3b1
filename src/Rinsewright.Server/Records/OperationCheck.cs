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

        if (operation.Kind != "proof")
        {
            return "server.operation.kind";
        }

        if (operation.Author.Length > TextLimits.Name || operation.Device.Length > TextLimits.Name)
        {
            return "server.operation.long-name";
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

        var longest = Math.Max(proof.Kitchen.Length, Math.Max(proof.Machine.Length, proof.Technician.Length));
        return longest > TextLimits.Name ? "server.operation.long-name"
            : proof.Report.Verdict is not ("proven" or "notProven" or "undetermined") ? "server.operation.verdict"
            : proof.Files.Any(f => !OriginalFiles.IsSha256(f.Sha256)) ? "server.operation.file-hash"
            : null;
    }
}
