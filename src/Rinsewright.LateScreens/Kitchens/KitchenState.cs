using System.Text.Json;
using Rinsewright.Client.Parts;
using Rinsewright.Client.Records;
using Rinsewright.Client.Visits;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Client.Kitchens;

/// <summary>How one machine stands by what was done at it last.</summary>
/// <param name="Kind">Shape and colour: <c>good</c>, <c>near</c>, <c>bad</c>.</param>
/// <param name="WordKey">Key of the word.</param>
/// <param name="At">When.</param>
/// <param name="MachineId">Machine; null where only its name was typed.</param>
/// <param name="Machine">Its name.</param>
/// <param name="Address">Screen of the proof or visit.</param>
public sealed record MachineState(string Kind, string WordKey, DateTimeOffset At, Guid? MachineId, string Machine, string Address)
{
    /// <summary>Of a proof.</summary>
    public static MachineState Of(ProofLine proof) =>
        new(
            StatusKind.OfOutcome(proof.Verdict),
            "outcome." + Shell.Voice.Kebab(proof.Verdict),
            proof.At,
            proof.MachineId,
            proof.Machine,
            $"proof/{proof.Id}"
        );

    /// <summary>Of a visit; null while it has not been judged.</summary>
    public static MachineState? Of(RecordLine visit) =>
        visit.At is { } at && Enum.TryParse<VisitStanding>(visit.About, ignoreCase: true, out var standing)
            ? new(VisitStandingPanel.Kind(standing), Wire.WordKey(standing), at, visit.Machine, visit.Name, $"visit/{visit.Id}")
            : null;
}

/// <summary>How a kitchen stands: the worst of its machines, each by its last proof or visit.</summary>
public sealed class KitchenState
{
    private static readonly string NothingProved = Wire.WordKey(VisitStanding.NotProved);

    /// <summary>The machine that stands worst; null where nothing was ever proved or visited.</summary>
    public MachineState? Worst { get; private init; }

    /// <summary>What was done last; null likewise.</summary>
    public MachineState? Last { get; private init; }

    /// <summary>Machines that must not be used or do not sanitize.</summary>
    public IReadOnlyList<MachineState> Bad { get; private init; } = [];

    /// <summary>Shape and colour.</summary>
    public string Kind => Worst?.Kind ?? "none";

    /// <summary>The word.</summary>
    public string Word(Words words) => words[Worst?.WordKey ?? "client.kitchen.no-proof"];

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

    /// <summary>Visits that say how machines stand, by kitchen: all that <see cref="Of"/> needs of them.</summary>
    public static async Task<ILookup<Guid?, RecordLine>> VisitsAsync(Work work) =>
        (JsonSerializer.Deserialize(await work.LastVisitsAsync(), ClientJson.Default.RecordLineArray) ?? [])
            .Where(v => !v.Deleted)
            .ToLookup(v => v.Kitchen);

    /// <summary>Of its proofs and visits.</summary>
    public static KitchenState Of(IEnumerable<ProofLine> proofs, IEnumerable<RecordLine> visits)
    {
        var lasts = new List<MachineState>();
        var all = proofs.Select(MachineState.Of).Concat(visits.Select(MachineState.Of).OfType<MachineState>());
        foreach (var state in all.OrderByDescending(s => s.At))
        {
            // One machine: by its id, else by its name.
            var at = lasts.FindIndex(l =>
                l.MachineId is { } a && state.MachineId is { } b ? a == b : Forgiving.Fold(l.Machine) == Forgiving.Fold(state.Machine)
            );
            if (at < 0)
            {
                lasts.Add(state);
            }
            // A visit on which nothing was proved, as one is that has only just begun, leaves the machine where it stood.
            else if (lasts[at].WordKey == NothingProved)
            {
                lasts[at] = state;
            }
        }

        return new()
        {
            Worst = lasts.Find(s => s.Kind == "bad") ?? lasts.Find(s => s.Kind != "good") ?? lasts.FirstOrDefault(),
            Last = lasts.FirstOrDefault(),
            Bad = lasts.FindAll(s => s.Kind == "bad"),
        };
    }
}
