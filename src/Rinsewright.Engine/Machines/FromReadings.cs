using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>
/// One figure of a machine from one reading, closed form. Equations K1 to K15 of this folder's README, in the order in which they are best used: each needs
/// only what the ones before it gave. Plain numbers: kg, s, W, °C, m, Pa. Null where the readings do not determine the figure.
/// </summary>
internal static class FromReadings
{
    /// <summary>Share by which the heat needed may pass the heat there is before one of the readings is called wrong. Equation K15.</summary>
    public const double ContradictionMargin = 0.25;

    /// <summary>Heat a heater gives, W, from a heat-up with no water moving and no pump. Equation K1.</summary>
    /// <param name="body">Water and metal, with their shell loss.</param>
    /// <param name="from">At the start, °C.</param>
    /// <param name="to">At the end, °C.</param>
    /// <param name="seconds">Between them.</param>
    /// <param name="vent">Heat the air takes at the mean temperature, W.</param>
    public static double? HeaterPower(LumpedHeat body, double from, double to, double seconds, double vent) =>
        seconds > 0 ? (body.Capacity * (to - from) / seconds) + (body.Loss * (((from + to) / 2) - body.Room)) + vent : null;

    /// <summary>Opening of a leak, m², from the fall of the level with the fill shut. Equation K3 (K2, time from power, is <see cref="LumpedHeat.SecondsBetween"/>).</summary>
    /// <param name="surface">Water surface, m².</param>
    /// <param name="from">Depth at the start, m.</param>
    /// <param name="to">Depth at the end, m.</param>
    /// <param name="seconds">Between them.</param>
    public static double? LeakOpening(double surface, double from, double to, double seconds) =>
        seconds > 0 && to >= 0 && from >= to
            ? 2 * surface * (Math.Sqrt(from) - Math.Sqrt(to)) / (seconds * Math.Sqrt(2 * LiquidWater.Gravity))
            : null;

    /// <summary>Leak, kg/s, from how much of the time the fill runs while idle. Equation K4.</summary>
    public static double LeakFromFillDuty(double duty, double fillFlow, double evaporation) => (duty * fillFlow) - evaporation;

    /// <summary>Fill flow, kg/s, from the time an empty tank takes to the upper float. Equation K5.</summary>
    public static double? FillFlow(double mass, double seconds) => seconds > 0 ? mass / seconds : null;

    /// <summary>How long the final rinse runs for one rack alone, s. Equation K6.</summary>
    /// <param name="rack">Length of the rack, m.</param>
    /// <param name="switched">Length over which the switch is held, m.</param>
    /// <param name="speed">Of the ware, m/s.</param>
    public static double? RinseSeconds(double rack, double switched, double speed) => speed > 0 ? (rack + switched) / speed : null;

    /// <summary>
    /// Nozzle coefficient of flow = K · √pressure from the water of one rack and the pressure meanwhile. Equation K6. Water and pressure together part limed
    /// nozzles from low pressure; neither does alone. In the units of its arguments.
    /// </summary>
    /// <param name="water">Used for one rack that comes alone.</param>
    /// <param name="seconds">The rinse ran.</param>
    /// <param name="pressure">At the arm, above 0.</param>
    public static double? NozzleCoefficient(double water, double seconds, double pressure) =>
        seconds > 0 && pressure > 0 ? water / seconds / Math.Sqrt(pressure) : null;

    /// <summary>Heat a booster gives, W, while it runs without cutting out. Equation K7.</summary>
    /// <param name="flow">kg/s.</param>
    /// <param name="supply">Water in, °C.</param>
    /// <param name="delivered">Water out, °C.</param>
    /// <param name="shell">Shell loss, W/K.</param>
    /// <param name="room">°C.</param>
    public static double BoosterPower(double flow, double supply, double delivered, double shell, double room) =>
        (flow * LiquidWater.HeatCapacity * (delivered - supply)) + (shell * (delivered - room));

    /// <summary>
    /// Overflow, kg/s, from how a product thins out with its dosing off. Equation K8; exact for one tank, some percent low where the overflow of the next tank brings some back.
    /// </summary>
    public static double? OverflowFromDilution(double mass, double from, double to, double seconds) =>
        seconds > 0 && to > 0 && from > 0 ? mass / seconds * Math.Log(from / to) : null;

    /// <summary>Share of the wash pump's flow that crosses to the pumped rinse and back, from detergent in both tanks. Equation K9.</summary>
    /// <param name="ratio">Detergent of the rinse tank against that of the wash tank, 0 to below 1.</param>
    /// <param name="fresh">Fresh water the rinse tank gets, net, kg/s.</param>
    /// <param name="film">Water ware carries over, kg/s.</param>
    /// <param name="left">Share of the film the final rinse leaves.</param>
    /// <param name="pump">Flow of the wash pump, kg/s.</param>
    public static double? CrossFlow(double ratio, double fresh, double film, double left, double pump) =>
        ratio < 1 && pump > 0 ? ((ratio * fresh) - (film * (1 - (ratio * left)))) / (pump * (1 - ratio)) : null;

    /// <summary>Heat loss, W/K, from cooling with everything off. Equation K10. Counts the vapour of the idle air too.</summary>
    public static double? HeatLoss(double capacity, double from, double to, double room, double seconds) =>
        seconds > 0 && to > room && from >= to ? capacity / seconds * Math.Log((from - room) / (to - room)) : null;

    /// <summary>Supply temperature, °C, from the duty of a booster that holds its set point. Equation K11.</summary>
    public static double? SupplyTemperature(double delivered, double duty, double power, double flow) =>
        flow > 0 ? delivered - (duty * power / (flow * LiquidWater.HeatCapacity)) : null;

    /// <summary>Racks an hour, back to back. Equation K12.</summary>
    public static double RacksPerHour(double speed, double pitch) => 3600 * speed / pitch;

    /// <summary>What a probe makes of the true strength, from the set point it holds and a titration. Equation K13.</summary>
    public static double? ProbeFactor(double setPoint, double titrated) => titrated > 0 ? setPoint / titrated : null;

    /// <summary>Water lost as vapour while running, kg/s. Equation K14; idle and without leak it is the make-up itself.</summary>
    public static double VapourLoss(double supplied, double drained) => supplied - drained;

    /// <summary>Heat needed for what is said to happen, W. Equation K15.</summary>
    /// <param name="racksPerSecond">Load.</param>
    /// <param name="rackHeat">Heat one rack takes per kelvin, J/K.</param>
    /// <param name="rise">Its rise, K.</param>
    /// <param name="vent">Heat the air takes, W.</param>
    /// <param name="makeUp">Heat for cold water coming in, W.</param>
    public static double HeatNeeded(double racksPerSecond, double rackHeat, double rise, double vent, double makeUp) =>
        (racksPerSecond * rackHeat * rise) + vent + makeUp;

    /// <summary>Whether heat needed and heat there is contradict each other: one of the readings is wrong then. Equation K15.</summary>
    public static bool Contradict(double needed, double power, double duty) => needed > power * duty * (1 + ContradictionMargin);
}
