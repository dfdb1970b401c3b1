using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Visits;

/// <summary>
/// Parts to look at on one machine, in its own order: zone by zone as the ware goes, then the sides; inside a zone what comes out first, then as the knowledge lists them. What the machine has
/// not is left out.
/// </summary>
public static class PartOrder
{
    // Sides of the machine that no way of the ware leads through, in the order a technician walks round it.
    private static readonly string[] Sides =
    [
        "utilities",
        "booster",
        "chem-station",
        "drain",
        "drive",
        "vent",
        "cabinet",
        "electrical",
        "proof",
        "operator",
        "ware",
    ];

    /// <summary>The knowledge's id of a kind of machine.</summary>
    public static string TypeOf(MachineKind kind) =>
        kind switch
        {
            MachineKind.Undercounter => "undercounter",
            MachineKind.DoorHotWater => "door-hot",
            MachineKind.DoorChemical => "door-chem",
            MachineKind.RackConveyorOneTank => "conveyor-1",
            MachineKind.RackConveyorTwoTank => "conveyor-2",
            MachineKind.RackConveyorThreeTank => "conveyor-3",
            _ => "flight",
        };

    /// <summary>Parts of a machine in order.</summary>
    public static IReadOnlyList<Part> Of(Machine machine, TradeKnowledge knowledge)
    {
        var type = TypeOf(machine.Kind);
        var known = knowledge.Anatomy.MachineTypes.First(m => m.Id == type);
        var walk = known.Zones.Where(z => !Sides.Contains(z, StringComparer.Ordinal)).Concat(Sides).ToList();
        var outOrder = known.OutOrder.ToList();
        return
        [
            .. knowledge
                .Anatomy.Parts.Where(p => knowledge.Fits(p.Machines, type) && Has(machine, p))
                .Select((part, place) => (part, place))
                .OrderBy(p => walk.IndexOf(p.part.Zone) is >= 0 and var zone ? zone : walk.Count)
                .ThenBy(p => outOrder.IndexOf(p.part.Id) is >= 0 and var turn ? turn : outOrder.Count)
                .ThenBy(p => p.place)
                .Select(p => p.part),
        ];
    }

    private static bool Has(Machine machine, Part part) =>
        part.Id switch
        {
            "booster" => machine.Booster is not null,
            "curtain-long" or "curtain-short" => machine.Curtains.Count > 0,
            "steam-coil" => Heaters(machine).Any(h => h.Kind == HeaterKind.SteamCoil),
            "gas-burner" => Heaters(machine).Any(h => h.Kind == HeaterKind.Gas),
            "tank-heater" or "tank-thermostat" or "heater-contactor" or "low-water-cutoff" => machine.Tanks.Any(t => t.Heater is not null),
            "detergent-probe" => Feeds(machine, FedProduct.Detergent, probed: true),
            "detergent-hopper" or "detergent-line" or "detergent-dispenser" => Feeds(machine, FedProduct.Detergent),
            "rinse-additive-feeder" or "rinse-additive-pickup" => Feeds(machine, FedProduct.RinseAdditive),
            "sanitizer-feeder" or "sanitizer-squeeze-tube" or "sanitizer-injector" => machine.Sanitizing != SanitizingMethod.HotWater,
            "pressure-gauge"
            or "pressure-regulator"
            or "rinse-solenoid"
            or "thermometer-rinse"
            or "rinse-arm-lower"
            or "rinse-arm-upper"
            or "rinse-jet" => machine.FinalRinse is not null,
            _ => true,
        };

    private static bool Feeds(Machine machine, FedProduct product, bool probed = false) =>
        machine.Feeders.Any(f => f.Product == product && (!probed || f.Band is not null));

    private static IEnumerable<Heater> Heaters(Machine machine) =>
        machine.Tanks.Select(t => t.Heater).Append(machine.Booster?.Heater).OfType<Heater>();
}
