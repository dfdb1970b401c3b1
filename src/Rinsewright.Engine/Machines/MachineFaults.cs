using System.Collections.Frozen;

namespace Rinsewright.Engine.Machines;

/// <summary>Every fault the model can play. Which faults of the knowledge it plays, and which it does not, stands in <c>Data/machine-fault-names.csv</c>.</summary>
public static partial class MachineFaults
{
    private static readonly MachineFault[] Every = [.. Water(), .. Sprays(), .. Heaters(), .. Rinses(), .. Travels(), .. Chemicals()];

    private static readonly FrozenDictionary<string, MachineFault> ByName = Names();

    /// <summary>All of them, by part of the machine.</summary>
    public static IReadOnlyList<MachineFault> All => Every;

    /// <summary>The fault with this id, catalogue id (underscores or hyphens), or other name in the table of names; null where there is none.</summary>
    public static MachineFault? Find(string name) => ByName.GetValueOrDefault(name);

    /// <summary>The faults a machine can have.</summary>
    /// <exception cref="ArgumentException">The description does not fit together.</exception>
    public static IReadOnlyList<MachineFault> Of(Machine machine)
    {
        var parameters = ModelParameters.From(machine);
        return [.. Every.Where(f => f.AppliesTo(parameters))];
    }

    internal static ModelParameters Changed(ModelParameters parameters, IReadOnlyList<FaultAtSeverity> faults)
    {
        var changed = parameters;
        foreach (var fault in faults)
        {
            changed = fault.Fault.Change(changed, fault.Severity);
        }

        return changed;
    }

    private static FrozenDictionary<string, MachineFault> Names()
    {
        var names = new Dictionary<string, MachineFault>(StringComparer.Ordinal);
        foreach (var fault in Every)
        {
            names[fault.Id] = fault;
        }

        foreach (var fault in Every)
        {
            names.TryAdd(fault.Catalogue, fault);
            names.TryAdd(fault.Catalogue.Replace('_', '-'), fault);
        }

        // The words of whoever reads a plan of the drain: the ring is the seal.
        names.TryAdd("drain-seal-torn", names["drain_oring_torn"]);
        return names.ToFrozenDictionary(StringComparer.Ordinal);
    }

    private static bool Any(ModelParameters p) => p.Tanks.Length > 0;

    private static bool Conveys(ModelParameters p) => p.Conveys;

    private static bool HasDoor(ModelParameters p) => !p.Conveys;

    private static bool HasTanks(ModelParameters p) => p.Tanks.Length > p.Wash + 1;

    private static bool HasBooster(ModelParameters p) => p.Booster is not null;

    private static bool HasRinse(ModelParameters p) => p.Rinse is not null;

    private static bool HasHeater(ModelParameters p) => p.Tanks[p.Wash].Heater is not null;

    private static bool HasFill(ModelParameters p) => p.Tanks[p.Wash].FillFlow > 0;

    // A figure part of the way from sound to what the catalogue makes of it.
    private static double Toward(double sound, double bad, double severity) => sound + (severity * (bad - sound));

    private static double Factor(double bad, double severity) => Math.Max(0, Toward(1, bad, severity));

    private static ModelParameters Wash(ModelParameters p, Func<TankParameters, TankParameters> change) => p.WithTank(p.Wash, change);

    private static ModelParameters WashPump(ModelParameters p, Func<PumpParameters, PumpParameters> change) =>
        Wash(p, t => t with { Pump = change(t.Pump) });

    private static TankParameters Heated(TankParameters t, Func<HeaterParameters, HeaterParameters> change) =>
        t.Heater is { } heater ? t with { Heater = change(heater) } : t;

    private static ModelParameters WashHeater(ModelParameters p, Func<HeaterParameters, HeaterParameters> change) =>
        Wash(p, t => Heated(t, change));

    private static ModelParameters BoosterHeater(ModelParameters p, Func<HeaterParameters, HeaterParameters> change) =>
        p.Booster is { } booster ? p with { Booster = booster with { Heater = change(booster.Heater) } } : p;

    private static ModelParameters Rinse(ModelParameters p, Func<RinseParameters, RinseParameters> change) =>
        p.Rinse is { } rinse ? p with { Rinse = change(rinse) } : p;

    private static ModelParameters Cycle(ModelParameters p, Func<CycleParameters, CycleParameters> change) =>
        p.Travel.Cycle is { } cycle ? p with { Travel = p.Travel with { Cycle = change(cycle) } } : p;
}
