using System.Numerics;
using Rinsewright.Engine.Heat;

namespace Rinsewright.Engine.Machines;

// Heat balances, equations M16 and M17, a machine a lane.
internal sealed partial class SteadyLanes
{
    private readonly Vector<double>[] balance = new Vector<double>[tanks * tanks];
    private readonly Vector<double>[] matrix = new Vector<double>[tanks * tanks];
    private readonly Vector<double>[] known = new Vector<double>[tanks];
    private readonly Vector<double>[] right = new Vector<double>[tanks];
    private readonly Vector<double>[] affine = new Vector<double>[tanks];
    private WareLanes pieces;
    private WareLanes rack;
    private Vector<double> rinseHeat;
    private Vector<double> rinseSeconds;
    private Vector<double> rinseTransfer;
    private Vector<double> rinseOnWare;
    private Vector<double> caught;
    private Vector<double> carried;
    private Vector<double> wareIn;
    private bool load;
    private bool rinses;

    // One of the two streams of ware: heat it takes per kelvin, and its time constant as constant over coefficient plus own.
    private struct WareLanes
    {
        public Vector<double> Stream;
        public Vector<double> PerArea;
        public Vector<double> Inside;

        public void Load(double stream, Material material, double halfThickness, int lane)
        {
            Lanes.Set(ref Stream, lane, stream);
            Lanes.Set(ref PerArea, lane, material.HeatPerVolume * halfThickness);
            Lanes.Set(ref Inside, lane, halfThickness / (3 * material.Conductivity));
        }

        // Share of the way to the water in a time; 0 where nothing sprays.
        public readonly Vector<double> Approach(Vector<double> seconds, Vector<double> transfer)
        {
            var sprays = Vector.GreaterThan(transfer, Vector<double>.Zero);
            var safe = Vector.ConditionalSelect(sprays, transfer, Vector<double>.One);
            var constant = PerArea * ((Vector<double>.One / safe) + Inside);
            return Vector.ConditionalSelect(sprays, Vector<double>.One - Vector.Exp(-seconds / constant), Vector<double>.Zero);
        }
    }

    private void LoadHeat(ModelParameters p, SteadySolution s, int lane)
    {
        var catches = p.Rinse?.Captured ?? 0;
        load = s.Duties.Racks > 0;
        rinses = s.RinseTransfer > 0;
        Lanes.Set(ref caught, lane, catches);
        Lanes.Set(ref rinseHeat, lane, catches * ((s.MeanRinse * HeatCapacity * s.Booster) - s.RinseVent));
        Lanes.Set(ref rinseSeconds, lane, Duties.SecondsUnderRinse(p));
        Lanes.Set(ref rinseTransfer, lane, s.RinseTransfer);
        Lanes.Set(ref rinseOnWare, lane, s.RinseOnWare);
        Lanes.Set(ref carried, lane, s.Duties.Racks * p.Ware.CarryOver * HeatCapacity);
        Lanes.Set(ref wareIn, lane, p.Ware.In);
        pieces.Load(s.Duties.Racks * p.Ware.PieceHeat, p.Ware.Material, p.Ware.Thickness / 2, lane);
        rack.Load(s.Duties.Racks * p.Ware.RackHeat, Material.Polypropylene, p.Ware.RackHalfThickness, lane);
    }

    private void AssembleHeat()
    {
        Array.Clear(balance);
        for (var i = 0; i < tanks; i++)
        {
            var t = tank[i];
            balance[(i * tanks) + i] = t.Shell + t.VentSlope + (HeatCapacity * t.Out);
            known[i] = (HeatCapacity * t.Fill * supply) + t.PumpHeat + (t.Shell * room.Celsius) - t.Vent + (t.VentSlope * t.Celsius);
            for (var j = 0; j < tanks; j++)
            {
                var flow =
                    (tank[j].SpillsTo == i ? tank[j].Overflow : Vector<double>.Zero)
                    + (i == j + 1 ? tank[j].CrossOn : Vector<double>.Zero)
                    + (i == j - 1 ? tank[j].CrossBack : Vector<double>.Zero);
                balance[(i * tanks) + j] -= HeatCapacity * flow;
            }
        }

        known[tanks - 1] += rinseHeat;
        if (load)
        {
            Carry(pieces);
            Carry(rack);
            CarryFilm();
        }
    }

    private void Carry(WareLanes ware)
    {
        Array.Clear(affine);
        var constant = wareIn;
        for (var i = 0; i < tanks; i++)
        {
            var share = ware.Approach(tank[i].Seconds, tank[i].Transfer);
            var taken = ware.Stream * share;
            balance[(i * tanks) + i] += taken;
            for (var j = 0; j < tanks; j++)
            {
                balance[(i * tanks) + j] -= taken * affine[j];
                affine[j] *= Vector<double>.One - share;
            }

            known[i] += taken * constant;
            constant *= Vector<double>.One - share;
            affine[i] += share;
        }

        if (rinses)
        {
            var last = tanks - 1;
            var taken = caught * ware.Stream * ware.Approach(rinseSeconds, rinseTransfer);
            known[last] -= taken * (rinseOnWare - constant);
            for (var j = 0; j < tanks; j++)
            {
                balance[(last * tanks) + j] -= taken * affine[j];
            }
        }
    }

    // A lane whose tank does not spray passes its film by; what comes next takes it from the tank before.
    private void CarryFilm()
    {
        for (var i = 0; i < tanks; i++)
        {
            var here = Vector.ConditionalSelect(Sprays(i), carried, Vector<double>.Zero);
            balance[(i * tanks) + i] += here;
            for (var j = i - 1; j >= 0; j--)
            {
                var from = Vector.ConditionalSelect(Sprays(j), here, Vector<double>.Zero);
                balance[(i * tanks) + j] -= from;
                here -= from;
            }

            known[i] += here * wareIn;
        }
    }

    private Vector<long> Sprays(int i) => Vector.GreaterThan(tank[i].Transfer, Vector<double>.Zero);

    // Gives the lanes whose temperatures no longer move.
    private Vector<long> SolveHeat(Vector<long> active)
    {
        balance.CopyTo(matrix, 0);
        known.CopyTo(right, 0);
        for (var i = 0; i < tanks; i++)
        {
            var t = tank[i];
            for (var j = 0; j < tanks; j++)
            {
                var unit = i == j ? Vector<double>.One : Vector<double>.Zero;
                matrix[(i * tanks) + j] = Vector.ConditionalSelect(t.Holds, unit, matrix[(i * tanks) + j]);
            }

            matrix[(i * tanks) + i] += Vector.ConditionalSelect(t.Gives, t.Coil, Vector<double>.Zero);
            var gives = right[i] + Vector.ConditionalSelect(t.Gives, t.Power + (t.Coil * t.Steam), Vector<double>.Zero);
            right[i] = Vector.ConditionalSelect(t.Holds, t.SetPoint, gives);
        }

        Eliminate();
        var still = Vector<long>.AllBitsSet;
        for (var i = 0; i < tanks; i++)
        {
            var t = tank[i];
            var change = right[i] - t.Celsius;
            still &= Vector.LessThan(Vector.Abs(change), Vector.Create(1e-9));
            Lanes.Take(ref t.Vent, active, t.Vent + (t.VentSlope * change));
            Lanes.Take(ref t.Celsius, active, right[i]);
        }

        for (var i = 0; i < tanks; i++)
        {
            var power = -known[i];
            for (var j = 0; j < tanks; j++)
            {
                power += balance[(i * tanks) + j] * tank[j].Celsius;
            }

            var on = tank[i].Holds | tank[i].Gives;
            Lanes.Take(ref tank[i].Heat, active, Vector.ConditionalSelect(on, power, Vector<double>.Zero));
        }

        return still & active;
    }

    // As SmallSystem: each diagonal outweighs its column.
    private void Eliminate()
    {
        for (var k = 0; k < tanks; k++)
        {
            for (var i = k + 1; i < tanks; i++)
            {
                var factor = matrix[(i * tanks) + k] / matrix[(k * tanks) + k];
                for (var j = k + 1; j < tanks; j++)
                {
                    matrix[(i * tanks) + j] -= factor * matrix[(k * tanks) + j];
                }

                right[i] -= factor * right[k];
            }
        }

        for (var i = tanks - 1; i >= 0; i--)
        {
            for (var j = i + 1; j < tanks; j++)
            {
                right[i] -= matrix[(i * tanks) + j] * right[j];
            }

            right[i] /= matrix[(i * tanks) + i];
        }
    }
}
