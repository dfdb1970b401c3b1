using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Sanitization;

/// <summary>
/// What a figure typed by a person can be at all, by place and quantity. Outside it is a slip of the finger or of the unit, never a reading: it is
/// refused, for an impossible value must not prove anything. The figures are ours, common sense and no source: wider than anything a dish machine does.
/// </summary>
/// <param name="Least">Least that is possible, allowed itself.</param>
/// <param name="Most">Most that is possible, allowed itself.</param>
/// <param name="UsualLeast">Least that is usual; null where no other unit is mistaken for it.</param>
/// <param name="UsualMost">Most that is usual; null where no other unit is mistaken for it.</param>
public sealed record TypedRange(Amount Least, Amount Most, Amount? UsualLeast = null, Amount? UsualMost = null)
{
    // Below 0 °C water is ice; above 110 °C it is steam in a machine open to the room; a heated dryer's air may bring ware to 130 °C.
    private static readonly TypedRange Ware = Celsius(130, 35, 110);
    private static readonly TypedRange Machine = Celsius(110, 35, 100);
    private static readonly TypedRange Water = Celsius(110, 2, 62);
    private static readonly TypedRange Air = new(new(-40, Units.Celsius), new(130, Units.Celsius));
    private static readonly TypedRange Pressure = new(new(0, Units.Psi), new(200, Units.Psi), new(4, Units.Psi), new(100, Units.Psi));
    private static readonly TypedRange Concentration = new(new(0, Units.MilligramPerLitre), new(2000, Units.MilligramPerLitre));

    // Detergent in a tank is grams in a litre, dissolved solids reach those of the sea; a tank may heat up for hours when an element has failed (common practice, no source).
    private static readonly TypedRange Solution = new(new(0, Units.GramPerLitre), new(100, Units.GramPerLitre));
    private static readonly TypedRange Wait = new(new(0, Units.Minute), new(600, Units.Minute));
    private static readonly TypedRange PH = new(new(0, Units.PH), new(14, Units.PH));

    // Alkali carried over raises it by a few; acid left on ware lowers it. A pH itself, typed where its rise is asked for, lies outside.
    private static readonly TypedRange PHDifference = new(new(-4, Units.PHDifference), new(5, Units.PHDifference));
    private static readonly TypedRange Hardness = new(new(0, Units.HardnessMilligramPerLitre), new(3000, Units.HardnessMilligramPerLitre));
    private static readonly TypedRange Time = new(new(0, Units.Second), new(3600, Units.Second));

    /// <summary>The range of a reading, or of a printed figure about it; null where nothing is known to be impossible.</summary>
    /// <param name="point">Where.</param>
    /// <param name="dimension">What.</param>
    public static TypedRange? For(MeasuringPoint point, Dimension dimension) =>
        dimension switch
        {
            Dimension.Temperature => point switch
            {
                MeasuringPoint.WareSurface => Ware,
                MeasuringPoint.SanitizingSolution or MeasuringPoint.WaterSupply => Water,
                MeasuringPoint.Air or MeasuringPoint.Unknown => Air,
                _ => Machine,
            },
            Dimension.GaugePressure => Pressure,
            Dimension.MassConcentration => point == MeasuringPoint.Unknown ? Solution : Concentration,
            Dimension.Acidity => PH,
            Dimension.AcidityDifference => PHDifference,
            Dimension.Hardness => Hardness,
            Dimension.Duration => point == MeasuringPoint.Unknown ? Wait : Time,
            _ => null,
        };

    /// <summary>Why a reading cannot be; null where it can.</summary>
    /// <param name="point">Where.</param>
    /// <param name="value">As typed.</param>
    public static Statement? Refusal(MeasuringPoint point, Amount value)
    {
        if (For(point, value.Unit.Dimension) is not { } range || (value.SI >= range.Least.SI && value.SI <= range.Most.SI))
        {
            return null;
        }

        var (low, high) = (range.Least.In(value.Unit), range.Most.In(value.Unit));
        return range.Meant(value) is { } meant
            ? Statement.Of("amount.impossible-meant", ("value", value), ("low", low), ("high", high), ("meant", meant))
            : Statement.Of("amount.impossible", ("value", value), ("low", low), ("high", high));
    }

    /// <summary>Why an accuracy ± cannot be; null where it can. Nothing measures without error, so 0 is refused as well.</summary>
    /// <param name="value">Half-width as typed.</param>
    public static Statement? AccuracyRefusal(Amount value)
    {
        Amount? most = value.Unit.Dimension switch
        {
            Dimension.TemperatureDifference => new Amount(10, Units.CelsiusDifference),
            Dimension.GaugePressure => new Amount(20, Units.Psi),
            _ => null,
        };
        return value.Value > 0 && (most is not { } m || value.SI <= m.SI) ? null
            : most is { } high ? Statement.Of("amount.impossible-accuracy", ("value", value), ("high", high.In(value.Unit)))
            : Statement.Of("amount.accuracy-not-positive", ("value", value));
    }

    /// <summary>The same number in the unit it was probably meant in: where it is unusual as typed and usual in the other; else null.</summary>
    /// <param name="value">As typed.</param>
    public Amount? Meant(Amount value)
    {
        Unit? other =
            value.Unit == Units.Fahrenheit ? Units.Celsius
            : value.Unit == Units.Celsius ? Units.Fahrenheit
            : value.Unit == Units.Psi ? Units.Kilopascal
            : value.Unit == Units.Kilopascal ? Units.Psi
            : null;
        return other is null || Usual(value) || !Usual(new Amount(value.Value, other)) ? null : new Amount(value.Value, other);
    }

    /// <summary>The question whether another unit was meant, for a reading that misses its limit; null where there is no reason to ask.</summary>
    /// <param name="reading">The reading.</param>
    internal static Statement? UnitQuestion(Reading reading) =>
        For(reading.Point, reading.Value.Unit.Dimension)?.Meant(reading.Value) is { } meant
            ? Statement.Of("proof.settle-unit", ("value", reading.Value), ("meant", meant))
            : null;

    private bool Usual(Amount value) => UsualLeast is { } least && UsualMost is { } most && value.SI >= least.SI && value.SI <= most.SI;

    private static TypedRange Celsius(double most, double usualLeast, double usualMost) =>
        new(new(0, Units.Celsius), new(most, Units.Celsius), new(usualLeast, Units.Celsius), new(usualMost, Units.Celsius));
}
