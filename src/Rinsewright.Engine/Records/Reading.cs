using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Records;

/// <summary>Where on the machine something is measured.</summary>
public enum MeasuringPoint
{
    /// <summary>Not said.</summary>
    Unknown,

    /// <summary>Surface of the ware itself (plate-riding logger, label).</summary>
    WareSurface,

    /// <summary>Water in the wash tank.</summary>
    WashTank,

    /// <summary>Water in the pumped (power) rinse tank.</summary>
    PumpedRinseTank,

    /// <summary>Fresh final-rinse water at the manifold.</summary>
    FinalRinseManifold,

    /// <summary>Fresh final-rinse supply line beside the rinse valve (flow pressure).</summary>
    FinalRinseLine,

    /// <summary>The chemical sanitizing solution.</summary>
    SanitizingSolution,

    /// <summary>Incoming water of the building.</summary>
    WaterSupply,

    /// <summary>Air inside or around the machine.</summary>
    Air,
}

/// <summary>How a reading was taken.</summary>
public enum ReadingMethod
{
    /// <summary>Temperature logger riding with the ware or in the water.</summary>
    Logger,

    /// <summary>Probe thermometer held by a person.</summary>
    Probe,

    /// <summary>The machine's own dial or display.</summary>
    MachineGauge,

    /// <summary>Maximum-registering thermometer sent through with the ware.</summary>
    MaximumThermometer,

    /// <summary>Irreversible temperature label: turned or not turned.</summary>
    IrreversibleLabel,

    /// <summary>Test strip.</summary>
    Strip,

    /// <summary>Titration or photometer.</summary>
    TestKit,

    /// <summary>Stopwatch.</summary>
    Stopwatch,

    /// <summary>Read from a label, plate or document.</summary>
    Printed,
}

/// <summary>What a reading was taken with.</summary>
/// <param name="Name">Name or number the service knows it by, for example <c>Probe no. 4</c>.</param>
/// <param name="Uncertainty">Half-width ± in the unit it is stated in (a difference for temperatures); null where not stated.</param>
/// <param name="CalibratedOn">Date of the last calibration; null where not known.</param>
/// <param name="CalibrationDue">Date the next calibration is due; null where not set.</param>
/// <param name="Division">Smallest step the instrument shows; null where not known.</param>
/// <param name="Serial">Serial number; null where not known.</param>
public sealed record Instrument(
    string Name,
    Amount? Uncertainty = null,
    DateOnly? CalibratedOn = null,
    DateOnly? CalibrationDue = null,
    Amount? Division = null,
    string? Serial = null
)
{
    /// <summary>Whether it can have read a value of this dimension: a gauge whose ± is stated in psi is no thermometer. One of which nothing is stated can have read anything.</summary>
    public bool Measures(Dimension read) => Suits(Uncertainty, read) && Suits(Division, read);

    private static bool Suits(Amount? stated, Dimension read) =>
        stated is not { } s
        || s.Unit.Dimension == read
        || (read == Dimension.Temperature && s.Unit.Dimension == Dimension.TemperatureDifference);
}

/// <summary>One value somebody or something read. A reading that was not taken is absent, never a zero.</summary>
/// <param name="Point">Where.</param>
/// <param name="Value">What was read, in the unit it was read in. For a label: the temperature printed on it.</param>
/// <param name="Method">How.</param>
/// <param name="Instrument">With what; null where not said.</param>
/// <param name="At">When, kitchen's local time with its offset; null where not said.</param>
/// <param name="Reached">For an irreversible label: whether it turned. Null for all other methods.</param>
/// <param name="Lot">Lot of a strip or label; null where not said.</param>
/// <param name="Expires">Expiry of a strip or label; null where not said.</param>
public sealed record Reading(
    MeasuringPoint Point,
    Amount Value,
    ReadingMethod Method,
    Instrument? Instrument = null,
    DateTimeOffset? At = null,
    bool? Reached = null,
    string? Lot = null,
    DateOnly? Expires = null
);
