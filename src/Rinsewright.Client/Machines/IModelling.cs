namespace Rinsewright.Client.Machines;

/// <summary>A fault asked for.</summary>
/// <param name="Id">Fault.</param>
/// <param name="Severity">0 none, 1 as in the catalogue.</param>
public sealed record FaultAsk(string Id, double Severity);

/// <summary>A machine to be run at a steady load.</summary>
/// <param name="Machine">Text of its machine file.</param>
/// <param name="RacksPerHour">Racks an hour.</param>
/// <param name="Faults">Faults in it.</param>
public sealed record ModelAsk(string Machine, double RacksPerHour, IReadOnlyList<FaultAsk> Faults);

/// <summary>One thing read.</summary>
/// <param name="Id">Observable.</param>
/// <param name="During">When it is read, key of its words.</param>
/// <param name="Unit">UCUM code.</param>
/// <param name="Threshold">Difference that shows.</param>
/// <param name="Value">Value; null where there is none.</param>
/// <param name="Never">It never comes to it.</param>
public sealed record ModelReading(string Id, string During, string Unit, double Threshold, double? Value, bool Never)
{
    /// <summary>Whether the difference is more than gauges and eyes tell.</summary>
    public bool ShowsAgainst(ModelReading sound) =>
        (Value, sound.Value) switch
        {
            ({ } a, { } b) => Math.Abs(a - b) >= Threshold,
            (null, null) => Never != sound.Never,
            _ => true,
        };
}

/// <summary>What a run gave.</summary>
/// <param name="Readings">Readings in the order they are shown.</param>
/// <param name="Problem">What kept it from running; null where nothing did.</param>
public sealed record ModelAnswer(IReadOnlyList<ModelReading> Readings, string? Problem = null);

/// <summary>Runs the model away from the page.</summary>
public interface IModelling
{
    /// <summary>Runs a machine.</summary>
    Task<ModelAnswer> RunAsync(ModelAsk ask);
}
