using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>A plate's ride through a machine, one entry for each moment.</summary>
/// <param name="Seconds">Since it went in.</param>
/// <param name="Surface">Its surface, °C.</param>
/// <param name="HeatUnits">Heat unit equivalents gathered so far.</param>
/// <param name="Places">What it meets: id of the tank that sprays it, <c>final-rinse</c>, <c>gap</c> or <c>room</c>.</param>
/// <param name="Positions">Its distance from the load-end face, m; on a machine with doors 0 while it stands inside.</param>
public sealed record PlateRide(
    IReadOnlyList<double> Seconds,
    IReadOnlyList<double> Surface,
    IReadOnlyList<double> HeatUnits,
    IReadOnlyList<string> Places,
    IReadOnlyList<double> Positions
);

/// <summary>What a machine reads when it has settled.</summary>
/// <param name="RacksPerHour">Racks an hour asked for.</param>
/// <param name="Observables">What could be read, in the order they are shown.</param>
/// <param name="Load">What it takes while racks go through.</param>
/// <param name="StandBy">What it takes hot and without racks.</param>
/// <param name="Ride">A plate on its way.</param>
public sealed record SteadyReading(
    double RacksPerHour,
    IReadOnlyList<Observed> Observables,
    Consumption Load,
    Consumption StandBy,
    PlateRide Ride
)
{
    /// <summary>What was read of an observable; null where the machine does not have it.</summary>
    public Observed? Of(string id)
    {
        foreach (var observed in Observables)
        {
            if (observed.Observable.Id == id)
            {
                return observed;
            }
        }

        return null;
    }
}

/// <summary>
/// What a machine reads when it has settled, for heat-up, idle, a steady load and full rate, without hours of stepping. Conveyors are solved as balances; machines with doors, which swing
/// within a cycle, are stepped through some cycles from the balance. Close to <see cref="MachineRun"/> over <see cref="Scenario.Steady"/>, within the thermostats' bands, and a hundred
/// times as fast. Like it, a model and no measurement, and no proof of sanitization.
/// </summary>
public static class SteadyState
{
    /// <summary>Reads a machine.</summary>
    /// <param name="machine">Machine.</param>
    /// <param name="racksPerHour">Racks an hour asked for, above 0; as many as fit where it is more.</param>
    /// <param name="faults">Faults, none or several; they act together.</param>
    /// <exception cref="ArgumentException">The description does not fit together, or the machine cannot have one of the faults.</exception>
    /// <exception cref="ArgumentOutOfRangeException">No rate above 0.</exception>
    public static SteadyReading Of(Machine machine, double racksPerHour, IReadOnlyList<FaultAtSeverity>? faults = null)
    {
        var p = Changed(machine, racksPerHour, faults ?? []);
        return new SteadyReader(p.Tanks.Length).Read(p, racksPerHour);
    }

    /// <summary>Reads a machine in parts, so that a screen stays live between: null until the last, which is what <see cref="Of"/> gives.</summary>
    /// <param name="machine">Machine.</param>
    /// <param name="racksPerHour">Racks an hour asked for, above 0; as many as fit where it is more.</param>
    /// <param name="faults">Faults, none or several; they act together.</param>
    /// <exception cref="ArgumentException">The description does not fit together, or the machine cannot have one of the faults.</exception>
    /// <exception cref="ArgumentOutOfRangeException">No rate above 0.</exception>
    public static IEnumerable<SteadyReading?> InParts(Machine machine, double racksPerHour, IReadOnlyList<FaultAtSeverity>? faults = null)
    {
        var p = Changed(machine, racksPerHour, faults ?? []);
        return new SteadyReader(p.Tanks.Length).InParts(p, racksPerHour);
    }

    /// <summary>Racks an hour of a busy hour: a conveyor at about two thirds of what fits, a machine with doors loaded as a crew does it. Common practice, no source. No more than fit.</summary>
    /// <exception cref="ArgumentException">The description does not fit together.</exception>
    public static double UsualRate(Machine machine) =>
        Math.Min(
            machine.Kind switch
            {
                MachineKind.Undercounter => 15,
                MachineKind.DoorHotWater or MachineKind.DoorChemical => 25,
                _ => 150,
            },
            3600 * Duties.MostRacks(ModelParameters.From(machine))
        );

    internal static ModelParameters Changed(Machine machine, double racksPerHour, IReadOnlyList<FaultAtSeverity> faults)
    {
        if (!(racksPerHour > 0) || !double.IsFinite(racksPerHour))
        {
            throw new ArgumentOutOfRangeException(nameof(racksPerHour), racksPerHour, "More than no racks.");
        }

        var sound = ModelParameters.From(machine);
        MachineRun.Check(sound, faults);
        return MachineFaults.Changed(sound, faults);
    }
}
