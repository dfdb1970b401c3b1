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

    /// <summary>The lines of all documents.</summary>
    Task<string> ListAsync();

    /// <summary>Operations that wait to be sent.</summary>
    Task<int> WaitingAsync();

    /// <summary>Marks the first operations as on their way and returns them.</summary>
    Task<string> TakeAsync(int most);

    /// <summary>Removes operations the office has answered.</summary>
    Task SettleAsync(IReadOnlyList<string> operationIds);

    /// <summary>Keeps operations the office has refused, with its reasons by operation id; they are not taken again until asked for.</summary>
    Task RefuseAsync(IReadOnlyDictionary<string, string> reasons);

    /// <summary>Reasons of what was refused.</summary>
    /// <param name="again">Lets it be taken once more.</param>
    Task<string[]> RefusedAsync(bool again);

    /// <summary>Takes over what the office has (nulls: it was deleted), unless a change made here waits; looked up and written in one transaction.</summary>
    Task TakeOverAsync(Guid documentId, string? lineJson, string? documentJson);

    /// <summary>A small remembered text, such as the cursor; null where there is none.</summary>
    Task<string?> MarkAsync(string id, string? value = null);

    /// <summary>Files the office does not have yet.</summary>
    Task<string[]> UnsentFilesAsync();
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
    Task<OfficeAnswer> ChangesAsync(string cursor);
}
