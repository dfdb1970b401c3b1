using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Records;

// The office was restored from an older copy, or is another one: what it lost is still on the devices.
public sealed partial class Work
{
    /// <summary>Queues again what the office does not have any more. What it has is left alone.</summary>
    /// <param name="office">Everything it has, by document.</param>
    /// <returns>How many changes were queued.</returns>
    public async Task<int> QueueAgainAsync(IReadOnlyDictionary<Guid, Change> office)
    {
        var queued = 0;
        foreach (var kind in Kinds.OfFields)
        {
            foreach (var line in JsonSerializer.Deserialize(await store.ListAsync(kind), ClientJson.Default.RecordLineArray) ?? [])
            {
                if (await OpenFieldsAsync(line.Id) is { } document)
                {
                    foreach (
                        var operation in document.MissingAt(
                            office.GetValueOrDefault(line.Id)?.Document ?? FieldDocument.Empty(line.Id, kind),
                            preferences.Settings.Device
                        )
                    )
                    {
                        queued += await QueueAsync(operation) ? 1 : 0;
                    }
                }
            }
        }

        foreach (var line in await ListAsync())
        {
            if (
                await store.ReadAsync(line.Id) is { } text
                && JsonSerializer.Deserialize(text, ContractsJson.Default.ProofDocument) is { } proof
                && Missing(proof, office.GetValueOrDefault(line.Id)) is { } operation
            )
            {
                // As it stands here: of a later program's there may be more in it than this one knows.
                var json = JsonSerializer.Serialize(operation with { Proof = null }, ContractsJson.Default.Operation);
                queued += await store.QueueAsync(line.Id, $"{json[..^1]},\"proof\":{text}}}") ? 1 : 0;
            }
        }

        await store.ForgetSentFilesAsync();
        await CountAsync();
        return queued;
    }

    private Task<bool> QueueAsync(Operation operation) =>
        store.QueueAsync(operation.DocumentId, JsonSerializer.Serialize(operation, ContractsJson.Default.Operation));

    // Older than any later change of somebody else, and just later than what the office was put back to.
    private Operation? Missing(ProofDocument proof, Change? change) =>
        change?.Proof is { } kept && Text(kept) == Text(proof)
            ? null
            : new Operation(
                NewId(),
                Kinds.Proof,
                proof.Id,
                proof.Technician,
                preferences.Settings.Device,
                change?.At.AddMilliseconds(1) ?? proof.At,
                "put",
                proof,
                Again: true
            );
}
