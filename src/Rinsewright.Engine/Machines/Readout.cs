using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>Turns sums and solutions into observables.</summary>
internal sealed partial class Readout
{
    private const double LitrePerKilogram = 1000 / LiquidWater.Density;
    private readonly List<Observed> read = [];

    /// <summary>What was read, in the order of <see cref="Observables.All"/>.</summary>
    public IReadOnlyList<Observed> InOrder()
    {
        var order = new List<Observed>(read.Count);
        foreach (var observable in Observables.All)
        {
            order.AddRange(read.FindAll(o => ReferenceEquals(o.Observable, observable)));
        }

        return order;
    }

    /// <summary>Adds a value; NaN and infinite say that nothing of the kind happens.</summary>
    public void Add(Observable observable, double value) =>
        read.Add(
            double.IsFinite(value)
                ? new Observed(observable, new Amount(value, observable.Unit))
                : new Observed(observable, null, Absence.Nothing)
        );

    /// <summary>Adds a temperature in °C.</summary>
    public void AddCelsius(Observable observable, double celsius) => Add(observable, (celsius * 1.8) + 32);

    /// <summary>Adds a time in s; negative says never.</summary>
    public void AddTime(Observable observable, double seconds) =>
        read.Add(
            seconds >= 0 ? new Observed(observable, new Amount(seconds, observable.Unit)) : new Observed(observable, null, Absence.Never)
        );

    /// <summary>Adds the times of a cold start, s; negative says never.</summary>
    public void Start(double fill, double heat)
    {
        AddTime(Observables.FillTime, fill);
        AddTime(Observables.HeatUpTime, heat);
    }

    /// <summary>Reads a machine without racks.</summary>
    public void Idle(Meter m)
    {
        Add(Observables.IdleTankPower, m.TankPower / 1000);
        Add(Observables.IdleBoosterPower, m.Booster / m.Seconds / 1000);
        Add(Observables.IdleWater, m.LitrePerHour(m.Fill + m.Rinse));
    }

    /// <summary>Reads a machine with racks.</summary>
    public void Load(ModelParameters p, Meter m)
    {
        var racks = (double)m.Groups / p.Ware.Groups;
        var wash = p.Tanks[p.Wash];
        AddCelsius(Observables.WashTankTemperature, m.Celsius(p.Wash));
        AddCelsius(Observables.WashGaugeTemperature, m.Celsius(p.Wash) + wash.GaugeOffset);
        Tanks(p, m);
        if (p.Rinse is { } rinse)
        {
            var mean = m.RinseCelsius / m.RinseSeconds;
            AddCelsius(Observables.FinalRinseTemperature, mean);
            AddCelsius(Observables.FinalRinseLowest, m.RinseSeconds > 0 ? m.RinseColdest : double.NaN);
            AddCelsius(Observables.FinalRinseGaugeTemperature, mean + rinse.GaugeOffset);
            Add(Observables.FinalRinsePressure, m.RinseSeconds > 0 ? Units.Psi.FromSI(rinse.Running.Pressure) : 0);
            Add(Observables.RinseVolumePerRack, Gallons(m.Rinse / racks));
        }

        if (p.Booster is not null)
        {
            Add(Observables.BoosterPower, m.Booster / m.Seconds / 1000);
        }

        Add(Observables.MakeUpWater, m.LitrePerHour(m.Fill));
        Add(Observables.DrainWater, m.LitrePerHour(m.Drain));
        Add(Observables.FloorWater, m.LitrePerHour(m.Floor));
        Add(Observables.WashHeaterPower, m.Heater[p.Wash] / m.Seconds / 1000);
        Add(Observables.WashArmPressure, Units.Psi.FromSI(m.ArmPressure / m.WashSeconds));
        Add(Observables.WashTankLevel, 100 * m.WashMass / m.Seconds / wash.Full);
        Add(Observables.WashDetergent, 1000 * m.DetergentIn(p.Wash) / LitrePerKilogram);
        Add(Observables.DetergentPerRack, 1000 * m.Detergent / racks);
        Add(Observables.WashSoil, 1000 * m.WashSoil / m.Seconds / LitrePerKilogram);
        Ware(p, m);
        Add(Observables.VentHeat, m.Vent / m.Seconds / 1000);
        Add(Observables.RacksPerHour, racks / m.Seconds * 3600);
    }

    /// <summary>Reads a steady state without racks.</summary>
    public void Idle(SteadySolution s)
    {
        double power = 0,
            water = s.MeanRinse;
        foreach (ref readonly var t in s.Tanks.AsSpan())
        {
            power += t.Power;
            water += t.Fill;
        }

        Add(Observables.IdleTankPower, power / 1000);
        Add(Observables.IdleBoosterPower, s.BoosterPower / 1000);
        Add(Observables.IdleWater, 3600 * water * LitrePerKilogram);
    }

    /// <summary>Tanks of a steady state without racks, where the scenario has no load of its own.</summary>
    public void TanksWithoutRacks(ModelParameters p, SteadySolution s)
    {
        AddCelsius(Observables.WashTankTemperature, s.Tanks[p.Wash].Celsius);
        for (var i = 0; i < p.Tanks.Length; i++)
        {
            if (p.Tanks[i].Duty is TankDuty.Prewash or TankDuty.PumpedRinse)
            {
                AddCelsius(
                    p.Tanks[i].Duty == TankDuty.Prewash ? Observables.PrewashTankTemperature : Observables.RinseTankTemperature,
                    s.Tanks[i].Celsius
                );
            }
        }
    }

    /// <summary>Reads a machine at full rate.</summary>
    public void FullRate(ModelParameters p, SteadySolution s)
    {
        if (p.Travel.Cycle is { Dumps: true })
        {
            // New water with every rack: there is no balance to speak of.
            return;
        }

        AddCelsius(Observables.WashTankFullRate, s.Tanks[p.Wash].Celsius);
        if (p.Rinse is not null)
        {
            AddCelsius(Observables.FinalRinseFullRate, s.Duties.Rinse > 0 ? s.Booster : double.NaN);
        }
    }

    private void Tanks(ModelParameters p, Meter m)
    {
        for (var i = 0; i < p.Tanks.Length; i++)
        {
            if (p.Tanks[i].Duty == TankDuty.Prewash)
            {
                AddCelsius(Observables.PrewashTankTemperature, m.Celsius(i));
            }
            else if (p.Tanks[i].Duty == TankDuty.PumpedRinse)
            {
                AddCelsius(Observables.RinseTankTemperature, m.Celsius(i));
                Add(Observables.RinseHeaterPower, m.Heater[i] / m.Seconds / 1000);
                Add(Observables.RinseTankDetergent, 1000 * m.DetergentIn(i) / LitrePerKilogram);
            }
        }
    }

    private void Ware(ModelParameters p, Meter m)
    {
        var n = m.Groups;
        AddCelsius(Observables.PlatePeakTemperature, m.Ware[0] / n);
        Add(Observables.PlateHeatUnits, m.Ware[1] / n);
        Add(Observables.PlateEquivalentTime, m.Ware[2] / n);
        AddCelsius(Observables.WareExitTemperature, m.Ware[3] / n);
        Add(Observables.SoilLeft, p.Ware.Soil > 0 ? 100 * m.Ware[4] / n / (p.Ware.Soil / p.Ware.Groups) : double.NaN);
        Add(Observables.DetergentOnWare, 1e6 * m.Ware[5] / n);
        Add(Observables.AdditiveOnWare, 1e6 * m.Ware[6] / n);
        if (p.Feed.Sanitizer > 0)
        {
            Add(Observables.SanitizerOnWare, 1e6 * m.Ware[7] / n);
        }
    }

    /// <summary>Gallons of a mass of water in kg.</summary>
    public static double Gallons(double kilogram) => kilogram / LiquidWater.Density / Units.Gallon.ToSI(1);
}
