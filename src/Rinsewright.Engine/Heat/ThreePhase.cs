namespace Rinsewright.Engine.Heat;

/// <summary>What three resistive elements draw, against three healthy ones at their rated voltage.</summary>
/// <param name="Power">Heat, 1 healthy.</param>
/// <param name="LineA">Current of the first line, 1 healthy.</param>
/// <param name="LineB">Current of the second line.</param>
/// <param name="LineC">Current of the third line.</param>
internal readonly record struct ElementDraw(double Power, double LineA, double LineB, double LineC);

/// <summary>
/// Three resistive elements on three lines, with a line lost or an element open. Equation H9: node voltages and currents of the circuit as it then stands, each element with the
/// same resistance. Elements: 1 whole, 0 open.
/// </summary>
internal static class ThreePhase
{
    private static readonly Phasor A = new(1, 0);
    private static readonly Phasor B = Phasor.At(-2 * Math.PI / 3);
    private static readonly Phasor C = Phasor.At(2 * Math.PI / 3);

    /// <summary>Elements between the lines.</summary>
    /// <param name="ab">Element between the first and the second line.</param>
    /// <param name="bc">Element between the second and the third line.</param>
    /// <param name="ca">Element between the third and the first line.</param>
    /// <param name="lineC">Third line: true live, false lost.</param>
    /// <param name="voltage">Voltage against rated.</param>
    public static ElementDraw Delta(double ab, double bc, double ca, bool lineC = true, double voltage = 1)
    {
        // A lost line leaves its two elements in series between the other two.
        var c =
            lineC ? C
            : bc + ca > 0 ? ((bc * B) + (ca * A)) / (bc + ca)
            : default(Phasor);
        Phasor i1 = ab * (A - B),
            i2 = bc * (B - c),
            i3 = ca * (c - A);
        // Healthy: each element sees √3, its power is 3, the line current is 3.
        return Draw(Square(i1) + Square(i2) + Square(i3), i1 - i3, i2 - i1, lineC ? i3 - i2 : default(Phasor), 9, 3, voltage);
    }

    /// <summary>Elements to a star point that floats.</summary>
    /// <param name="a">Element of the first line.</param>
    /// <param name="b">Element of the second line.</param>
    /// <param name="c">Element of the third line; 0 also where that line is lost, which is the same.</param>
    /// <param name="voltage">Voltage against rated.</param>
    public static ElementDraw Wye(double a, double b, double c, double voltage = 1)
    {
        var star = a + b + c > 0 ? ((a * A) + (b * B) + (c * C)) / (a + b + c) : default(Phasor);
        return Star(a, b, c, star, voltage);
    }

    /// <summary>Elements to a star point tied to neutral; arguments as for <see cref="Wye"/>.</summary>
    public static ElementDraw WyeWithNeutral(double a, double b, double c, double voltage = 1) => Star(a, b, c, default(Phasor), voltage);

    private static ElementDraw Star(double a, double b, double c, Phasor star, double voltage)
    {
        Phasor i1 = a * (A - star),
            i2 = b * (B - star),
            i3 = c * (C - star);
        return Draw(Square(i1) + Square(i2) + Square(i3), i1, i2, i3, 3, 1, voltage);
    }

    // Power in an element of resistance 1 is the square of its current.
    private static ElementDraw Draw(double power, Phasor a, Phasor b, Phasor c, double healthyPower, double healthyLine, double voltage) =>
        new(
            power / healthyPower * voltage * voltage,
            a.Magnitude / healthyLine * voltage,
            b.Magnitude / healthyLine * voltage,
            c.Magnitude / healthyLine * voltage
        );

    private static double Square(Phasor current) => (current.Real * current.Real) + (current.Imaginary * current.Imaginary);

    // The library's complex number would be the only reason to fetch System.Runtime.Numerics before the first page.
    private readonly record struct Phasor(double Real, double Imaginary)
    {
        public double Magnitude => double.Hypot(Real, Imaginary);

        public static Phasor At(double angle) => new(Math.Cos(angle), Math.Sin(angle));

        public static Phasor operator +(Phasor a, Phasor b) => new(a.Real + b.Real, a.Imaginary + b.Imaginary);

        public static Phasor operator -(Phasor a, Phasor b) => new(a.Real - b.Real, a.Imaginary - b.Imaginary);

        public static Phasor operator *(double times, Phasor a) => new(times * a.Real, times * a.Imaginary);

        public static Phasor operator /(Phasor a, double by) => new(a.Real / by, a.Imaginary / by);
    }
}
