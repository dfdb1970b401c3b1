namespace Rinsewright.Engine.Water;

/// <summary>What a pump circuit is like today. The default of every figure is new and clean.</summary>
/// <param name="Wear">Speed-like factor of the impeller, 1 new; the head goes with its square.</param>
/// <param name="Direction">Share of the head left in the direction it turns: 1, or about 0.35 backward (estimate, from memory).</param>
/// <param name="Strainer">Resistance of the suction strainer against a clean one, 1 or more.</param>
/// <param name="Plugged">Share of the jets that are closed, 0 to below 1.</param>
/// <param name="CapOpening">Effective opening of a missing end cap, m².</param>
/// <param name="Filling">Share of the flow that the water over the suction allows, 0 to 1; see <see cref="SprayCircuit.FillingAt"/>.</param>
internal readonly record struct SprayCondition(
    double Wear = 1,
    double Direction = 1,
    double Strainer = 1,
    double Plugged = 0,
    double CapOpening = 0,
    double Filling = 1
)
{
    /// <summary>New and clean, with water enough.</summary>
    public static SprayCondition Clean { get; } = new(1, 1, 1, 0, 0, 1);
}

/// <summary>Flows of a pump circuit.</summary>
/// <param name="Total">Through the pump, m³/s.</param>
/// <param name="Spray">Through the jets, m³/s.</param>
/// <param name="Cap">Out of an open arm end, m³/s.</param>
/// <param name="ArmPressure">At the arm, Pa.</param>
/// <param name="SuctionLoss">Lost over the suction strainer, Pa.</param>
internal readonly record struct SprayFlow(double Total, double Spray, double Cap, double ArmPressure, double SuctionLoss)
{
    /// <summary>Speed of the jets, m/s. Equation W6.</summary>
    public double JetSpeed => SprayCircuit.JetSpeedAt(ArmPressure);
}

/// <summary>
/// Pump, suction strainer and arms of a recirculating spray. Equations W5 to W7: a head that falls with the square of the flow meets resistances that rise with it,
/// so the flow follows without iteration.
/// </summary>
internal readonly record struct SprayCircuit
{
    // Shares of the arm pressure at the nominal point: strainer loss, shut-off head (estimates, from memory).
    private const double StrainerShare = 0.2;
    private const double ShutOffHead = 1.9;

    private readonly double head;
    private readonly double droop;
    private readonly double strainer;

    private SprayCircuit(double head, double droop, double strainer, double jets, double nominal)
    {
        this.head = head;
        this.droop = droop;
        this.strainer = strainer;
        Jets = jets;
        Nominal = nominal;
    }

    /// <summary>Effective opening of all jets, m².</summary>
    public double Jets { get; }

    /// <summary>Flow new and clean, m³/s.</summary>
    public double Nominal { get; }

    /// <summary>Circuit that gives a flow at an arm pressure when new and clean.</summary>
    /// <param name="flow">Flow, m³/s, above 0.</param>
    /// <param name="armPressure">Pressure at the arm, Pa, above 0.</param>
    public static SprayCircuit FromNominal(double flow, double armPressure)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(flow);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(armPressure);
        var perFlowSquared = armPressure / (flow * flow);
        return new SprayCircuit(
            ShutOffHead * armPressure,
            (ShutOffHead - 1 - StrainerShare) * perFlowSquared,
            StrainerShare * perFlowSquared,
            flow / Math.Sqrt(2 * armPressure / LiquidWater.Density),
            flow
        );
    }

    /// <summary>The circuit that gives the same flow at another arm pressure, against this one's.</summary>
    public SprayCircuit AtPressure(double share) => new(head * share, droop * share, strainer * share, Jets / Math.Sqrt(share), Nominal);

    /// <summary>Flows in a given condition.</summary>
    public SprayFlow At(in SprayCondition condition)
    {
        var open = Jets * (1 - condition.Plugged);
        var openings = open + condition.CapOpening;
        if (openings <= 0 || condition.Filling <= 0 || condition.Wear <= 0 || condition.Direction <= 0)
        {
            return default;
        }

        var nozzles = LiquidWater.Density / (2 * openings * openings);
        var suction = strainer * condition.Strainer;
        var full = Math.Sqrt(head * condition.Wear * condition.Wear * condition.Direction / (droop + suction + nozzles));
        var flow = full * condition.Filling;
        return new SprayFlow(
            flow,
            flow * open / openings,
            flow * condition.CapOpening / openings,
            nozzles * flow * flow,
            suction * flow * flow
        );
    }

    /// <summary>Share of the flow that a falling level still allows: all of it down to 60 % of full, none below 35 % (estimate, from memory). Equation W7.</summary>
    /// <param name="mass">Water in the tank, kg.</param>
    /// <param name="full">Water at the overflow, kg.</param>
    public static double FillingAt(double mass, double full) => Math.Clamp((mass - (0.35 * full)) / (0.25 * full), 0, 1);

    /// <summary>Speed of a jet, m/s, at a pressure in Pa. Equation W6.</summary>
    public static double JetSpeedAt(double pressure) => Math.Sqrt(2 * pressure / LiquidWater.Density);
}
