using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Client.Parts;

/// <summary>What a band strip shows under a field: walls of the rule, bracket of the usual values, the reading. In one unit.</summary>
/// <param name="Low">Value at the left end.</param>
/// <param name="High">Value at the right end.</param>
/// <param name="WallLow">Least value allowed; null for none.</param>
/// <param name="WallHigh">Most allowed; null for none.</param>
/// <param name="UsualLow">Least usual value; null for none.</param>
/// <param name="UsualHigh">Most usual value; null for none.</param>
/// <param name="Value">The reading; null where nothing is typed.</param>
public sealed record BandScale(
    double Low,
    double High,
    double? WallLow,
    double? WallHigh,
    double? UsualLow,
    double? UsualHigh,
    double? Value
)
{
    /// <summary>Whether there is anything to show.</summary>
    public bool HasLimits => WallLow is not null || WallHigh is not null || UsualLow is not null || UsualHigh is not null;

    /// <summary>The scale of the limits at one point, in the unit of the field.</summary>
    /// <param name="limits">Limits in force at the point.</param>
    /// <param name="unit">Unit of the field.</param>
    /// <param name="value">The reading in that unit; null where nothing is typed.</param>
    public static BandScale For(IEnumerable<LimitDto> limits, Unit unit, double? value)
    {
        double? wallLow = null,
            wallHigh = null,
            usualLow = null,
            usualHigh = null;
        foreach (var limit in limits)
        {
            if (In(limit, unit) is not { } figure)
            {
                continue;
            }

            switch (limit.Sense, limit.Force)
            {
                case ("minimum", "commonPractice"):
                    usualLow = Larger(usualLow, figure);
                    break;
                case ("minimum", _):
                    wallLow = Larger(wallLow, figure);
                    break;
                case (_, "commonPractice"):
                    usualHigh = Smaller(usualHigh, figure);
                    break;
                default:
                    wallHigh = Smaller(wallHigh, figure);
                    break;
            }
        }

        double[] marks = [.. new[] { wallLow, wallHigh, usualLow, usualHigh }.OfType<double>()];
        if (marks.Length == 0)
        {
            return new BandScale(0, 1, null, null, null, null, value);
        }

        var (low, high) = (marks.Min(), marks.Max());
        var room = Math.Max((high - low) * 0.35, Math.Abs(high) * 0.08);
        return new BandScale(low - room, high + room, wallLow, wallHigh, usualLow, usualHigh, value);
    }

    /// <summary>Place of a value between 0 and 1, kept on the strip.</summary>
    public double Share(double value) => Math.Clamp((value - Low) / (High - Low), 0, 1);

    private static double? In(LimitDto limit, Unit unit)
    {
        if (limit.Printed.FirstOrDefault(p => p.Unit == unit.Ucum) is { } printed)
        {
            return printed.Value;
        }

        return Units.Find(limit.Printed[0].Unit) is { } u && u.Dimension == unit.Dimension
            ? Math.Round(new Amount(limit.Printed[0].Value, u).In(unit).Value, 1)
            : null;
    }

    private static double Larger(double? a, double b) => a is { } x ? Math.Max(x, b) : b;

    private static double Smaller(double? a, double b) => a is { } x ? Math.Min(x, b) : b;
}
