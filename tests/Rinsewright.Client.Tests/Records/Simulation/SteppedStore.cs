using Rinsewright.Client.Records;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Tests.Records.Simulation;

/// <summary>The store as one tab calls it: the call stops before it is done and before it is answered, and the tab may die at either.</summary>
internal sealed class SteppedStore(World world, KeptStore kept, ProgramVersion program, Func<bool> alive) : IDeviceStore
{
    public Task<string[]> ReadForChangeAsync(Guid id) =>
        StepAsync(() => kept.ReadForChange(id) is var read ? Array.ConvertAll(read, program.Read) : read);

    public Task<bool> ChangeAsync(
        Guid id,
        string expected,
        string lineJson,
        string documentJson,
        string? operationJson,
        string? replaces
    ) => StepAsync(() => kept.Change(id, program.Written(expected), program.Written(documentJson), Written(operationJson), replaces));

    public Task SaveAsync(Guid id, string lineJson, string documentJson, string? operationJson) =>
        StepAsync(() => kept.Save(id, program.Written(documentJson), Written(operationJson)!));

    public Task DeleteAsync(Guid id, string? operationJson) => StepAsync(() => kept.Save(id, null, Written(operationJson)!));

    public Task<string?> ReadAsync(Guid id) =>
        StepAsync(() => kept.Documents.GetValueOrDefault(id) is { } text ? program.Read(text) : null);

    public Task<string> ListAsync(string kind) => StepAsync(() => kept.List(kind));

    public Task<string> LastVisitsAsync() => ListAsync(Kinds.Visit);

    public async Task<string[]> DayLinesAsync(string until, IReadOnlyList<string> standings, IReadOnlyList<Guid> named) =>
        [await ListAsync(Kinds.Kitchen), await ListAsync(Kinds.Visit), await ListAsync(Kinds.Visit)];

    public Task<bool> TakeOverAsync(IReadOnlyList<string?[]> documents, string from, string to) =>
        StepAsync(() => kept.TakeOver([.. documents.Select(d => (Guid.Parse(d[0]!), Written(d[2])))], from, to));

    public Task<int> WaitingAsync() => Task.FromResult(kept.Waiting);

    public Task<string> TakeAsync(int most) => StepAsync(() => program.Read(kept.Take(most)));

    public Task TrimAsync(string mark, string seen, string keep) => StepAsync(() => kept.Trim(mark, seen, keep));

    public Task SettleAsync(IReadOnlyList<string> operationIds, string mark, string word) =>
        StepAsync(() => kept.Settle(operationIds, mark, word));

    public Task<string?> MarkAsync(string id, string? value = null) => StepAsync(() => kept.Mark(id, value));

    public Task<bool?> QueueAsync(Guid documentId, string operationJson, string expected) =>
        StepAsync(() => kept.Queue(documentId, program.Written(operationJson), program.Written(expected)));

    /// <summary>Keeps a logger's file, as a person gives it.</summary>
    public Task KeepFileAsync(string sha256) => StepAsync(() => kept.KeepFile(sha256));

    public Task<string[]> UnsentFilesAsync() => StepAsync(kept.UnsentFiles);

    public Task<bool> ForgetSentFilesAsync(IReadOnlyList<string>? only = null) => StepAsync(() => kept.ForgetSentFiles(only));

    // Nobody changes the account in these histories.
    public Task ForgetAsync() => throw new NotSupportedException();

    public Task<string[]> RefusedAsync(bool again) => Task.FromResult(Array.Empty<string>());

    public Task RefuseAsync(IReadOnlyDictionary<string, string> reasons) =>
        throw new BrokenException("refused: " + string.Join(", ", reasons.Values));

    private string? Written(string? text) => text is null ? null : program.Written(text);

    private Task StepAsync(Action call) =>
        StepAsync(() =>
        {
            call();
            return true;
        });

    private async Task<T> StepAsync<T>(Func<T> call)
    {
        await world.StopAsync(alive);
        var answer = call();
        await world.StopAsync(alive);
        return answer;
    }
}
