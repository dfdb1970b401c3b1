using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

// A steady state with racks, read as a stepped run is.
internal sealed partial class Readout
{
    /// <summary>Reads a steady state with racks.</summary>
    public void Load(ModelParameters p, SteadySolution s, SteadySolutes solutes, PlateResult plate)
    {
        var racks = s.Duties.Racks;
        ref readonly var wash = ref s.Tanks[p.Wash];
        AddCelsius(Observables.WashTankTemperature, wash.Celsius);
        AddCelsius(Observables.WashGaugeTemperature, wash.Celsius + p.Tanks[p.Wash].GaugeOffset);
        if (p.Rinse is { } rinse)
        {
            var sprays = s.Duties.Rinse > 0;
            var half = p.Booster is { } b && s.BoosterPower < b.Heater.HeatAt(s.Booster) ? b.Heater.Band / 2 : 0;
            AddCelsius(Observables.FinalRinseTemperature, sprays ? s.Booster : double.NaN);
            AddCelsius(Observables.FinalRinseLowest, sprays ? s.Booster - half : double.NaN);
            AddCelsius(Observables.FinalRinseGaugeTemperature, sprays ? s.Booster + rinse.GaugeOffset : double.NaN);
            Add(Observables.FinalRinsePressure, sprays ? Units.Psi.FromSI(s.Rinse.Pressure) : 0);
            Add(Observables.RinseVolumePerRack, Gallons(s.MeanRinse / racks));
        }

        if (p.Booster is not null)
        {
            Add(Observables.BoosterPower, s.BoosterPower / 1000);
        }

        Water(p, s);
        Add(Observables.WashHeaterPower, wash.Power / 1000);
        Add(Observables.WashArmPressure, Units.Psi.FromSI(wash.Spray.ArmPressure));
        Add(Observables.WashTankLevel, 100 * wash.Mass / p.Tanks[p.Wash].Full);
        Add(Observables.WashDetergent, 1000 * solutes.Detergent[p.Wash] / LitrePerKilogram);
        Add(Observables.DetergentPerRack, 1000 * solutes.Fed / racks);
        Add(Observables.WashSoil, 1000 * solutes.Soil[p.Wash] / LitrePerKilogram);
        Tanks(p, s, solutes);
        AddCelsius(Observables.PlatePeakTemperature, plate.Peak);
        Add(Observables.PlateHeatUnits, plate.HeatUnits);
        Add(Observables.PlateEquivalentTime, plate.A0);
        AddCelsius(Observables.WareExitTemperature, plate.Mean);
        Add(Observables.SoilLeft, p.Ware.Soil > 0 ? 100 * solutes.SoilLeft : double.NaN);
        Add(Observables.DetergentOnWare, 1e6 * solutes.DetergentOnWare);
        Add(Observables.AdditiveOnWare, 1e6 * solutes.AdditiveOnWare);
        Add(Observables.VentHeat, s.Vent / 1000);
        Add(Observables.RacksPerHour, racks * 3600);
    }

    /// <summary>Reads only the temperatures of a steady state with racks.</summary>
    public void Temperatures(ModelParameters p, SteadySolution s, PlateResult plate)
    {
        TanksWithoutRacks(p, s);
        if (p.Rinse is not null)
        {
            AddCelsius(Observables.FinalRinseTemperature, s.Duties.Rinse > 0 ? s.Booster : double.NaN);
        }

        AddCelsius(Observables.PlatePeakTemperature, plate.Peak);
    }

    private void Water(ModelParameters p, SteadySolution s)
    {
        double fill = 0,
            drain = s.Bypassed,
            floor = 0;
        for (var i = 0; i < s.Tanks.Length; i++)
        {
            ref readonly var t = ref s.Tanks[i];
            fill += t.Fill;
            floor += t.Floor;
            drain += t.Leak + t.Drained + (p.Tanks[i].SpillsTo < 0 ? t.Overflow : 0);
        }

        Add(Observables.MakeUpWater, 3600 * fill * LitrePerKilogram);
        Add(Observables.DrainWater, 3600 * drain * LitrePerKilogram);
        Add(Observables.FloorWater, 3600 * floor * LitrePerKilogram);
    }

    private void Tanks(ModelParameters p, SteadySolution s, SteadySolutes solutes)
    {
        for (var i = 0; i < p.Tanks.Length; i++)
        {
            ref readonly var t = ref s.Tanks[i];
            if (p.Tanks[i].Duty == TankDuty.Prewash)
            {
                AddCelsius(Observables.PrewashTankTemperature, t.Celsius);
            }
            else if (p.Tanks[i].Duty == TankDuty.PumpedRinse)
            {
                AddCelsius(Observables.RinseTankTemperature, t.Celsius);
                Add(Observables.RinseHeaterPower, t.Power / 1000);
                Add(Observables.RinseTankDetergent, 1000 * solutes.Detergent[i] / LitrePerKilogram);
            }
        }
    }
}
