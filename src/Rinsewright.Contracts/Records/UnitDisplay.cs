using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Contracts.Records;

/// <summary>In which units values are shown. Never two systems in one figure.</summary>
public enum UnitDisplay
{
    /// <summary>As they were read.</summary>
    AsRead,

    /// <summary>US customary: °F, psi.</summary>
    Us,

    /// <summary>SI with degrees Celsius: °C, kPa.</summary>
    Si,
}

/// <summary>Turns amounts into the unit they are shown in, by exact definitions.</summary>
public static class Shown
{
    // Units of about the same size in both systems; what has no counterpart (mL, g/L, kW, s) is shown as it was read.
    private static readonly (Unit Us, Unit Si)[] Pairs =
    [
        (Units.Gallon, Units.Litre),
        (Units.GallonPerMinute, Units.LitrePerMinute),
        (Units.GallonPerHour, Units.LitrePerHour),
        (Units.Inch, Units.Centimetre),
        (Units.Foot, Units.Metre),
        (Units.SquareFoot, Units.SquareMetre),
        (Units.FootPerMinute, Units.MetrePerMinute),
        (Units.Pound, Units.Kilogram),
        (Units.GrainPerGallon, Units.HardnessMilligramPerLitre),
    ];

    /// <summary>The unit in which values read in <paramref name="read"/> are shown.</summary>
    public static Unit UnitFor(Unit read, UnitDisplay display) =>
        (display, read.Dimension) switch
        {
            (UnitDisplay.Us, Dimension.Temperature) => Units.Fahrenheit,
            (UnitDisplay.Si, Dimension.Temperature) => Units.Celsius,
            (UnitDisplay.Us, Dimension.TemperatureDifference) => Units.FahrenheitDifference,
            (UnitDisplay.Si, Dimension.TemperatureDifference) => Units.CelsiusDifference,
            (UnitDisplay.Us, Dimension.GaugePressure) => Units.Psi,
            (UnitDisplay.Si, Dimension.GaugePressure) => Units.Kilopascal,
            _ when display != UnitDisplay.AsRead => Pairs.FirstOrDefault(p => (display == UnitDisplay.Us ? p.Si : p.Us) == read)
                is { Us: { } us, Si: { } si }
                ? (display == UnitDisplay.Us ? us : si)
                : read,
            _ => read,
        };

    /// <summary>An amount as shown; unchanged where its unit is not known.</summary>
    public static AmountDto In(AmountDto amount, UnitDisplay display)
    {
        var read = Units.Find(amount.Unit);
        if (read is null)
        {
            return amount;
        }

        var shown = UnitFor(read, display);
        return shown == read ? amount : new AmountDto(new Amount(amount.Value, read).In(shown).Value, shown.Ucum);
    }

    /// <summary>
    /// A limit for a reading taken in <paramref name="readUnit"/>: the figure printed in that unit, which is what the reading was judged
    /// against, then converted exactly where it is shown in another. So the drawn line never contradicts the verdict.
    /// </summary>
    public static AmountDto LimitFor(LimitDto limit, string readUnit, UnitDisplay display)
    {
        var judged = limit.Printed.FirstOrDefault(p => p.Unit == readUnit);
        if (judged is null)
        {
            judged = limit.Printed[0];
            var from = Units.Find(judged.Unit);
            var to = Units.Find(readUnit);
            if (from is not null && to is not null && from.Dimension == to.Dimension)
            {
                judged = new AmountDto(new Amount(judged.Value, from).In(to).Value, to.Ucum);
            }
        }

        return In(judged, display);
    }
}
