using System.Text.Json;
using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Xunit;

namespace Rinsewright.Client.Tests.Records;

/// <summary>The office was put back to an older copy: the device notices and sends again what is missing there, and nothing else.</summary>
public sealed class RestoredOfficeTests
{
    private static readonly Guid Kitchen = new("01993a00-0001-7000-8000-7a6d617261c1");
    private static readonly Guid Other = new("01993a00-0002-7000-8000-7a6d617261c1");
    private static readonly DateTimeOffset Made = new(2026, 11, 24, 9, 0, 0, TimeSpan.FromHours(-7));

    [Fact]
    public async Task What_the_office_lost_is_sent_again_with_the_ids_it_had()
    {
        var (store, office, work, synchronizer) = await DeviceAsync();
        await work.SetAsync(Kinds.Kitchen, Kitchen, KitchenPaths.Name, "Larkspur Lodge");
        await synchronizer.RunAsync();
        var copy = office.Copy();
        await work.SetAsync(Kinds.Kitchen, Kitchen, KitchenPaths.Note, "ring at the dock");
        await work.SetAsync(Kinds.Kitchen, Other, KitchenPaths.Name, "Tin Bell Diner");
        await synchronizer.RunAsync();
        var lost = office.Kept.Skip(1).ToList();

        office.Restore(copy);
        await synchronizer.RunAsync();

        Assert.Equal(2, synchronizer.QueuedAgain);
        Assert.Equal(lost.Select(o => o.Id).Order(), office.Kept.Skip(1).Select(o => o.Id).Order());
        Assert.Equal(lost.Select(o => o.Author).Order(), office.Kept.Skip(1).Select(o => o.Author).Order());
        Assert.Equal("ring at the dock", office.Documents[Kitchen][KitchenPaths.Note]);
        Assert.Equal(0, await store.WaitingAsync());
        Assert.Equal(1, store.FilesForgotten);

        // Once is enough.
        await synchronizer.RunAsync();
        Assert.Equal(2, synchronizer.QueuedAgain);
    }

    [Fact]
    public async Task A_line_that_breaks_in_the_middle_begins_anew()
    {
        var (store, office, work, synchronizer) = await DeviceAsync();
        await work.SetAsync(Kinds.Kitchen, Kitchen, KitchenPaths.Name, "Larkspur Lodge");
        await synchronizer.RunAsync();
        office.Restore(new OfficeCopy([], new Dictionary<Guid, FieldDocument>()));
        office.AnswersLeft = 1; // it says that it was restored, and then no more

        await synchronizer.RunAsync();
        Assert.Equal((0, false), (synchronizer.QueuedAgain, synchronizer.Reached));
        Assert.Equal(0, await store.WaitingAsync());

        office.AnswersLeft = int.MaxValue;
        await synchronizer.RunAsync();
        Assert.Equal("Larkspur Lodge", office.Documents[Kitchen][KitchenPaths.Name]);
    }

    [Fact]
    public async Task A_proof_that_is_missing_or_older_there_is_sent_and_one_that_is_the_same_is_not()
    {
        var (store, _, work, _) = await DeviceAsync();
        var (missing, older, same) = (Proof("missing"), Proof("older"), Proof("same"));
        foreach (var proof in new[] { missing, older, same })
        {
            await work.SaveAsync(proof);
        }

        await store.SettleAsync([.. Sent(await store.TakeAsync(9)).Select(o => o.Id.ToString())], "", "");
        var written = Made.AddHours(3);
        Change Has(ProofDocument p) => new(p.Id, Kinds.Proof, "put", written, "Ruth Ames", false, 1, p);

        var queued = await work.QueueAgainAsync(
            new Dictionary<Guid, Change> { [older.Id] = Has(older with { Note = "as it was" }), [same.Id] = Has(same) }
        );

        Assert.Equal(2, queued);
        var sent = Sent(await store.TakeAsync(9)).ToDictionary(o => o.DocumentId);
        Assert.Equal(new[] { missing.Id, older.Id }.Order(), sent.Keys.Order());
        // Later than what the office was put back to, earlier than whatever somebody writes from now on.
        Assert.Equal(Made, sent[missing.Id].At);
        Assert.Equal(written.AddMilliseconds(1), sent[older.Id].At);
        Assert.Equal("older", sent[older.Id].Proof!.Note);
    }

    [Fact]
    public async Task What_waits_already_is_not_queued_twice()
    {
        var (store, _, work, _) = await DeviceAsync();
        await work.SetAsync(Kinds.Kitchen, Kitchen, KitchenPaths.Name, "Larkspur Lodge");
        await work.SaveAsync(Proof("new"));

        Assert.Equal(0, await work.QueueAgainAsync(new Dictionary<Guid, Change>()));
        Assert.Equal(2, await store.WaitingAsync());
    }

    private static ProofDocument Proof(string note) =>
        new(
            Guid.CreateVersion7(),
            ProofDocument.CurrentVersion,
            "Larkspur Lodge",
            "",
            "Ruth Ames",
            Made,
            new ProofRequest(),
            new ProofReport(
                ProofReport.CurrentSchema,
                null,
                0,
                0,
                [],
                [],
                [],
                [],
                [],
                [],
                "undetermined",
                [],
                [],
                [],
                [],
                new TermsDto("multitankConveyor", "hotWater", "fda-food-code", "", "", null, new AmountDto(3, "[degF]"), false, null, null)
            ),
            [],
            note
        );

    private static IReadOnlyList<Operation> Sent(string json) =>
        JsonSerializer.Deserialize(json, ContractsJson.Default.IReadOnlyListOperation)!;

    private static async Task<(MemoryStore, NumberedOffice, Work, Synchronizer)> DeviceAsync()
    {
        var (store, office, preferences) = (new MemoryStore(), new NumberedOffice(), new Preferences(new MemoryDevice()));
        await preferences.ChangeAsync(s => s with { Technician = "Ruth Ames", Device = "tablet" });
        var work = new Work(store, preferences, TimeProvider.System);
        return (store, office, work, new Synchronizer(store, office, work, preferences, TimeProvider.System));
    }

    private sealed record OfficeCopy(IReadOnlyList<Operation> Kept, IReadOnlyDictionary<Guid, FieldDocument> Documents);

    /// <summary>An office of documents of fields that gives its changes by number, as the server does.</summary>
    private sealed class NumberedOffice : IOffice
    {
        public List<Operation> Kept { get; private set; } = [];

        public Dictionary<Guid, FieldDocument> Documents { get; private set; } = [];

        public int AnswersLeft { get; set; } = int.MaxValue;

        public OfficeCopy Copy() => new([.. Kept], new Dictionary<Guid, FieldDocument>(Documents));

        public void Restore(OfficeCopy copy) => (Kept, Documents) = ([.. copy.Kept], new(copy.Documents));

        public Task<OfficeAnswer> SendAsync(string operationsJson, string language)
        {
            var operations = JsonSerializer.Deserialize(operationsJson, ContractsJson.Default.IReadOnlyListOperation)!;
            foreach (var o in operations.Where(o => !Kept.Exists(k => k.Id == o.Id)))
            {
                Kept.Add(o);
                Documents[o.DocumentId] = Documents.GetValueOrDefault(o.DocumentId, FieldDocument.Empty(o.DocumentId, o.Kind)).With(o);
            }

            var results = new OperationResults([.. operations.Select(o => new OperationResult(o.Id, "applied", Kept.Count, false))]);
            return Task.FromResult(new OfficeAnswer(200, JsonSerializer.Serialize(results, ContractsJson.Default.OperationResults)));
        }

        public Task<OfficeAnswer> ChangesAsync(string cursor, string seen)
        {
            if (AnswersLeft-- <= 0)
            {
                return Task.FromResult(new OfficeAnswer(0, ""));
            }

            var restarted = cursor.Length > 0 && int.Parse(cursor, System.Globalization.CultureInfo.InvariantCulture) > Kept.Count;
            var changes = new Changes(
                [.. Documents.Values.Select(d => new Change(d.Id, d.Kind, "put", Made, "", false, 1, null, d))],
                Kept.Count.ToString(System.Globalization.CultureInfo.InvariantCulture),
                false,
                restarted
            );
            return Task.FromResult(new OfficeAnswer(200, JsonSerializer.Serialize(changes, ContractsJson.Default.Changes)));
        }

        public Task<int> SendFileAsync(string sha256) => Task.FromResult(201);

        public Task<OfficeAnswer> HistoryAsync(Guid id) => Task.FromResult(new OfficeAnswer(404, ""));
    }
}
