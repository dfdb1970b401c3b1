using Rinsewright.Engine.Heat;

namespace Rinsewright.Engine.Machines;

// The heat balance of each tank as a row of a linear system in the tank temperatures; what heaters give is left open. Equations M16 and M17.
internal sealed partial class SteadySolver
{
    private readonly double[] affine = new double[tanks];

    private void AssembleHeat(SteadySolution s)
    {
        Array.Clear(balance);
        Array.Clear(known);
        for (var i = 0; i < tanks; i++)
        {
            ref readonly var t = ref s.Tanks[i];
            var tank = p.Tanks[i];
            balance[(i * tanks) + i] += tank.Shell + t.VentSlope + (HeatCapacity * t.Out);
            known[i] +=
                (HeatCapacity * t.Fill * p.SupplyTemperature)
                + t.PumpHeat
                + (tank.Shell * room.Celsius)
                - t.Vent
                + (t.VentSlope * t.Celsius);
            for (var j = 0; j < tanks; j++)
            {
                var flow =
                    (p.Tanks[j].SpillsTo == i ? s.Tanks[j].Overflow : 0)
                    + (i == j + 1 ? s.Tanks[j].CrossOn : 0)
                    + (i == j - 1 ? s.Tanks[j].CrossBack : 0);
                balance[(i * tanks) + j] -= HeatCapacity * flow;
            }
        }

        var last = tanks - 1;
        var caught = p.Rinse?.Captured ?? 0;
        known[last] += caught * ((s.MeanRinse * HeatCapacity * s.Booster) - s.RinseVent);
        if (s.Duties.Racks > 0)
        {
            var ware = p.Ware;
            var film = s.Duties.Racks * ware.CarryOver * HeatCapacity;
            Carry(s, s.Duties.Racks * ware.PieceHeat, ware.Thickness / 2, ware.Material, caught);
            Carry(s, s.Duties.Racks * ware.RackHeat, ware.RackHalfThickness, Material.Polypropylene, caught);
            CarryFilm(s, film);
        }
    }

    // A stream of ware, W/K, relaxes to each water in turn; its temperature is known plus a sum of shares of the tanks'.
    private void Carry(SteadySolution s, double stream, double halfThickness, Material material, double caught)
    {
        if (stream <= 0)
        {
            return;
        }

        Array.Clear(affine);
        var constant = p.Ware.In;
        for (var i = 0; i < tanks; i++)
        {
            var t = s.Tanks[i];
            if (t.Transfer <= 0)
            {
                continue;
            }

            var share = Approach(Duties.SecondsIn(p, i), material, halfThickness, t.Transfer);
            // To tank i: stream · share · (T_i − what comes in).
            balance[(i * tanks) + i] += stream * share;
            for (var j = 0; j < tanks; j++)
            {
                balance[(i * tanks) + j] -= stream * share * affine[j];
                affine[j] *= 1 - share;
            }

            known[i] += stream * share * constant;
            constant *= 1 - share;
            affine[i] += share;
        }

        if (s.RinseTransfer > 0)
        {
            var last = tanks - 1;
            var share = Approach(Duties.SecondsUnderRinse(p), material, halfThickness, s.RinseTransfer);
            known[last] -= caught * stream * share * (s.RinseOnWare - constant);
            for (var j = 0; j < tanks; j++)
            {
                balance[(last * tanks) + j] -= caught * stream * share * affine[j];
            }
        }
    }

    private static double Approach(double seconds, Material material, double halfThickness, double transfer) =>
        1 - Math.Exp(-seconds / material.MeanTimeConstant(halfThickness, transfer));

    // Carried water, W/K: given to each tank and taken from it again.
    private void CarryFilm(SteadySolution s, double film)
    {
        var from = -1;
        for (var i = 0; i < tanks; i++)
        {
            if (s.Tanks[i].Transfer <= 0)
            {
                continue;
            }

            balance[(i * tanks) + i] += film;
            if (from < 0)
            {
                known[i] += film * p.Ware.In;
            }
            else
            {
                balance[(i * tanks) + from] -= film;
            }

            from = i;
        }
    }
}
