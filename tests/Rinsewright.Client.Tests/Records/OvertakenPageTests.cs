using System.Text.Json;
using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;
using Rinsewright.Client.Tests.Records.Simulation;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Xunit;

namespace Rinsewright.Client.Tests.Records;

/// <summary>Two tabs fetch at once. The slower one's page is older than what stands here by then: taken over, it would stand for ever should the tab be closed before the place it reached was written.</summary>
public sealed class OvertakenPageTests
{
    private static readonly Guid Id = new("01993a00-00b1-7000-8000-000000000002");

    [Fact]
    public async Task A_page_that_another_tab_has_overtaken_is_not_taken_over()
    {
        var store = new MemoryStore();
        var (late, soon) = (new PagedOffice(), new PagedOffice());
        var (slow, fast) = (Tab(store, late), Tab(store, soon));

        var slowly = slow.RunAsync();
        soon.Answer("Saltbox, as it stands", "2");
        await fast.RunAsync();
        Assert.Equal("Saltbox, as it stands", Stands(store));

        // The old page comes; the office is asked again from where the other tab has come to.
        late.Answer("Saltbox, as it was", "1");
        Assert.Equal("Saltbox, as it stands", Stands(store));
        late.Answer(null, "2");
        await slowly;
        Assert.Equal(["", "2"], late.Asked);
        Assert.Equal("Saltbox, as it stands", Stands(store));
        Assert.Equal("2", await store.MarkAsync("cursor"));
        Assert.True(slow.Arrived > 0); // its screens read again what the other tab brought
    }

    private static string Stands(MemoryStore store) =>
        JsonSerializer.Deserialize(store.Documents[Id], ContractsJson.Default.ProofDocument)!.Kitchen;

    private static Synchronizer Tab(MemoryStore store, IOffice office)
    {
        var preferences = new Preferences(new MemoryDevice());
        return new Synchronizer(store, office, new Work(store, preferences, TimeProvider.System), preferences, TimeProvider.System);
    }

    // Answers each question when the test says so.
    private sealed class PagedOffice : IOffice
    {
        private readonly List<TaskCompletionSource<OfficeAnswer>> answers = [new(), new(), new()];
        private int answered;

        public List<string> Asked { get; } = [];

        public void Answer(string? kitchen, string cursor)
        {
            var proof = Histories.Proof(Id) with { Kitchen = kitchen ?? "" };
            Change[] items = kitchen is null ? [] : [new Change(Id, Kinds.Proof, "put", proof.At, "", false, 1, proof)];
            var text = JsonSerializer.Serialize(new Changes(items, cursor, false, false), ContractsJson.Default.Changes);
            answers[answered++].SetResult(new OfficeAnswer(200, text));
        }

        public Task<OfficeAnswer> ChangesAsync(string cursor, string seen)
        {
            Asked.Add(cursor);
            return answers[Asked.Count - 1].Task;
        }

        public Task<OfficeAnswer> SendAsync(string operationsJson, string language) => throw new NotSupportedException();

        public Task<int> SendFileAsync(string sha256) => throw new NotSupportedException();

        public Task<OfficeAnswer> HistoryAsync(Guid id) => throw new NotSupportedException();
    }
}
