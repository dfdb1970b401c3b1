using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>A reading as the estimate uses it: checked, SI with °C, its part found.</summary>
/// <param name="Places">Places of the readings it stands for in the list given; three for the currents of three lines.</param>
/// <param name="Kind">Kind.</param>
/// <param name="Tank">Index of the tank; <see cref="OfBooster"/>, or <see cref="OfNone"/>.</param>
/// <param name="Value">Value in SI, temperatures in °C.</param>
/// <param name="Sigma">Standard uncertainty: a share where the kind is proportional, else like the value.</param>
internal sealed record UsableReading(IReadOnlyList<int> Places, ReadingKind Kind, int Tank, double Value, double Sigma)
{
    /// <summary>Part of the booster.</summary>
    public const int OfBooster = -1;

    /// <summary>Part of none.</summary>
    public const int OfNone = -2;

    /// <summary>At the start, °C.</summary>
    public double From { get; init; }

    /// <summary>At the end, °C.</summary>
    public double To { get; init; }

    /// <summary>Time it took, s.</summary>
    public double Over { get; init; }

    /// <summary>Racks a second.</summary>
    public double Racks { get; init; }

    /// <summary>A reading checked against its kind and machine; the code of what is wrong where it cannot be used.</summary>
    public static (UsableReading? Usable, string? Problem) Of(ModelParameters p, MachineReading reading, int place)
    {
        if (ReadingKinds.Find(reading.Kind) is not { } kind)
        {
            return (null, "unknown-kind");
        }

        if (reading.Value.Unit.Dimension != kind.Unit.Dimension)
        {
            return (null, "other-dimension");
        }

        if (PartOf(p, kind, reading.Part) is not { } part)
        {
            return (null, "no-such-part");
        }

        if (kind.NeedsChange && (Celsius(reading.From) is null || Celsius(reading.To) is null))
        {
            return (null, "needs-change");
        }

        if (kind.NeedsTime && reading.Over is not { Unit.Dimension: Dimension.Duration, SI: > 0 })
        {
            return (null, "needs-time");
        }

        if (kind.NeedsRate && reading.RacksPerHour is not (> 0 and < 1e5))
        {
            return (null, "needs-rate");
        }

        var usable = new UsableReading([place], kind, part, Plain(reading.Value), SigmaOf(kind, reading))
        {
            From = Celsius(reading.From) ?? 0,
            To = Celsius(reading.To) ?? 0,
            Over = reading.Over?.SI ?? 0,
            Racks = (reading.RacksPerHour ?? 0) / 3600,
        };
        return usable.Possible(p) ? (usable, null) : (null, "impossible");
    }

    /// <summary>The reading less what a machine gives, in standard uncertainties.</summary>
    public double Off(double expected) => (Kind.Proportional ? Math.Log(Value / Math.Max(expected, 1e-12)) : Value - expected) / Sigma;

    private static double? Celsius(Amount? amount) =>
        amount is { Unit.Dimension: Dimension.Temperature } celsius && double.IsFinite(celsius.Value) ? Plain(celsius) : null;

    private static double Plain(Amount amount) =>
        amount.Unit.Dimension == Dimension.Temperature ? Units.Celsius.FromSI(amount.SI) : amount.SI;

    private static double SigmaOf(ReadingKind kind, MachineReading reading)
    {
        if (reading.Uncertainty is > 0 and var own)
        {
            var step = own / 2 * reading.Value.Unit.Numerator / reading.Value.Unit.Denominator;
            return kind.Proportional ? step / Math.Max(reading.Value.SI, 1e-12) : step;
        }

        return kind.Sigma;
    }

    private static int? PartOf(ModelParameters p, ReadingKind kind, string? part)
    {
        if (kind.Part == ReadingPart.None)
        {
            return Exists(p, kind) ? OfNone : null;
        }

        if (kind.Part == ReadingPart.Heater && part == "booster")
        {
            return p.Booster is null ? null : OfBooster;
        }

        var index = Array.FindIndex(p.Tanks, t => t.Id == part);
        return
            index >= 0
            && kind.Part switch
            {
                ReadingPart.Heater or ReadingPart.HeatedTank => p.Tanks[index].Heater is not null,
                ReadingPart.FilledTank => p.Tanks[index].FillFlow > 0,
                _ => true,
            }
            ? index
            : null;
    }

    private static bool Exists(ModelParameters p, ReadingKind kind) =>
        kind == ReadingKinds.ConveyorSpeed ? p.Conveys
        : kind == ReadingKinds.FinalRinseTemperature || kind == ReadingKinds.RinsePressure || kind == ReadingKinds.RinseVolumePerRack
            ? p.Rinse is not null
        : true;

    // A lost line carries nothing.
    private bool MayBeNone => Kind.Unit.Dimension == Dimension.ElectricCurrent && Value == 0;

    // What no machine can give, whatever its figures.
    private bool Possible(ModelParameters p)
    {
        if (!double.IsFinite(Value) || (Kind.Proportional && Value <= 0 && !MayBeNone))
        {
            return false;
        }

        return Kind.Unit.Dimension switch
        {
            Dimension.Temperature => Value is > -5 and < 130,
            Dimension.Ratio => Value is >= 0 and <= 1,
            Dimension.Duration when Kind == ReadingKinds.HeatUpTime => To > From && From > 0 && To < 100,
            Dimension.Duration when Kind == ReadingKinds.CoolingTime => From > To && To > p.RoomTemperature && From < 100,
            Dimension.Length => Value < p.Tanks[Tank].Full / (Water.LiquidWater.Density * p.Tanks[Tank].Surface),
            _ => Value >= 0,
        };
    }
}
