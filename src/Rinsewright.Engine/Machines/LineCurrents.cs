using Rinsewright.Engine.Heat;

namespace Rinsewright.Engine.Machines;

/// <summary>Heat an electric heater gives, from the currents of its lines. Equations K18 and H9.</summary>
internal static class LineCurrents
{
    // Share by which the line voltage may be off what the description says (estimate, no source).
    private const double VoltageShare = 0.03;

    /// <summary>
    /// Heat, W, with its standard uncertainty as a share. The pattern of the three currents says which element or line is missing, their size how much the others give at the voltage of the
    /// building. Null where the description lacks rating or voltage.
    /// </summary>
    public static (double Power, double Share)? Power(Heater heater, double volts, ReadOnlySpan<double> amperes, double share)
    {
        if (
            heater
            is not { Kind: HeaterKind.Electric, Rated.Value.InWatt: > 0 and var rated, RatedVoltage.Value.InVolt: > 0 and var ratedVolts }
        )
        {
            return null;
        }

        var uncertainty = Math.Sqrt((share * share) + (VoltageShare * VoltageShare));
        if (heater.Connection == Connection.SinglePhase)
        {
            return (volts * amperes[0], uncertainty);
        }

        double healthy = rated / (Math.Sqrt(3) * ratedVolts),
            least = double.PositiveInfinity,
            power = 0;
        foreach (var draw in Patterns(heater.Connection))
        {
            double across = (amperes[0] * draw.LineA) + (amperes[1] * draw.LineB) + (amperes[2] * draw.LineC),
                own = (draw.LineA * draw.LineA) + (draw.LineB * draw.LineB) + (draw.LineC * draw.LineC);
            var size = across / own;
            var off =
                Square(amperes[0] - (size * draw.LineA))
                + Square(amperes[1] - (size * draw.LineB))
                + Square(amperes[2] - (size * draw.LineC));
            if (off < least)
            {
                least = off;
                power = draw.Power * (size / healthy) * (volts / ratedVolts) * rated;
            }
        }

        return (power, uncertainty);
    }

    private static IEnumerable<ElementDraw> Patterns(Connection connection)
    {
        Func<double, double, double, ElementDraw> of =
            connection == Connection.Delta ? (a, b, c) => ThreePhase.Delta(a, b, c)
            : connection == Connection.Wye ? (a, b, c) => ThreePhase.Wye(a, b, c)
            : (a, b, c) => ThreePhase.WyeWithNeutral(a, b, c);
        yield return of(1, 1, 1);
        yield return of(0, 1, 1);
        yield return of(1, 0, 1);
        yield return of(1, 1, 0);
        if (connection == Connection.Delta)
        {
            var lost = ThreePhase.Delta(1, 1, 1, lineC: false);
            yield return lost;
            yield return lost with
            {
                LineA = lost.LineC,
                LineC = lost.LineA,
            };
            yield return lost with
            {
                LineB = lost.LineC,
                LineC = lost.LineB,
            };
        }
    }

    private static double Square(double x) => x * x;
}
