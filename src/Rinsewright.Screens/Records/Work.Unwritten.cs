using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Records;

// A page that is closed cannot wait for the store. What it has not written it leaves where that takes no time, and the next page writes it.
public sealed partial class Work
{
    /// <summary>What is being written, by document, as another page would have to write it; asked only when this one is closed.</summary>
    public Dictionary<Guid, Func<Operation>> Unwritten { get; } = [];

    /// <summary>What a page that is closed leaves to the next; null where everything is written.</summary>
    public string? Leave() =>
        Unwritten.Count > 0
            ? JsonSerializer.Serialize(Unwritten.Values.Select(u => u()).ToArray(), ContractsJson.Default.IReadOnlyListOperation)
            : null;

    /// <summary>A document as it is left; of one of fields they are still to be said.</summary>
    public Operation Left(string kind, Guid id, ProofDocument? proof) =>
        new(id, kind, id, "", "", clock.GetLocalNow(), "", proof, Account: preferences.Settings.Account);
}
