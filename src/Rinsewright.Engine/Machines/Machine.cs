using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Machines;

/// <summary>
/// A machine as it stands: what its plate says, what was measured on it, and for the rest what is typical of its kind. The model computes from it and the
/// section is drawn from it. Immutable; a change makes another description.
/// </summary>
public sealed record Machine
{
    /// <summary>Kind.</summary>
    public required MachineKind Kind { get; init; }

    /// <summary>What its people call it; null where nobody has named it.</summary>
    public string? Name { get; init; }

    /// <summary>Kitchen it stands in; null where not said.</summary>
    public string? Kitchen { get; init; }

    /// <summary>How it sanitizes.</summary>
    public required SanitizingMethod Sanitizing { get; init; }

    /// <summary>Limits on its data plate; absent where not read.</summary>
    public DataPlate? Plate { get; init; }

    /// <summary>Racks an hour its plate promises; null where not read. On a belt machine, notional racks.</summary>
    public double? PlateRacksPerHour { get; init; }

    /// <summary>Length from the load-end face to the unload-end face.</summary>
    public required Figure<Length> Length { get; init; }

    /// <summary>Ware travels from right to left, seen from the front.</summary>
    public bool RunsRightToLeft { get; init; }

    /// <summary>Tanks in the order the ware travels; the last receives the final rinse.</summary>
    public required IReadOnlyList<Tank> Tanks { get; init; }

    /// <summary>Spray zones in the order the ware travels.</summary>
    public required IReadOnlyList<SprayZone> Zones { get; init; }

    /// <summary>Final rinse; null on a fill-and-dump machine, whose rinse comes from its tank.</summary>
    public FinalRinse? FinalRinse { get; init; }

    /// <summary>Booster; null where the building supplies the final rinse.</summary>
    public Booster? Booster { get; init; }

    /// <summary>Water, power and room.</summary>
    public required Supply Supply { get; init; }

    /// <summary>Conveyor; null on a machine with doors.</summary>
    public Conveyor? Conveyor { get; init; }

    /// <summary>Phases of a machine with doors; null on a conveyor.</summary>
    public DoorCycle? Cycle { get; init; }

    /// <summary>Length of the table that soiled racks come from, of a belt machine the belt before the load-end face; null where there is none.</summary>
    public Figure<Length>? LoadTable { get; init; }

    /// <summary>Length of the table that clean racks go to, of a belt machine the belt behind the unload-end face; null where there is none.</summary>
    public Figure<Length>? UnloadTable { get; init; }

    /// <summary>Curtains from the load end.</summary>
    public IReadOnlyList<Curtain> Curtains { get; init; } = [];

    /// <summary>Vent stacks, distance from the load-end face.</summary>
    public IReadOnlyList<Figure<Length>> Vents { get; init; } = [];

    /// <summary>Feeders and what they feed.</summary>
    public IReadOnlyList<Feeder> Feeders { get; init; } = [];

    /// <summary>What is carried through.</summary>
    public required Ware Ware { get; init; }

    /// <summary>Sums worked for it and kept, the earliest first. The model does not use them.</summary>
    public IReadOnlyList<SetUp> SetUps { get; init; } = [];
}

/// <summary>What a feeder feeds.</summary>
public enum FedProduct
{
    /// <summary>Detergent to the wash tank, by conductivity.</summary>
    Detergent,

    /// <summary>Rinse additive to the final rinse.</summary>
    RinseAdditive,

    /// <summary>Sanitizer to the rinse water.</summary>
    Sanitizer,
}

/// <summary>A chemical feeder, at most one for each product.</summary>
/// <param name="Product">What it feeds.</param>
/// <param name="Strength">
/// Strength it is set to hold in the water it feeds, as read in a cooled sample: a gram per litre counts as a gram per kilogram of water (within 0.5 %).
/// </param>
/// <param name="Band">Width of its control band; null where it feeds in proportion.</param>
/// <param name="Rate">Product per time while it feeds; null where it feeds in proportion.</param>
/// <param name="Tank">Tank it feeds; null for the final rinse.</param>
public sealed record Feeder(
    FedProduct Product,
    Figure<MassConcentration> Strength,
    Figure<MassConcentration>? Band = null,
    Figure<MassFlow>? Rate = null,
    string? Tank = null
);
