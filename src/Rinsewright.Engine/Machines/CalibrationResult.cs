using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>A figure of the machine after the readings.</summary>
/// <param name="Id">Figure, as <c>wash.heater</c>.</param>
/// <param name="Before">As the description had it; null of a figure that a description does not hold, as the opening of a leak.</param>
/// <param name="Value">Best estimate.</param>
/// <param name="Low">Low end of the interval in which it lies nine times of ten.</param>
/// <param name="High">High end.</param>
/// <param name="Told">
/// Whether the readings tell it: they narrow what is usual of its kind to less than <see cref="MachineCalibration.ToldBelow"/> of it. Where not, it stays as it was.
/// </param>
/// <param name="Readings">Places of the readings that tell it, in the list given, weightiest first.</param>
public sealed record CalibratedFigure(
    string Id,
    Amount? Before,
    Amount Value,
    Amount Low,
    Amount High,
    bool Told,
    IReadOnlyList<int> Readings
)
{
    /// <summary>Value against what it was before; null where that was nothing or a temperature.</summary>
    public double? Share => Before is { Unit.Dimension: not Dimension.Temperature, SI: not 0 } before ? Value.SI / before.SI : null;
}

/// <summary>A figure the readings do not tell, and what would.</summary>
/// <param name="Id">Figure.</param>
/// <param name="Kind">Id of the kind of reading that would tell most; null where none on the list does.</param>
/// <param name="Part">Part that reading belongs to; null where none.</param>
/// <param name="Left">Share of the figure's spread that would be left; null where no reading of the kind was foreseen.</param>
public sealed record UnknownFigure(string Id, string? Kind, string? Part, double? Left);

/// <summary>A reading against the calibrated machine.</summary>
/// <param name="Reading">Place in the list given.</param>
/// <param name="Expected">What the calibrated machine gives, in the unit of the reading; null where it has no value.</param>
/// <param name="Off">Reading less expected, in standard uncertainties of the reading.</param>
public sealed record ReadingFit(int Reading, Amount? Expected, double Off);

/// <summary>Why a reading was not used.</summary>
/// <param name="Reading">Place in the list given.</param>
/// <param name="Code">What is wrong, stable: <c>unknown-kind</c>, <c>other-dimension</c>, <c>no-such-part</c>, <c>needs-change</c>, <c>needs-time</c>, <c>needs-rate</c>,
/// <c>impossible</c>, <c>lines-incomplete</c>.</param>
public sealed record ReadingProblem(int Reading, string Code);

/// <summary>How readings contradict each other or the machine.</summary>
public enum ContradictionKind
{
    /// <summary>No machine of this description, within the spread of its figures, gives all of them; equation K17.</summary>
    Misfit,

    /// <summary>The heat needed for what was read passes the heat there is by more than a quarter; equation K15.</summary>
    HeatBalance,
}

/// <summary>Readings that cannot all be right of a machine of this description: one of them is wrong, or the machine has a fault that the description does not.</summary>
/// <param name="Kind">How.</param>
/// <param name="Readings">Places of the readings, the likeliest first. Of a misfit: those of which any one left out mends it; all that are far off where no single one does.</param>
/// <param name="Size">Misfit: the sum of squares against what a thousandth of honest sets pass. Heat balance: heat needed against heat there is.</param>
public sealed record Contradiction(ContradictionKind Kind, IReadOnlyList<int> Readings, double Size);

/// <summary>What readings say about a machine.</summary>
/// <param name="Machine">The machine with every figure that was told set to its estimate, as measured, with day, readings and uncertainty; the rest as it was.</param>
/// <param name="Figures">All figures that can be estimated, tank by tank, then rinse, booster, supply, ware and travel; leaks last.</param>
/// <param name="Unknown">Figures that stay unknown, with the reading that would tell.</param>
/// <param name="Fits">Readings against the calibrated machine.</param>
/// <param name="Contradictions">None where all fits.</param>
/// <param name="Problems">Readings that could not be used.</param>
public sealed record CalibrationResult(
    Machine Machine,
    IReadOnlyList<CalibratedFigure> Figures,
    IReadOnlyList<UnknownFigure> Unknown,
    IReadOnlyList<ReadingFit> Fits,
    IReadOnlyList<Contradiction> Contradictions,
    IReadOnlyList<ReadingProblem> Problems
);
