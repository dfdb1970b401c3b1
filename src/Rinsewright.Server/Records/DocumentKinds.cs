using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;

namespace Rinsewright.Server.Records;

/// <summary>What a list shows of a document without opening it.</summary>
/// <param name="MadeAt">When it was made.</param>
/// <param name="Kitchen">Kitchen's name.</param>
/// <param name="Machine">Machine's name.</param>
/// <param name="Technician">Technician.</param>
/// <param name="Verdict">Verdict.</param>
/// <param name="Passes">Passes found.</param>
/// <param name="KitchenId">Kitchen it belongs to; null for none.</param>
public sealed record DocumentSummary(
    DateTimeOffset MadeAt,
    string Kitchen = "",
    string Machine = "",
    string Technician = "",
    string Verdict = "",
    int Passes = 0,
    Guid? KitchenId = null
);

/// <summary>A kind of document: its name, what must hold of an operation on it, and what a list shows.</summary>
/// <param name="Name">Name, <see cref="Kinds"/>.</param>
/// <param name="Fault">Word key of what is wrong with an operation on it; null where it can be kept.</param>
/// <param name="OfFields">Summary of a document of fields; null where the kind is written whole.</param>
public sealed record DocumentKind(
    string Name,
    Func<Operation, string?> Fault,
    Func<FieldDocument, DateTimeOffset, DocumentSummary>? OfFields = null
);

/// <summary>The kinds this server keeps. A new kind of fields needs one line here.</summary>
public static class DocumentKinds
{
    private static readonly IReadOnlyList<DocumentKind> All =
    [
        new(Kinds.Proof, OperationCheck.ProofFault),
        new(Kinds.Kitchen, FieldCheck.Fault, (d, at) => new(at, Kitchen: Short(d[KitchenPaths.Name]), KitchenId: d.Id)),
        new(
            Kinds.Machine,
            FieldCheck.Fault,
            (d, at) =>
                new(
                    at,
                    Machine: Short(d[MachinePaths.Name]),
                    KitchenId: Guid.TryParse(d[MachinePaths.Kitchen], out var kitchen) ? kitchen : null
                )
        ),
        new(
            Kinds.Visit,
            FieldCheck.Fault,
            (d, at) =>
                new(
                    at,
                    Machine: Short(d[VisitPaths.MachineName]),
                    KitchenId: Guid.TryParse(d[VisitPaths.Kitchen], out var kitchen) ? kitchen : null
                )
        ),
    ];

    /// <summary>A kind by its name; null where this server does not know it.</summary>
    public static DocumentKind? Find(string name) => All.FirstOrDefault(k => k.Name == name);

    // A name as typed may be longer than a column; the document keeps it whole.
    private static string Short(string text) => text.Length <= Storage.TextLimits.Name ? text : text[..Storage.TextLimits.Name];
}
