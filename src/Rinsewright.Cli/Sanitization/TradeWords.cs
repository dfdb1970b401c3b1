using Rinsewright.Contracts.Language;

namespace Rinsewright.Cli.Sanitization;

/// <summary>What people type for machine, method and place, and the contract's name for it. The first word of each is the one help shows.</summary>
internal static class TradeWords
{
    public static readonly IReadOnlyList<(string[] Typed, string Name)> Machines =
    [
        (["door-single", "hood-single", "undercounter-single", "single-temperature"], "stationaryRackSingleTemperature"),
        (["door-dual", "hood-dual", "undercounter-dual", "dual-temperature"], "stationaryRackDualTemperature"),
        (["conveyor-1", "conveyor-single", "one-tank"], "singleTankConveyor"),
        (["conveyor-multi", "conveyor-2", "conveyor-3", "two-tank", "flight"], "multitankConveyor"),
    ];

    public static readonly IReadOnlyList<(string[] Typed, string Name)> Methods =
    [
        (["hot-water"], "hotWater"),
        (["chlorine", "bleach"], "chlorine"),
        (["iodine"], "iodine"),
        (["quat", "quats"], "quaternaryAmmonium"),
    ];

    public static readonly IReadOnlyList<(string[] Typed, string Name)> Roles =
    [
        (["plate", "ware"], "wareSurface"),
        (["wash-tank", "wash"], "washTank"),
        (["pumped-rinse-tank", "pumped-rinse"], "pumpedRinseTank"),
        (["final-rinse", "manifold"], "finalRinseManifold"),
        (["air"], "air"),
        (["water"], "waterSupply"),
        (["ignore"], "ignore"),
    ];

    /// <summary>The words help and completion show.</summary>
    public static IEnumerable<string> Shown(IReadOnlyList<(string[] Typed, string Name)> list) => list.Select(w => w.Typed[0]);

    /// <summary>The contract's name of a typed word.</summary>
    /// <exception cref="UsageException">The word is not known; the message lists those that are.</exception>
    public static string Find(IReadOnlyList<(string[] Typed, string Name)> list, string typed, string option, Words words) =>
        list.FirstOrDefault(w =>
            w.Typed.Contains(typed, StringComparer.OrdinalIgnoreCase) || string.Equals(w.Name, typed, StringComparison.OrdinalIgnoreCase)
        ).Name
        ?? throw new UsageException(CommandLine.NotAmong(words, option, typed, Shown(list)));
}
