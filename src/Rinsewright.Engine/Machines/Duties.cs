namespace Rinsewright.Engine.Machines;

/// <summary>Shares of the time in which things run at a steady load, and how long ware stays where. Equations M13 and M14.</summary>
/// <param name="Racks">Racks a second.</param>
/// <param name="Pumps">Pumps.</param>
/// <param name="Rinse">Final rinse.</param>
/// <param name="Open">Door open.</param>
internal readonly record struct Duties(double Racks, double Pumps, double Rinse, double Open)
{
    /// <summary>Nothing goes through.</summary>
    public static Duties Idle(ModelParameters p) => At(p, 0);

    /// <summary>Duties at a rate in racks a second; no more than <see cref="MostRacks"/>.</summary>
    public static Duties At(ModelParameters p, double racks)
    {
        racks = Math.Min(racks, MostRacks(p)) / p.Travel.Slip;
        double pumps,
            rinse,
            open = 0;
        if (p.Travel.Cycle is { } cycle)
        {
            pumps = racks * (cycle.Wash + (cycle.Dumps ? cycle.Rinse : 0));
            rinse = cycle.Dumps ? 0 : racks * cycle.Rinse;
            open = racks * cycle.Load;
        }
        else
        {
            pumps = racks > 0 ? Math.Min(1, racks * (((p.Travel.End + p.Ware.RackLength) / Speed(p)) + p.Travel.Hold)) : 0;
            rinse =
                p.Rinse is null ? 0
                : p.Rinse.WhileMoving ? pumps
                : Math.Min(1, racks * SecondsOfRinse(p));
        }

        rinse = p.Rinse?.Valve switch
        {
            Contact.On => 1,
            Contact.Off => 0,
            _ => rinse,
        };
        return new Duties(racks, pumps, rinse, open);
    }

    /// <summary>Most racks a second that fit through.</summary>
    public static double MostRacks(ModelParameters p) =>
        p.Travel.Cycle is { } cycle ? 1 / cycle.Length : Speed(p) * p.Travel.Slip / p.Ware.RackLength;

    /// <summary>How long a lone rack keeps the final rinse on, s.</summary>
    public static double SecondsOfRinse(ModelParameters p) =>
        p.Travel.Cycle is { } cycle ? cycle.Rinse
        : p.Rinse is { WhileMoving: true } belt ? (belt.ZoneTo - belt.ZoneFrom + p.Ware.RackLength) / Speed(p)
        : p.Rinse is { } rinse ? (p.Ware.RackLength + rinse.SwitchTo - rinse.SwitchFrom) / Speed(p)
        : 0;

    /// <summary>How long ware is under a tank's spray, s.</summary>
    public static double SecondsIn(ModelParameters p, int tank) =>
        p.Travel.Cycle is { } cycle
            ? cycle.Wash + (cycle.Dumps ? cycle.Rinse : 0)
            : (p.Tanks[tank].ZoneTo - p.Tanks[tank].ZoneFrom) / Speed(p);

    /// <summary>How long ware is under the final rinse, s; 0 where it does not run.</summary>
    public static double SecondsUnderRinse(ModelParameters p) =>
        p.Rinse is not { } rinse || rinse.Valve == Contact.Off ? 0
        : p.Travel.Cycle is { } cycle ? cycle.Rinse
        : (rinse.ZoneTo - rinse.ZoneFrom) / Speed(p);

    /// <summary>Speed of the ware, m/s.</summary>
    public static double Speed(ModelParameters p) => p.Travel.Speed * p.Travel.SpeedFactor;
}
