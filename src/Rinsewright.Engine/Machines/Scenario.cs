namespace Rinsewright.Engine.Machines;

/// <summary>A stretch of a scenario.</summary>
/// <param name="Seconds">How long, s; of a cold start the longest it may take.</param>
/// <param name="RacksPerHour">Racks asked for; 0 for none.</param>
/// <param name="ColdStart">From empty and cold until everything is at its temperature.</param>
/// <param name="Read">Whether observables are read over it; without, it only lets the machine settle.</param>
/// <param name="Off">Heaters, pumps and fill switched off.</param>
public sealed record Stage(double Seconds, double RacksPerHour = 0, bool ColdStart = false, bool Read = false, bool Off = false);

/// <summary>What a machine goes through. Always the same for the same arguments.</summary>
/// <param name="Id">Name, stable.</param>
/// <param name="Stages">Stretches in their order.</param>
public sealed record Scenario(string Id, IReadOnlyList<Stage> Stages)
{
    // Longest that a cold start may take, s.
    private const double LongestStart = 4 * 3600;
    private static readonly Stage Start = new(LongestStart, ColdStart: true);
    private static readonly Stage StandBy = new(40 * 60, Read: true);

    /// <summary>Names of the scenarios without figures of their own.</summary>
    public static IReadOnlyList<string> Ids { get; } = ["heat-up", "idle", "steady", "rush", "end-of-shift"];

    /// <summary>Cold start: fill, then heat until every tank is at its set point.</summary>
    public static Scenario HeatUp() => new("heat-up", [Start]);

    /// <summary>Cold start, then 40 minutes without racks.</summary>
    public static Scenario Idle() => new("idle", [Start, StandBy]);

    /// <summary>Cold start, 40 minutes without racks, then racks at a rate: 75 minutes to settle and 75 that are read.</summary>
    /// <param name="racksPerHour">Racks an hour, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0.</exception>
    public static Scenario Steady(double racksPerHour) =>
        racksPerHour > 0 && double.IsFinite(racksPerHour)
            ? new Scenario("steady", [Start, StandBy, new Stage(4500, racksPerHour), new Stage(4500, racksPerHour, Read: true)])
            : throw new ArgumentOutOfRangeException(nameof(racksPerHour), racksPerHour, "More than no racks.");

    /// <summary>A meal: slow, a rush, slow again; in parts of the rate of the rush.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0.</exception>
    public static Scenario Rush(double racksPerHour) =>
        racksPerHour > 0 && double.IsFinite(racksPerHour)
            ? new Scenario(
                "rush",
                [
                    Start,
                    StandBy,
                    new Stage(1800, racksPerHour / 3),
                    new Stage(3600, racksPerHour, Read: true),
                    new Stage(1800, racksPerHour / 3),
                ]
            )
            : throw new ArgumentOutOfRangeException(nameof(racksPerHour), racksPerHour, "More than no racks.");

    /// <summary>The last half hour of racks, then everything switched off and left for two hours with the water in.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0.</exception>
    public static Scenario EndOfShift(double racksPerHour) =>
        racksPerHour > 0 && double.IsFinite(racksPerHour)
            ? new Scenario("end-of-shift", [Start, new Stage(1800, racksPerHour, Read: true), new Stage(7200, Off: true)])
            : throw new ArgumentOutOfRangeException(nameof(racksPerHour), racksPerHour, "More than no racks.");

    /// <summary>The scenario with this id; null where there is none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A scenario with racks, and no rate above 0.</exception>
    public static Scenario? Find(string id, double racksPerHour) =>
        id switch
        {
            "heat-up" or "cold-start" => HeatUp(),
            "idle" => Idle(),
            "steady" => Steady(racksPerHour),
            "rush" => Rush(racksPerHour),
            "end-of-shift" => EndOfShift(racksPerHour),
            _ => null,
        };
}
