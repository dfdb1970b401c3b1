using System.Text.Json;
using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;
using Rinsewright.Client.Tests.Records.Simulation;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Xunit;

namespace Rinsewright.Client.Tests.Records;

/// <summary>A proof of a later program on a device that does not know everything in it yet, and a server that asks for a file.</summary>
public sealed class LaterProgramTests
{
    private static readonly Guid Id = new("01993a00-00b1-7000-8000-000000000001");

    [Fact]
    public async Task It_is_kept_as_it_came_and_not_written_over()
    {
        var (store, preferences) = (new MemoryStore(), new Preferences(new MemoryDevice()));
        var work = new Work(store, preferences, TimeProvider.System);
        var proof = Proof(ProofDocument.CurrentVersion + 1);
        var sent = JsonSerializer.Serialize(proof, ContractsJson.Default.ProofDocument)[..^1] + ""","seal":{"kind":"wax"}}""";
        await work.TakeOneOverAsync(new Change(Id, Kinds.Proof, "put", proof.At, "", false, 1, proof), sent);
        Assert.Equal(sent, store.Documents[Id]);
        Assert.Equal("Larkspur", Assert.Single(await work.ListAsync()).Kitchen);

        // Neither the one that is open, nor one that was open when it came.
        foreach (var now in new[] { (await work.OpenAsync(Id))!, Proof(ProofDocument.CurrentVersion) })
        {
            await work.SaveAsync(now with { Kitchen = "Saltbox" });
            Assert.Equal(preferences.Words["client.saved.newer"], work.Trouble);
            Assert.Equal((sent, 0), (store.Documents[Id], await store.WaitingAsync()));
        }

        // Deleted it could not be brought back whole.
        Assert.Null(await work.DeleteAsync(Id));
        Assert.Equal((sent, 0), (store.Documents[Id], await store.WaitingAsync()));
    }

    [Fact]
    public async Task A_file_the_office_asks_for_counts_as_not_sent_before_the_operation_is_let_go()
    {
        var (store, preferences) = (new MemoryStore(), new Preferences(new MemoryDevice()));
        var work = new Work(store, preferences, TimeProvider.System);
        var office = new MemoryOffice { Wants = ["ab"] };
        await work.SaveAsync(Proof(ProofDocument.CurrentVersion));
        await new Synchronizer(store, office, work, preferences, TimeProvider.System).RunAsync();
        Assert.Equal(["ab"], store.Wanted);
        Assert.Equal(0, await store.WaitingAsync());
        Assert.Equal(["wanted", "settled"], store.Calls.Where(c => c is "wanted" or "settled").Take(2));
        Assert.Equal(["ab"], office.Files);
    }

    private static ProofDocument Proof(int version) => Histories.Proof(Id) with { Version = version };
}
