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
                queued += await QueueMissingAsync(
                    async () => (await store.ReadForChangeAsync(line.Id))[0],
                    text =>
                        Read(text)!
                            .MissingAt(
                                office.GetValueOrDefault(line.Id)?.Document ?? FieldDocument.Empty(line.Id, kind),
                                preferences.Settings.Device
                            )
                            .Select(o => (o.DocumentId, JsonSerializer.Serialize(o, ContractsJson.Default.Operation)))
                );
            }
        }

        foreach (var line in await ListAsync())
        {
            queued += await QueueMissingAsync(
                async () => await store.ReadAsync(line.Id) ?? "",
                text =>
                {
                    if (
                        Missing(JsonSerializer.Deserialize(text, ContractsJson.Default.ProofDocument)!, office.GetValueOrDefault(line.Id))
                        is not { } o
                    )
                    {
                        return [];
                    }

                    // As it stands here: of a later program's there may be more in it than this one knows.
                    var json = JsonSerializer.Serialize(o with { Proof = null }, ContractsJson.Default.Operation);
                    return [(line.Id, $"{json[..^1]},\"proof\":{text}}}")];
                }
            );
        }

        await store.ForgetSentFilesAsync();
        await CountAsync();
        return queued;
    }

    // Of a document that is written meanwhile what was read is queued no more: it is read again.
    private async Task<int> QueueMissingAsync(Func<Task<string>> read, Func<string, IEnumerable<(Guid Document, string Operation)>> missing)
    {
        var queued = 0;
        for (var same = false; !same; )
        {
            same = true;
            var text = await read();
            foreach (var (document, operation) in text.Length > 0 ? missing(text) : [])
            {
                if (await store.QueueAsync(document, operation, text) is not { } added)
                {
                    same = false;
                    break;
                }

                queued += added ? 1 : 0;
            }
        }

        return queued;
    }

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
