using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using System.Text.Json;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Machines;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Client.Machines;

/// <summary>What the compute worker calls for machines.</summary>
public static partial class ModelExports
{
    /// <summary>Runs a machine.</summary>
    /// <param name="askJson">A <see cref="ModelAsk"/>.</param>
    /// <returns>A <see cref="ModelAnswer"/> as JSON.</returns>
    [JSExport]
    [SupportedOSPlatform("browser")]
    internal static string Run(string askJson) =>
        JsonSerializer.Serialize(Answer(JsonSerializer.Deserialize(askJson, ClientJson.Default.ModelAsk)!), ClientJson.Default.ModelAnswer);

    /// <summary>Runs a machine and turns what can go wrong into an answer.</summary>
    public static ModelAnswer Answer(ModelAsk ask)
    {
        if (MachineFile.Read(ask.Machine).Machine is not { } machine)
        {
            return new ModelAnswer([], "machine");
        }

        try
        {
            var faults = ask
                .Faults.Select(f => MachineFaults.Find(f.Id)?.At(Math.Clamp(f.Severity, 0, 1)))
                .OfType<FaultAtSeverity>()
                .Where(f => f.Fault.AppliesTo(machine))
                .ToList();
            var run = MachineRun.Run(machine, Scenario.Steady(ask.RacksPerHour), faults, new RunOptions(SeriesEvery: 0));
            return new ModelAnswer([
                .. run.Observables.Select(o => new ModelReading(
                    o.Observable.Id,
                    Wire.WordKey(o.Observable.During),
                    o.Observable.Unit.Ucum,
                    o.Observable.Threshold,
                    o.Value?.Value,
                    o.Absence == Absence.Never
                )),
            ]);
        }
        catch (ArgumentException e)
        {
            return new ModelAnswer([], e.Message);
        }
    }
}
