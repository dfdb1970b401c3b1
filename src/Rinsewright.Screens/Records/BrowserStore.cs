using System.Text.Json;
using Microsoft.JSInterop;
using Rinsewright.Client.Shell;

namespace Rinsewright.Client.Records;

/// <summary>The store in the browser's IndexedDB.</summary>
public sealed class BrowserStore(IJSRuntime js) : IDeviceStore
{
    private readonly ScriptModule module = new(js, "./js/store.js");

    /// <inheritdoc/>
    public Task SaveAsync(Guid id, string lineJson, string documentJson, string? operationJson) =>
        module.CallAsync("save", id, lineJson, documentJson, operationJson);

    /// <inheritdoc/>
    public Task DeleteAsync(Guid id, string? operationJson) => module.CallAsync("remove", id, operationJson);

    /// <inheritdoc/>
    public Task<string?> ReadAsync(Guid id) => module.GetAsync<string?>("read", id);

    /// <inheritdoc/>
    public Task<string> ListAsync(string kind) => module.GetAsync<string>("list", kind);

    /// <inheritdoc/>
    public Task<string> LastVisitsAsync() => module.GetAsync<string>("lastVisits");

    /// <inheritdoc/>
    public Task<string[]> DayLinesAsync(string until, IReadOnlyList<string> standings, IReadOnlyList<Guid> named) =>
        module.GetAsync<string[]>("dayLines", until, standings, named);

    /// <inheritdoc/>
    public Task<string[]> ReadForChangeAsync(Guid id) => module.GetAsync<string[]>("readForChange", id);

    /// <inheritdoc/>
    public Task<bool> ChangeAsync(
        Guid id,
        string expected,
        string lineJson,
        string documentJson,
        string? operationJson,
        string? replaces
    ) => module.GetAsync<bool>("change", id, expected, lineJson, documentJson, operationJson, replaces);

    /// <inheritdoc/>
    public Task<int> WaitingAsync() => module.GetAsync<int>("waiting");

    /// <inheritdoc/>
    public Task<string> TakeAsync(int most) => module.GetAsync<string>("take", most);

    /// <inheritdoc/>
    public Task SettleAsync(IReadOnlyList<string> operationIds, string mark, string word) =>
        module.CallAsync("settle", operationIds, mark, word);

    /// <inheritdoc/>
    public Task TrimAsync(string mark, string seen, string keep) => module.CallAsync("trim", mark, seen, keep);

    /// <inheritdoc/>
    public Task RefuseAsync(IReadOnlyDictionary<string, string> reasons) =>
        module.CallAsync("refuse", JsonSerializer.Serialize(reasons, ClientJson.Default.IReadOnlyDictionaryStringString));

    /// <inheritdoc/>
    public Task<string[]> RefusedAsync(bool again) => module.GetAsync<string[]>("refused", again);

    /// <inheritdoc/>
    public Task<bool> TakeOverAsync(IReadOnlyList<string?[]> documents, string from, string to) =>
        module.GetAsync<bool>("takeOver", documents, from, to);

    /// <inheritdoc/>
    public Task<string?> MarkAsync(string id, string? value = null) => module.GetAsync<string?>("mark", id, value);

    /// <inheritdoc/>
    public Task ForgetAsync() => module.CallAsync("forget");

    /// <inheritdoc/>
    public Task<string[]> UnsentFilesAsync() => module.GetAsync<string[]>("unsentFiles");

    /// <inheritdoc/>
    public Task<bool?> QueueAsync(Guid documentId, string operationJson, string expected) =>
        module.GetAsync<bool?>("queue", documentId, operationJson, expected);

    /// <inheritdoc/>
    public Task<bool> ForgetSentFilesAsync(IReadOnlyList<string>? only = null) => module.GetAsync<bool>("forgetSentFiles", only);
}

/// <summary>The office over the browser's fetch.</summary>
public sealed class BrowserOffice(IJSRuntime js) : IOffice
{
    private readonly ScriptModule module = new(js, "./js/office.js");

    /// <inheritdoc/>
    public Task<OfficeAnswer> SendAsync(string operationsJson, string language) =>
        module.GetAsync<OfficeAnswer>("send", operationsJson, language);

    /// <inheritdoc/>
    public Task<int> SendFileAsync(string sha256) => module.GetAsync<int>("sendFile", sha256);

    /// <inheritdoc/>
    public Task<OfficeAnswer> ChangesAsync(string cursor, string seen) => module.GetAsync<OfficeAnswer>("changes", cursor, seen);

    /// <inheritdoc/>
    public Task<OfficeAnswer> HistoryAsync(Guid id) => module.GetAsync<OfficeAnswer>("history", id);
}
