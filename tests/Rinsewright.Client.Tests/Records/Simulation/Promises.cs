using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Tests.Records.Simulation;

/// <summary>What holds in the end, whatever happened; worked out from what was saved, not from what was joined on the way.</summary>
internal static class Promises
{
    /// <summary>What is broken; null where nothing is.</summary>
    public static string? Broken(World world, SimulatedOffice office, List<Device> devices)
    {
        if (devices.Exists(d => d.Kept.Waiting > 0 || d.Kept.FilesWait))
        {
            return "something waits although everybody has a signal";
        }

        return BrokenProof(office, devices)
            ?? (
                office.Restored
                    ? BrokenAfterRestoring(world, office, devices)
                    : BrokenOperation(world, office) ?? BrokenStanding(office, devices)
            );
    }

    private static string? BrokenOperation(World world, SimulatedOffice office)
    {
        if (world.Acknowledged.FirstOrDefault(id => !office.Operations.ContainsKey(id)) is var lost && lost != Guid.Empty)
        {
            return $"acknowledged and not there: {lost}";
        }

        foreach (var (id, saved) in world.Saved)
        {
            if (!office.Operations.TryGetValue(id, out var kept) || Text(kept) != Text(saved))
            {
                return $"saved and not there as it was saved: {id}";
            }
        }

        return office.Operations.Keys.FirstOrDefault(id => !world.Saved.ContainsKey(id)) is var strange && strange != Guid.Empty
            ? $"there although nobody saved it, or it was replaced before it left: {strange}"
            : null;
    }

    private static string? BrokenStanding(SimulatedOffice office, List<Device> devices)
    {
        foreach (var (id, stands) in office.Documents)
        {
            var operations = office.Operations.Values.Where(o => o.DocumentId == id).ToList();
            if (stands.Versions != operations.Count)
            {
                return $"{operations.Count} changes, applied {stands.Versions} times";
            }

            if (stands.Document is not { } document)
            {
                // The later writer stands; nobody writes later than it came.
                var last = operations
                    .OrderBy(o => Math.Min(o.At.ToUnixTimeMilliseconds(), office.Received[o.Id].ToUnixTimeMilliseconds()))
                    .ThenBy(o => o.Id)
                    .Last();
                if (last.Id != stands.Writer!.Id)
                {
                    return $"of a proof {stands.Writer.Id} stands, not the latest, {last.Id}";
                }

                continue;
            }

            if (Stands(operations) is var expected && expected != string.Join('|', document.Fields.Select(f => $"{f.Key}={f.Value.Value}")))
            {
                return $"what stands is not the latest: {expected}";
            }

            if (devices.Exists(d => d.Kept.Documents.GetValueOrDefault(id) != SimulatedOffice.Text(document)))
            {
                return $"a device has not come to the same: {id}";
            }
        }

        return null;
    }

    // Proofs are the same everywhere to the last character, with what only the later program knows; the files behind what stands are at the office.
    private static string? BrokenProof(SimulatedOffice office, List<Device> devices)
    {
        foreach (var (id, stands) in office.Documents.Where(d => Histories.IsProof(d.Key)))
        {
            var proof = stands.Writer!.Proof;
            if (proof is { Version: > 1, Note: null })
            {
                return $"a proof lost what only the later program knows: {id}";
            }

            var text = proof is null ? null : SimulatedOffice.Text(proof);
            if (devices.Find(d => d.Kept.Documents.GetValueOrDefault(id) != text) is { } apart)
            {
                return $"a device has another proof: {apart.Kept.Documents.GetValueOrDefault(id)} there, {text} at the office";
            }

            if (proof?.Files.FirstOrDefault(f => !office.Files.Contains(f.Sha256)) is { } missing)
            {
                return $"a proof is at the office without its file: {missing.Name}";
            }
        }

        return null;
    }

    // What was overwritten before the office lost it is nowhere any more; what stood stands again, and everybody sees the same values. Which other value is shown beside one may differ: a device
    // that had it from a fetch that was cut off before the restoration is told of nothing.
    private static string? BrokenAfterRestoring(World world, SimulatedOffice office, List<Device> devices)
    {
        foreach (var group in world.Saved.Values.GroupBy(o => o.DocumentId))
        {
            if (Histories.IsProof(group.Key))
            {
                if (group.All(o => o.Action == "put") && office.Documents.GetValueOrDefault(group.Key)?.Writer?.Proof is null)
                {
                    return $"a proof nobody deleted is gone: {group.Key}";
                }

                continue;
            }

            var stands = office.Documents.TryGetValue(group.Key, out var kept) ? Standing(SimulatedOffice.Text(kept.Document!)) : "nothing";
            if (Stands([.. group]) is var expected && expected != stands)
            {
                return $"after the office was put back {stands} stands, not {expected}";
            }

            if (devices.Find(d => Standing(d.Kept.Documents.GetValueOrDefault(group.Key)) != stands) is { } apart)
            {
                return $"a device has not come to the same: {apart.Kept.Documents.GetValueOrDefault(group.Key)} there, {stands} at the office";
            }
        }

        return null;
    }

    private static string Standing(string? document) =>
        document is null
            ? "nothing"
            : string.Join(
                '|',
                JsonSerializer.Deserialize(document, ContractsJson.Default.FieldDocument)!.Fields.Select(f => $"{f.Key}={f.Value.Value}")
            );

    // Worked out from all operations at once, not joined one by one.
    private static string Stands(List<Operation> operations) =>
        string.Join(
            '|',
            operations
                .SelectMany(o => o.Fields!.Select(f => (f.Path, f.Order, o.Id, f.Value)))
                .GroupBy(f => f.Path, StringComparer.Ordinal)
                .OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => $"{g.Key}={g.OrderBy(f => f.Order).ThenBy(f => f.Id).Last().Value}")
        );

    private static string Text(Operation operation) => JsonSerializer.Serialize(operation, ContractsJson.Default.Operation);
}
