namespace Rinsewright.Client.Records;

/// <summary>The device's own store of documents, outgoing operations and files. A document and its operation are written together or not at all.</summary>
public interface IDeviceStore
{
    /// <summary>Writes a document with its line in the list and, unless it came from the office, the operation that sends it.</summary>
    Task SaveAsync(Guid id, string lineJson, string documentJson, string? operationJson);

    /// <summary>Deletes a document and queues the operation that says so; null where the office already knows.</summary>
    Task DeleteAsync(Guid id, string? operationJson);

    /// <summary>A document; null where it is not on this device.</summary>
    Task<string?> ReadAsync(Guid id);

    /// <summary>The lines of all documents of a kind.</summary>
    Task<string> ListAsync(string kind);

    /// <summary>The lines of the visits that say how machines stand: of each machine the last that was judged, and the last on which something was proved. A store may give more of them.</summary>
    Task<string> LastVisitsAsync();

    /// <summary>
    /// The lines a day is made of: kitchens where a visit is due, something is open, a machine was left with one of some standings, or that are named; the visits of the latter two that say how machines
    /// stand; and the visits to any of these kitchens that told of parts. A store may give more of each.
    /// </summary>
    /// <param name="until">Last day something is due, as <c>2026-12-03</c>.</param>
    /// <param name="standings">Standings in small letters.</param>
    /// <param name="named">Kitchens.</param>
    Task<string[]> DayLinesAsync(string until, IReadOnlyList<string> standings, IReadOnlyList<Guid> named);

    /// <summary>A document of fields (empty where it is not here) and the last operation on it that has not left the device (empty for none).</summary>
    Task<string[]> ReadForChangeAsync(Guid id);

    /// <summary>Writes a document of fields with its line and its operation, only if it is still what was read and what is replaced has still not left.</summary>
    /// <param name="id">Document.</param>
    /// <param name="expected">What was read; empty where it was not here.</param>
    /// <param name="lineJson">Its line in the list.</param>
    /// <param name="documentJson">The document.</param>
    /// <param name="operationJson">The operation that sends it; null where it came from the office.</param>
    /// <param name="replaces">The operation whose place it takes; null for none.</param>
    /// <returns>Whether it was written; if not, read again.</returns>
    Task<bool> ChangeAsync(Guid id, string expected, string lineJson, string documentJson, string? operationJson, string? replaces);

    /// <summary>Operations that wait to be sent.</summary>
    Task<int> WaitingAsync();

    /// <summary>Marks the first operations as on their way and returns them.</summary>
    Task<string> TakeAsync(int most);

    /// <summary>Removes operations the office has answered and, in the same transaction, adds a word to those remembered under a mark.</summary>
    Task SettleAsync(IReadOnlyList<string> operationIds, string mark, string word);

    /// <summary>Of the words under a mark leaves one of those that were seen, and those added since; nothing is done where the mark no longer begins with what was seen.</summary>
    Task TrimAsync(string mark, string seen, string keep);

    /// <summary>Keeps operations the office has refused, with its reasons by operation id; they are not taken again until asked for.</summary>
    Task RefuseAsync(IReadOnlyDictionary<string, string> reasons);

    /// <summary>Reasons of what was refused.</summary>
    /// <param name="again">Lets it be taken once more.</param>
    Task<string[]> RefusedAsync(bool again);

    /// <summary>
    /// Takes over whole documents as the office has them, each unless a change made here waits, and the place reached; all in one transaction. Where this is no longer the place that was asked from, because
    /// another tab was faster, nothing is written: what was given may be older than what stands here, and nothing would ever say so.
    /// </summary>
    /// <param name="documents">Id, line and document of each; line and document null where it was deleted.</param>
    /// <param name="from">Place asked from; empty for the start.</param>
    /// <param name="to">Place reached.</param>
    /// <returns>Whether it was written; if not, ask again.</returns>
    Task<bool> TakeOverAsync(IReadOnlyList<string?[]> documents, string from, string to);

    /// <summary>A small remembered text, such as the cursor; null where there is none.</summary>
    Task<string?> MarkAsync(string id, string? value = null);

    /// <summary>Removes the documents that came from the office or went there; what waits to be sent, files and marks stay.</summary>
    Task ForgetAsync();

    /// <summary>Files the office does not have yet.</summary>
    Task<string[]> UnsentFilesAsync();

    /// <summary>Queues an operation whose values stand here already. One that waits already is not queued twice, nor a whole document behind a change of it that waits.</summary>
    /// <param name="documentId">Document.</param>
    /// <param name="operationJson">The operation.</param>
    /// <param name="expected">The document it was made of. Where another stands by now nothing is queued: what was typed over must not go out again.</param>
    /// <returns>Whether it was queued; null where another document stands: read again.</returns>
    Task<bool?> QueueAsync(Guid documentId, string operationJson, string expected);

    /// <summary>Takes files for ones that the office does not have.</summary>
    /// <param name="only">Their SHA-256; null for every file.</param>
    /// <returns>Whether any is kept here and had been sent.</returns>
    Task<bool> ForgetSentFilesAsync(IReadOnlyList<string>? only = null);
}

/// <summary>Answer of the office.</summary>
/// <param name="Status">HTTP status; 0 where there was no answer.</param>
/// <param name="Text">Body.</param>
public sealed record OfficeAnswer(int Status, string Text);

/// <summary>The office: the server that keeps everybody's documents.</summary>
public interface IOffice
{
    /// <summary>Sends operations.</summary>
    Task<OfficeAnswer> SendAsync(string operationsJson, string language);

    /// <summary>Sends a kept file; the HTTP status, 0 where there was no answer.</summary>
    Task<int> SendFileAsync(string sha256);

    /// <summary>Documents changed after a cursor.</summary>
    /// <param name="cursor">Where the last answer ended; empty for the start.</param>
    /// <param name="seen">Place of what this device sent last; empty for nothing.</param>
    Task<OfficeAnswer> ChangesAsync(string cursor, string seen);

    /// <summary>Every change of a document.</summary>
    Task<OfficeAnswer> HistoryAsync(Guid id);
}
