using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Contracts.Records;

/// <summary>What became of one operation. A repeated send gets the stored answer again.</summary>
/// <param name="Id">Operation.</param>
/// <param name="Outcome">
/// <c>applied</c>: it is the current version, or one of its values stands. <c>superseded</c>: a later change stands; this one is kept in the history. <c>refused</c>: not kept;
/// <paramref name="Reason"/> says what to mend.
/// </param>
/// <param name="Revision">Number of the change in the store; 0 where refused.</param>
/// <param name="Repeated">Whether it had been received before.</param>
/// <param name="Reason">Why it was refused, in the language asked for.</param>
/// <param name="Replaced">The operation whose version it replaced or gave way to, where another author or device wrote that; else null.</param>
public sealed record OperationResult(Guid Id, string Outcome, long Revision, bool Repeated, string? Reason = null, Guid? Replaced = null);

/// <summary>Answer to a list of operations, in the order they were sent.</summary>
/// <param name="Results">What became of each.</param>
/// <param name="Place">Place of the latest of them in the list of changes. A device says it where it asks for changes: a store that does not know it any more was put back to an older copy.</param>
/// <param name="WantedFiles">Files that they name and the store does not have: the device that keeps one sends it again. Null for none.</param>
public sealed record OperationResults(
    IReadOnlyList<OperationResult> Results,
    string? Place = null,
    IReadOnlyList<string>? WantedFiles = null
);

/// <summary>Documents that changed, oldest change first.</summary>
/// <param name="Items">At most one page of them.</param>
/// <param name="Cursor">Ask for what comes after this.</param>
/// <param name="More">Whether there is more now.</param>
/// <param name="Restarted">The cursor sent was not of this store (another database, or one restored from a backup): these are from the start.</param>
/// <param name="WantedFiles">Files that documents name and the store does not have: the device that keeps one sends it again. Null for none.</param>
public sealed record Changes(
    IReadOnlyList<Change> Items,
    string Cursor,
    bool More,
    bool Restarted,
    IReadOnlyList<string>? WantedFiles = null
);

/// <summary>One document as it now stands.</summary>
/// <param name="DocumentId">Document.</param>
/// <param name="Kind">Kind, <see cref="Kinds"/>.</param>
/// <param name="Action"><c>put</c> or <c>delete</c>.</param>
/// <param name="At">When, by the clock of the device that wrote it.</param>
/// <param name="Author">Who wrote it.</param>
/// <param name="Demo">Whether it belongs to the demo service.</param>
/// <param name="Versions">How many versions are kept, this one included.</param>
/// <param name="Proof">The document for <c>put</c>, where it is a proof.</param>
/// <param name="Document">The document for <c>put</c>, where it is one of fields.</param>
public sealed record Change(
    Guid DocumentId,
    string Kind,
    string Action,
    DateTimeOffset At,
    string Author,
    bool Demo,
    int Versions,
    ProofDocument? Proof,
    FieldDocument? Document = null
);

/// <summary>A saved proof in one line.</summary>
public sealed record ProofSummary(
    Guid Id,
    string Kitchen,
    string Machine,
    string Technician,
    DateTimeOffset At,
    string Verdict,
    int Passes,
    bool Demo,
    int Versions
);

/// <summary>One version of a document, newest first in a list of them.</summary>
/// <param name="OperationId">The operation that brought it.</param>
/// <param name="Action"><c>put</c>, <c>delete</c> or <c>set</c>.</param>
/// <param name="At">When, by the device's clock.</param>
/// <param name="ReceivedAt">When it reached this store.</param>
/// <param name="Author">Who.</param>
/// <param name="Device">Which device.</param>
/// <param name="Current">Whether it is the version that stands; of fields, whether any of its values stands.</param>
/// <param name="Proof">The document for <c>put</c>.</param>
/// <param name="Fields">What was written for <c>set</c>.</param>
public sealed record DocumentVersion(
    Guid OperationId,
    string Action,
    DateTimeOffset At,
    DateTimeOffset ReceivedAt,
    string Author,
    string Device,
    bool Current,
    ProofDocument? Proof,
    IReadOnlyList<FieldChange>? Fields = null
);

/// <summary>A rule set as it travels.</summary>
public sealed record RuleSetDto(
    string Id,
    string Title,
    string Jurisdiction,
    string Edition,
    string? BasedOn,
    IReadOnlyList<LimitDto> Limits,
    IReadOnlyList<string> Remarks
);
