namespace Rinsewright.Engine.Machines;

/// <summary>What a site pays, in its own currency. A price that nobody has said is absent, and what it would price stays undetermined.</summary>
/// <param name="ElectricityPerKilowattHour">Electricity.</param>
/// <param name="FuelPerKilowattHour">Heat from steam or gas, losses before the machine included.</param>
/// <param name="WaterPerCubicMetre">Water with sewer.</param>
/// <param name="HotWaterPerCubicMetre">What the building's heater adds to a cubic metre at supply temperature.</param>
/// <param name="DetergentPerKilogram">Detergent.</param>
/// <param name="RinseAdditivePerKilogram">Rinse additive.</param>
/// <param name="SanitizerPerKilogram">Sanitizer, for a kilogram of the substance that counts.</param>
public sealed record Tariff(
    double? ElectricityPerKilowattHour = null,
    double? FuelPerKilowattHour = null,
    double? WaterPerCubicMetre = null,
    double? HotWaterPerCubicMetre = null,
    double? DetergentPerKilogram = null,
    double? RinseAdditivePerKilogram = null,
    double? SanitizerPerKilogram = null
);

/// <summary>How a machine is used on a day.</summary>
/// <param name="Racks">Racks, not negative.</param>
/// <param name="StandByHours">Hours hot and without racks, not negative.</param>
/// <param name="Fills">Times the tanks are filled and heated, not negative.</param>
public sealed record DayOfUse(double Racks, double StandByHours, double Fills = 1);

/// <summary>One thing that a day costs.</summary>
/// <param name="Id"><c>electricity</c>, <c>fuel</c>, <c>water</c>, <c>hotWater</c>, <c>detergent</c>, <c>rinseAdditive</c> or <c>sanitizer</c>.</param>
/// <param name="Quantity">How much of it, in kWh, m³ or kg.</param>
/// <param name="Cost">In the currency of the tariff; null where its price is not known.</param>
public sealed record CostLine(string Id, double Quantity, double? Cost);

/// <summary>A day's use and cost.</summary>
/// <param name="Lines">What the machine takes; nothing it takes none of.</param>
/// <param name="Total">Sum; null while a price is missing.</param>
public sealed record DayCost(IReadOnlyList<CostLine> Lines, double? Total)
{
    internal static DayCost Of(ModelParameters p, SteadyReading reading, DayOfUse day, Tariff tariff)
    {
        if (!(day.Racks >= 0 && day.StandByHours >= 0 && day.Fills >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(day), day, "Racks, hours and fills of a day are not negative.");
        }

        var racks = reading.Of(Observables.RacksPerHour.Id)?.Value?.Value ?? reading.RacksPerHour;
        double washing = day.Racks / racks,
            waiting = day.StandByHours;
        var (electric, fuel, water) = FillOf(p);
        double Over(Func<Consumption, double> of) => (washing * of(reading.Load)) + (waiting * of(reading.StandBy));
        var cubicMetres = (Over(c => c.WaterLitrePerHour) / 1000) + (day.Fills * water);
        List<CostLine> lines =
        [
            Line("electricity", Over(c => c.ElectricKilowatt) + (day.Fills * electric), tariff.ElectricityPerKilowattHour),
            Line("fuel", Over(c => c.FuelKilowatt) + (day.Fills * fuel), tariff.FuelPerKilowattHour),
            Line("water", cubicMetres, tariff.WaterPerCubicMetre),
            Line("hotWater", cubicMetres, tariff.HotWaterPerCubicMetre),
            Line("detergent", Over(c => c.DetergentGramPerHour) / 1000, tariff.DetergentPerKilogram),
            Line("rinseAdditive", Over(c => c.RinseAdditiveGramPerHour) / 1000, tariff.RinseAdditivePerKilogram),
            Line("sanitizer", Over(c => c.SanitizerGramPerHour) / 1000, tariff.SanitizerPerKilogram),
        ];
        lines.RemoveAll(l => l.Quantity <= 0);
        double? total = 0;
        foreach (var line in lines)
        {
            total += line.Cost;
        }

        return new DayCost(lines, total);
    }

    private static CostLine Line(string id, double quantity, double? price) => new(id, quantity, quantity * price);

    // Filling the tanks and heating water and metal to the set points: kWh, kWh, m³. What the heater loses meanwhile counts as stand-by.
    private static (double Electric, double Fuel, double Water) FillOf(ModelParameters p)
    {
        double electric = 0,
            fuel = 0,
            water = 0;
        foreach (var t in p.Tanks)
        {
            if (t.FillFlow <= 0)
            {
                continue;
            }

            water += t.Closes / Water.LiquidWater.Density;
            if (t.Heater is not { } heater)
            {
                continue;
            }

            var set = heater.SetPoint - heater.SensorOffset;
            var heat =
                (t.Closes * Water.LiquidWater.HeatCapacity * Math.Max(0, set - p.SupplyTemperature))
                + (t.Metal * Math.Max(0, set - p.RoomTemperature));
            electric += heater.Burns ? 0 : heat / 3.6e6;
            fuel += heater.Burns ? heat / 3.6e6 : 0;
        }

        return (electric, fuel, water);
    }
}
