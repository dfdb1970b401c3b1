namespace Rinsewright.Engine.Machines;

/// <summary>
/// Learns the figures of a machine from readings. Each figure starts from what is written and may be off by what is usual of its kind; one that a reading is there to tell may be off
/// by much more. The estimate is the least sum of squares of readings and figures over the steady model, equation K16. It is no proof of anything: a wrong
/// reading gives a wrong figure, unless others contradict it.
/// </summary>
public static class MachineCalibration
{
    /// <summary>A figure counts as told when the readings leave less than this share of its usual spread.</summary>
    public const double ToldBelow = 0.8;

    /// <summary>Share of the intervals that hold the figure.</summary>
    public const double Coverage = 0.9;

    /// <summary>Calibrates a machine.</summary>
    /// <param name="machine">The machine as described.</param>
    /// <param name="readings">Readings, any number; those that cannot be used are told and left out.</param>
    /// <exception cref="ArgumentException">The description does not fit together.</exception>
    public static CalibrationResult From(Machine machine, IReadOnlyList<MachineReading> readings) =>
        new Calibration(machine, readings).Run();
}
