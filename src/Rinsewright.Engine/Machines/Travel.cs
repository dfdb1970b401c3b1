using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>How a zone sprays.</summary>
public enum SprayKind
{
    /// <summary>Fixed arms above and below, fed by a pump.</summary>
    Arms,

    /// <summary>Turning arms above and below, fed by a pump.</summary>
    Rotors,

    /// <summary>Fresh water once, from nozzles.</summary>
    Fresh,
}

/// <summary>A stretch in which ware is sprayed. A door machine has one for its pump and one for its fresh rinse over the same stretch.</summary>
public sealed record SprayZone
{
    /// <summary>Id: <c>prewash</c>, <c>wash</c>, <c>power-rinse</c> or <c>final-rinse</c>.</summary>
    public required string Id { get; init; }

    /// <summary>Start, from the load-end face.</summary>
    public required Figure<Length> From { get; init; }

    /// <summary>End, from the load-end face.</summary>
    public required Figure<Length> To { get; init; }

    /// <summary>How it sprays.</summary>
    public required SprayKind Spray { get; init; }

    /// <summary>Tank that feeds it; null for fresh water.</summary>
    public string? Tank { get; init; }

    /// <summary>Conveyor's final rinse: start of the stretch in which a rack keeps its switch made; null elsewhere.</summary>
    public Figure<Length>? SwitchFrom { get; init; }

    /// <summary>Conveyor's final rinse: end of that stretch.</summary>
    public Figure<Length>? SwitchTo { get; init; }
}

/// <summary>Belt or pawl bar of a conveyor.</summary>
/// <param name="Speed">Speed of the ware.</param>
/// <param name="Hold">How long pumps run on after the last rack.</param>
public sealed record Conveyor(Figure<Speed> Speed, Figure<Duration> Hold);

/// <summary>The phases of a door or undercounter machine, in their order.</summary>
/// <param name="Wash">Wash pump runs.</param>
/// <param name="Dwell">Wait between wash and rinse; on a fill-and-dump machine the dump.</param>
/// <param name="Refill">Fill-and-dump: time to fill for the rinse; null elsewhere.</param>
/// <param name="Rinse">Final rinse; on a fill-and-dump machine the pump runs in the sanitizing water.</param>
/// <param name="End">Closed after the rinse.</param>
/// <param name="Load">Open, for the next rack.</param>
public sealed record DoorCycle(
    Figure<Duration> Wash,
    Figure<Duration> Dwell,
    Figure<Duration>? Refill,
    Figure<Duration> Rinse,
    Figure<Duration> End,
    Figure<Duration> Load
)
{
    /// <summary>Dry air that passes while the door is open.</summary>
    public required Figure<MassFlow> AirOpen { get; init; }

    /// <summary>Fill-and-dump: opening of the drain; null elsewhere.</summary>
    public Figure<Area>? DumpOpening { get; init; }
}

/// <summary>A curtain.</summary>
/// <param name="Slot">Where it hangs: <c>load</c>, <c>prewash-wash</c>, <c>wash-rinse</c>, <c>rinse-final</c>, <c>unload</c>.</param>
/// <param name="At">Distance from the load-end face.</param>
/// <param name="Long">Long, or short.</param>
public sealed record Curtain(string Slot, Figure<Length> At, bool Long);

/// <summary>What is carried through.</summary>
public sealed record Ware
{
    /// <summary>Length of a rack, or of belt per notional rack.</summary>
    public required Figure<Length> RackLength { get; init; }

    /// <summary>Pieces in a rack.</summary>
    public required int Pieces { get; init; }

    /// <summary>What they are made of: <c>ceramic</c>, <c>glass</c>, <c>steel</c>, <c>melamine</c> or <c>polycarbonate</c>.</summary>
    public required string Material { get; init; }

    /// <summary>Thickness of a piece. With area and material it gives its mass, which therefore has no figure of its own.</summary>
    public required Figure<Length> Thickness { get; init; }

    /// <summary>Wetted area of a piece, both faces.</summary>
    public required Figure<Area> Area { get; init; }

    /// <summary>Temperature it comes in at.</summary>
    public required Figure<Temperature> In { get; init; }

    /// <summary>Soil in a rack.</summary>
    public required Figure<Mass> Soil { get; init; }

    /// <summary>Water a rack carries from zone to zone.</summary>
    public required Figure<Mass> CarryOver { get; init; }

    /// <summary>Mass of the plastic rack; zero on a belt machine.</summary>
    public required Figure<Mass> RackMass { get; init; }

    /// <summary>Wetted area of the plastic rack; zero on a belt machine.</summary>
    public required Figure<Area> RackArea { get; init; }

    /// <summary>Thickness of its bars.</summary>
    public required Figure<Length> RackThickness { get; init; }
}
