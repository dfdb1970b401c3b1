using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>Machine types as the warewashing rules sort them.</summary>
public enum MachineType
{
    /// <summary>Door, hood or undercounter machine that washes and rinses at one temperature.</summary>
    StationaryRackSingleTemperature,

    /// <summary>Door, hood or undercounter machine with a hotter final rinse.</summary>
    StationaryRackDualTemperature,

    /// <summary>Rack conveyor with one tank.</summary>
    SingleTankConveyor,

    /// <summary>Rack conveyor or flight machine with two or more tanks.</summary>
    MultitankConveyor,
}

/// <summary>How the machine sanitizes.</summary>
public enum SanitizingMethod
{
    /// <summary>Hot final rinse.</summary>
    HotWater,

    /// <summary>Chlorine (hypochlorite) in the final rinse.</summary>
    Chlorine,

    /// <summary>Iodine.</summary>
    Iodine,

    /// <summary>Quaternary ammonium compound.</summary>
    QuaternaryAmmonium,
}

/// <summary>What stands behind a limit, strongest first.</summary>
public enum LimitForce
{
    /// <summary>This machine's data plate.</summary>
    DataPlate,

    /// <summary>The rule in force at the place.</summary>
    Rule,

    /// <summary>An equipment or test standard.</summary>
    Standard,

    /// <summary>The service's own limit.</summary>
    Service,

    /// <summary>A working value of the trade; outside it is unusual, not forbidden.</summary>
    CommonPractice,
}

/// <summary>Lower or upper limit.</summary>
public enum LimitSense
{
    /// <summary>At least.</summary>
    Minimum,

    /// <summary>At most.</summary>
    Maximum,
}

/// <summary>One printed limit.</summary>
/// <param name="Id">Stable id inside its rule set, for example <c>final-rinse-minimum</c>.</param>
/// <param name="Point">Where it applies.</param>
/// <param name="Sense">At least or at most; the limit itself is allowed.</param>
/// <param name="Printed">The limit in every unit it is printed in; the first is the leading one.</param>
/// <param name="Force">What stands behind it.</param>
/// <param name="Citation">Where it is printed.</param>
/// <param name="Machines">Machine types it applies to; empty: all.</param>
/// <param name="Methods">Sanitizing methods it applies to; empty: all.</param>
/// <param name="BesideDataPlate">Applies together with a data-plate limit instead of giving way to it.</param>
/// <param name="While">For a time limit: the temperature the surface has to hold meanwhile, in every unit printed; empty otherwise.</param>
public sealed record Limit(
    string Id,
    MeasuringPoint Point,
    LimitSense Sense,
    IReadOnlyList<Amount> Printed,
    LimitForce Force,
    Citation Citation,
    IReadOnlyList<MachineType> Machines,
    IReadOnlyList<SanitizingMethod> Methods,
    bool BesideDataPlate = false,
    IReadOnlyList<Amount>? While = null
)
{
    /// <summary>What it limits.</summary>
    public Dimension Dimension => Printed[0].Unit.Dimension;

    /// <summary>Whether it applies to this machine and method.</summary>
    public bool AppliesTo(MachineType machine, SanitizingMethod method) =>
        (Machines.Count == 0 || Machines.Contains(machine)) && (Methods.Count == 0 || Methods.Contains(method));

    /// <summary>The limit in the unit of a reading: the printed figure where that unit is printed, else the leading one converted exactly.</summary>
    public Amount PrintedIn(Unit unit) => Pick(Printed, unit);

    /// <summary>Of one figure printed in several units, the one in this unit; where it is not printed, the leading one converted exactly.</summary>
    internal static Amount Pick(IReadOnlyList<Amount> printed, Unit unit)
    {
        foreach (var amount in printed)
        {
            if (amount.Unit == unit)
            {
                return amount;
            }
        }

        return printed[0].In(unit);
    }
}

/// <summary>What the machine's own data plate says; absent where the plate does not say or was not read.</summary>
/// <param name="WashMinimum">Least wash temperature.</param>
/// <param name="PumpedRinseMinimum">Least pumped-rinse temperature.</param>
/// <param name="FinalRinseMinimum">Least final-rinse temperature.</param>
/// <param name="FinalRinseMaximum">Highest final-rinse temperature.</param>
/// <param name="PressureMinimum">Least final-rinse flow pressure.</param>
/// <param name="PressureMaximum">Highest final-rinse flow pressure.</param>
/// <param name="SanitizerMinimum">Least sanitizer concentration.</param>
/// <param name="SanitizerMaximum">Highest sanitizer concentration.</param>
public sealed record DataPlate(
    Amount? WashMinimum = null,
    Amount? PumpedRinseMinimum = null,
    Amount? FinalRinseMinimum = null,
    Amount? FinalRinseMaximum = null,
    Amount? PressureMinimum = null,
    Amount? PressureMaximum = null,
    Amount? SanitizerMinimum = null,
    Amount? SanitizerMaximum = null
);

/// <summary>What a chemical product's label says where the rule points to the label; absent where not read.</summary>
/// <param name="Minimum">Least concentration in use.</param>
/// <param name="Maximum">Highest concentration in use.</param>
/// <param name="WaterHardnessMaximum">Hardest water the label allows.</param>
/// <param name="TemperatureMinimum">Least temperature.</param>
/// <param name="ContactTimeMinimum">Least contact time.</param>
/// <param name="AcidityMaximum">Highest pH.</param>
public sealed record SanitizerLabel(
    Amount? Minimum = null,
    Amount? Maximum = null,
    Amount? WaterHardnessMaximum = null,
    Amount? TemperatureMinimum = null,
    Amount? ContactTimeMinimum = null,
    Amount? AcidityMaximum = null
);
