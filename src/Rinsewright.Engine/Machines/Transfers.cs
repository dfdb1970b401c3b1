using Rinsewright.Engine.Heat;
using Rinsewright.Engine.Water;

namespace Rinsewright.Engine.Machines;

/// <summary>Heat and film exchange between water and ware, the same for the stepped and the steady model. Equations M4 and M5 of this folder's README.</summary>
internal static class Transfers
{
    // How far the air of the tunnel has come from room to the hottest tank (estimate, from memory).
    private const double GapApproach = 0.6;

    /// <summary>Coefficient of a recirculating spray on the ware in its zone, W/(m²·K).</summary>
    public static double Spray(ModelParameters p, int tank, in SprayFlow flow)
    {
        var t = p.Tanks[tank];
        var share = flow.Spray / t.Pump.Circuit.Nominal;
        var film = SprayTransfer.AtFlow(t.Pump.Transfer, share, (1 - t.Pump.Condition.Plugged) * t.Pump.Coverage);
        return SprayTransfer.OfZone(film, ZoneArea(p, t.ZoneTo - t.ZoneFrom), SprayTransfer.PumpedHit * flow.Spray * LiquidWater.Density);
    }

    /// <summary>Coefficient of the final rinse, W/(m²·K), at a flow in kg/s.</summary>
    public static double FinalRinse(ModelParameters p, double flow)
    {
        var rinse = p.Rinse!;
        var film = SprayTransfer.AtFlow(rinse.Transfer, flow / rinse.Nominal, rinse.Aim);
        return SprayTransfer.OfZone(film, ZoneArea(p, rinse.ZoneTo - rinse.ZoneFrom), rinse.Hit * rinse.Aim * flow);
    }

    /// <summary>Film of a rack that the final rinse replaces, per second and as a multiple of it.</summary>
    public static double FilmExchange(ModelParameters p, double flow)
    {
        var rinse = p.Rinse!;
        var racks = ZoneArea(p, rinse.ZoneTo - rinse.ZoneFrom) / p.Ware.Area;
        return p.Ware.CarryOver > 0 ? p.Ware.Exchange * rinse.Hit * rinse.Aim * flow / (racks * p.Ware.CarryOver) : 0;
    }

    /// <summary>Air between the sprays, °C.</summary>
    public static double GapTemperature(ModelParameters p, double hottest) =>
        p.RoomTemperature + (GapApproach * (hottest - p.RoomTemperature));

    /// <summary>Wetted area in a zone, m²: of a conveyor as many racks as it is long, of a door machine one.</summary>
    public static double ZoneArea(ModelParameters p, double length) => p.Ware.Area * (p.Conveys ? length / p.Ware.RackLength : 1);
}
