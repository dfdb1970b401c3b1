using Rinsewright.Client.Records;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Machines;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Kitchens;

/// <summary>Names of kitchens and machines as they are shown.</summary>
public static class KitchenWords
{
    /// <summary>Name of a kitchen.</summary>
    public static string Kitchen(string name, Words words) => name.Length > 0 ? name : words["client.saved.no-kitchen"];

    /// <summary>Name of a machine; its kind where it has none.</summary>
    public static string Machine(RecordLine machine, Words words) =>
        machine.Name.Length > 0 ? machine.Name
        : MachineFile.Kind(machine.About) is { } kind ? MachineWords.Kind(kind, words)
        : words["client.nav.machine"];

    /// <summary>Name of a machine with its kitchen.</summary>
    public static string Machine(RecordLine machine, IReadOnlyList<RecordLine> kitchens, Words words) =>
        kitchens.FirstOrDefault(k => k.Id == machine.Kitchen) is { } kitchen
            ? $"{Machine(machine, words)}, {Kitchen(kitchen.Name, words)}"
            : Machine(machine, words);

    /// <summary>A day.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>What is searched in: the kitchen, its address, its machines.</summary>
    public static string Text(RecordLine kitchen, IEnumerable<RecordLine> machines, Words words) =>
        Forgiving.Fold(
            string.Join(
                ' ',
                [
                    kitchen.Name,
                    kitchen.About,
                    .. machines.Select(m =>
                        m.Name + ' ' + (MachineFile.Kind(m.About) is { } kind ? MachineWords.Kind(kind, words) : m.About)
                    ),
                ]
            )
        );
}

/// <summary>How a kitchen stands: the worst of the last proofs of its machines.</summary>
public sealed class KitchenState
{
    /// <summary>Verdict; null where there is no proof.</summary>
    public string? Verdict { get; private init; }

    /// <summary>The last proof; null for none.</summary>
    public ProofLine? Last { get; private init; }

    /// <summary>Last proof of each machine that is not proven.</summary>
    public IReadOnlyList<ProofLine> Failed { get; private init; } = [];

    /// <summary>Shape and colour.</summary>
    public string Kind => Verdict is null ? "none" : Parts.StatusKind.OfOutcome(Verdict);

    /// <summary>The word.</summary>
    public string Word(Words words) => Verdict is null ? words["client.kitchen.no-proof"] : words["outcome." + Shell.Voice.Kebab(Verdict)];

    /// <summary>Proofs of each kitchen, in their order: by its id, or by its name where that alone was typed.</summary>
    public static Dictionary<Guid, List<ProofLine>> ByKitchen(IReadOnlyList<RecordLine> kitchens, IReadOnlyList<ProofLine> proofs)
    {
        var byName = new Dictionary<string, Guid>();
        var found = new Dictionary<Guid, List<ProofLine>>();
        foreach (var kitchen in kitchens)
        {
            byName.TryAdd(Forgiving.Fold(kitchen.Name), kitchen.Id);
            found[kitchen.Id] = [];
        }

        foreach (var proof in proofs)
        {
            var id = proof.KitchenId ?? (byName.TryGetValue(Forgiving.Fold(proof.Kitchen), out var named) ? named : Guid.Empty);
            if (found.TryGetValue(id, out var list))
            {
                list.Add(proof);
            }
        }

        return found;
    }

    /// <summary>Of its proofs, the latest first.</summary>
    public static KitchenState Of(IEnumerable<ProofLine> proofs)
    {
        var lasts = new List<ProofLine>();
        foreach (var proof in proofs)
        {
            // One machine: by its id, else by its name.
            if (
                !lasts.Exists(l =>
                    l.MachineId is { } a && proof.MachineId is { } b ? a == b : Forgiving.Fold(l.Machine) == Forgiving.Fold(proof.Machine)
                )
            )
            {
                lasts.Add(proof);
            }
        }

        return new()
        {
            Verdict =
                lasts.Count == 0 ? null
                : lasts.Exists(l => l.Verdict == "notProven") ? "notProven"
                : lasts.Exists(l => l.Verdict != "proven") ? "undetermined"
                : "proven",
            Last = lasts.FirstOrDefault(),
            Failed = lasts.FindAll(l => l.Verdict == "notProven"),
        };
    }
}
