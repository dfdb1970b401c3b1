using System.CommandLine;
using System.Globalization;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Cli.Machines;

/// <summary>What <c>run</c> and <c>whatif</c> put a machine through.</summary>
internal sealed class ScenarioOptions
{
    private const double UsualConveyorRate = 150;

    private readonly Option<string?> scenario = Options.Among("--scenario", "SCENARIO", [.. Scenario.Ids, "cold-start"]);
    private readonly Option<string?> rate = Options.One("--racks-per-hour", "N");
    private readonly Option<string[]> fault = Options.Many("--fault", "ID[:SEVERITY]");

    /// <summary>All of them, in the order of the help.</summary>
    public Option[] All => [scenario, rate, fault];

    /// <summary>The scenario asked for; <c>steady</c> at a usual rate where nothing is said.</summary>
    public (Scenario Scenario, double RacksPerHour) Read(ParseResult parsed, Machine machine, Words words)
    {
        var racks = Rate(parsed, words) ?? SteadyState.UsualRate(machine);
        var id = parsed.GetValue(scenario) ?? "steady";
        return (
            Scenario.Find(id, racks)
                ?? throw new UsageException(CommandLine.NotAmong(words, scenario.Name, id, [.. Scenario.Ids, "cold-start"])),
            racks
        );
    }

    /// <summary>The faults asked for.</summary>
    public IReadOnlyList<FaultAtSeverity> Faults(ParseResult parsed, Machine machine, Words words) =>
        [.. (parsed.GetValue(fault) ?? []).Select(typed => Fault(typed, machine, words))];

    private static FaultAtSeverity Fault(string typed, Machine machine, Words words)
    {
        var (id, text) = typed.Split(':', 2) is [var name, var rest] ? (name, rest) : (typed, "1");
        if (MachineFaults.Find(id) is not { } found)
        {
            throw new UsageException(CommandLine.NotAmong(words, "--fault", id, MachineFaults.Of(machine).Select(f => f.Id)));
        }

        if (!found.AppliesTo(machine))
        {
            throw new UsageException(words.Say("cli.error.fault-part", ("fault", id)));
        }

        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var severity) && severity is >= 0 and <= 1
            ? found.At(severity)
            : throw new UsageException(words.Say("cli.error.severity", ("fault", id), ("value", text)));
    }

    private double? Rate(ParseResult parsed, Words words)
    {
        if (parsed.GetValue(rate) is not { } text)
        {
            return null;
        }

        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var racks) && racks is > 0 and <= 2000
            ? racks
            : throw new UsageException(words.Say("cli.error.rate", ("value", text)));
    }
}
