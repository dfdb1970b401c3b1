using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Contracts.Machines;

/// <summary>What the figures of a machine must hold among each other. Figures that are wrong by themselves are not told twice.</summary>
internal sealed class MachineLaws(Machine machine, Problems problems)
{
    // Two walls or zones that were typed in different units may touch with a rounding error between them.
    private const double Touching = 1e-6;
    private const double DeepestTank = 1.2;
    private const double ShallowestTank = 0.01;
    private const double WidestMachine = 2;

    internal void Check()
    {
        Places();
        foreach (var tank in machine.Tanks)
        {
            Water(tank, $"tanks.{tank.Id}");
            HeaterOf(tank.Heater, tank.Thermostat, $"tanks.{tank.Id}");
            Spills(tank);
        }

        if (machine.Booster is { } booster)
        {
            HeaterOf(booster.Heater, booster.Thermostat, "booster");
        }

        Zones();
        Cycle();
        Feeders();
        Plate();
    }

    private void Places()
    {
        Walls(machine.Tanks.Select(t => ($"tanks.{t.Id}", t.From, t.To)));
        Walls(
            machine
                .Zones.Where(z => z.Spray != SprayKind.Fresh || machine.Conveyor is not null)
                .Select(z => ($"zones.{z.Id}", z.From, z.To))
        );
        foreach (var fresh in machine.Zones.Where(z => z.Spray == SprayKind.Fresh && machine.Conveyor is null))
        {
            Walls([($"zones.{fresh.Id}", fresh.From, fresh.To)]);
        }

        foreach (var curtain in machine.Curtains)
        {
            Inside($"curtains.{curtain.Slot}.at", curtain.At);
        }

        for (var i = 0; i < machine.Vents.Count; i++)
        {
            Inside($"vents[{i}]", machine.Vents[i]);
        }

        foreach (var (first, second) in machine.Curtains.Zip(machine.Curtains.Skip(1)))
        {
            if (Array.IndexOf(MachineShape.CurtainSlots, first.Slot) > Array.IndexOf(MachineShape.CurtainSlots, second.Slot))
            {
                problems.Add($"curtains.{second.Slot}.at", "curtain-order", ("value", second.At.Written), ("other", first.Slot));
            }
        }

        if (machine.Conveyor is null && machine.Ware.RackLength.Written.SI > machine.Length.Written.SI)
        {
            problems.Add(
                "ware.rackLength",
                "rack-too-long",
                ("value", machine.Ware.RackLength.Written),
                ("length", machine.Length.Written)
            );
        }
    }

    // In the order the ware travels, none backwards, none over the next, all inside the machine.
    private void Walls(IEnumerable<(string Path, Figure<Length> From, Figure<Length> To)> stretches)
    {
        (string Path, Figure<Length> To)? before = null;
        foreach (var (path, from, to) in stretches)
        {
            if (to.Written.SI <= from.Written.SI)
            {
                problems.Add($"{path}.to", "ends-before-start", ("from", from.Written), ("to", to.Written));
                continue;
            }

            Inside($"{path}.from", from);
            Inside($"{path}.to", to);
            if (before is { } b && from.Written.SI < b.To.Written.SI - Touching)
            {
                problems.Add($"{path}.from", "overlaps", ("from", from.Written), ("other", b.Path), ("to", b.To.Written));
            }

            before = (path, to);
        }
    }

    private void Inside(string path, Figure<Length> place)
    {
        if (place.Written.SI < -Touching || place.Written.SI > machine.Length.Written.SI + Touching)
        {
            problems.Add(path, "outside-machine", ("value", place.Written), ("length", machine.Length.Written));
        }
    }

    private void Water(Tank tank, string path)
    {
        var (volume, surface) = (tank.Capacity.Written.SI, tank.Surface.Written.SI);
        if (volume > 0 && surface > 0 && volume / surface is var depth and (> DeepestTank or < ShallowestTank))
        {
            problems.Add(
                $"{path}.capacity",
                depth > 1 ? "too-deep" : "too-shallow",
                ("value", tank.Capacity.Written),
                ("surface", tank.Surface.Written),
                ("depth", new Amount(depth, Units.Metre))
            );
        }

        var length = tank.To.Written.SI - tank.From.Written.SI;
        if (length > 0 && surface > length * WidestMachine)
        {
            problems.Add($"{path}.surface", "too-wide", ("value", tank.Surface.Written), ("length", new Amount(length, Units.Metre)));
        }

        if (tank.Fill is not { } fill)
        {
            return;
        }

        if (fill.Opens.Written.SI >= fill.Closes.Written.SI)
        {
            problems.Add($"{path}.fill.opens", "opens-after-closes", ("opens", fill.Opens.Written), ("closes", fill.Closes.Written));
        }

        if (fill.LowWater.Written.SI >= fill.Opens.Written.SI)
        {
            problems.Add($"{path}.fill.lowWater", "low-water-high", ("low", fill.LowWater.Written), ("opens", fill.Opens.Written));
        }
    }

    private void HeaterOf(Heater? heater, Thermostat? thermostat, string path)
    {
        if ((heater is null) != (thermostat is null))
        {
            problems.Add(path, heater is null ? "thermostat-alone" : "heater-alone");
        }

        if (thermostat is { } t && t.SetPoint.Written.SI + (t.Band.Written.SI / 2) is var off && off > Units.Celsius.ToSI(100))
        {
            problems.Add($"{path}.thermostat.setPoint", "boils", ("value", t.SetPoint.Written), ("band", t.Band.Written));
        }

        if (heater is not { } h)
        {
            return;
        }

        var steam = h.Kind == HeaterKind.SteamCoil;
        Belongs($"{path}.heater.rated", h.Rated is not null, !steam, h.Kind);
        Belongs($"{path}.heater.ratedVoltage", h.RatedVoltage is not null, h.Kind == HeaterKind.Electric, h.Kind);
        Belongs($"{path}.heater.coil", h.Coil is not null, steam, h.Kind);
        Belongs($"{path}.heater.steam", h.Steam is not null, steam, h.Kind);
        if (steam && h.Steam is { } hot && thermostat is { } set && hot.Written.SI <= set.SetPoint.Written.SI)
        {
            problems.Add($"{path}.heater.steam", "steam-cold", ("value", hot.Written), ("set", set.SetPoint.Written));
        }
    }

    private void Belongs(string path, bool given, bool wanted, HeaterKind kind)
    {
        if (given != wanted)
        {
            problems.Add(path, wanted ? "heater-needs" : "heater-has-none", ("kind", kind));
        }
    }

    private void Spills(Tank tank)
    {
        if (tank.SpillsTo is not { } to)
        {
            return;
        }

        var (own, other) = (Index(tank.Id), Index(to));
        if (other < 0)
        {
            problems.Add($"tanks.{tank.Id}.spillsTo", "unknown-tank", ("value", to), ("tanks", TankIds()));
        }
        else if (other >= own)
        {
            problems.Add($"tanks.{tank.Id}.spillsTo", "spills-forward", ("value", to));
        }
    }

    private void Zones()
    {
        foreach (var zone in machine.Zones)
        {
            var path = $"zones.{zone.Id}";
            if (zone.Spray == SprayKind.Fresh != (zone.Id == "final-rinse"))
            {
                problems.Add($"{path}.spray", zone.Id == "final-rinse" ? "fresh-only" : "fresh-nowhere-else");
            }

            if (zone.Spray == SprayKind.Fresh && zone.Tank is not null)
            {
                problems.Add($"{path}.tank", "fresh-no-tank");
            }
            else if (zone.Spray != SprayKind.Fresh && (zone.Tank is null || Index(zone.Tank) < 0))
            {
                problems.Add($"{path}.tank", "unknown-tank", ("value", zone.Tank ?? "null"), ("tanks", TankIds()));
            }

            Switch(zone, path);
        }
    }

    private void Switch(SprayZone zone, string path)
    {
        var belongs = zone.Spray == SprayKind.Fresh && machine.Conveyor is not null && machine.Kind != MachineKind.Flight;
        if ((zone.SwitchFrom is not null) != belongs || (zone.SwitchTo is not null) != belongs)
        {
            problems.Add($"{path}.switchFrom", belongs ? "switch-needed" : "switch-nowhere");
        }
        else if (zone is { SwitchFrom: { } from, SwitchTo: { } to })
        {
            Walls([($"{path}.switch", from, to)]);
        }
    }

    private void Cycle()
    {
        if (machine.Cycle is not { } cycle)
        {
            return;
        }

        var dumps = machine.FinalRinse is null;
        if ((cycle.Refill is not null) != dumps)
        {
            problems.Add("cycle.refill", dumps ? "dump-needs" : "dump-has-none");
        }

        if ((cycle.DumpOpening is not null) != dumps)
        {
            problems.Add("cycle.dumpOpening", dumps ? "dump-needs" : "dump-has-none");
        }
    }

    private void Feeders()
    {
        foreach (var feeder in machine.Feeders)
        {
            var path = $"feeders.{(feeder.Product == FedProduct.RinseAdditive ? "rinse-additive" : Wire.Name(feeder.Product))}";
            if (feeder.Tank is { } tank ? Index(tank) < 0 : machine.FinalRinse is null || feeder.Product == FedProduct.Detergent)
            {
                problems.Add($"{path}.tank", "unknown-tank", ("value", feeder.Tank ?? "null"), ("tanks", TankIds()));
            }

            if ((feeder.Band is null) != (feeder.Rate is null))
            {
                problems.Add(path, "band-and-rate");
            }

            if (feeder.Band is { } band && band.Written.SI >= 2 * feeder.Strength.Written.SI)
            {
                problems.Add($"{path}.band", "band-wide", ("band", band.Written), ("strength", feeder.Strength.Written));
            }
        }

        if (machine.Sanitizing != SanitizingMethod.HotWater && machine.Feeders.All(f => f.Product != FedProduct.Sanitizer))
        {
            problems.Add("feeders", "sanitizer-needed", ("method", machine.Sanitizing));
        }
    }

    private void Plate()
    {
        if (machine.Plate is not { } plate)
        {
            return;
        }

        Range("plate.finalRinseMaximum", plate.FinalRinseMinimum, plate.FinalRinseMaximum);
        Range("plate.pressureMaximum", plate.PressureMinimum, plate.PressureMaximum);
        Range("plate.sanitizerMaximum", plate.SanitizerMinimum, plate.SanitizerMaximum);
    }

    private void Range(string path, Amount? least, Amount? most)
    {
        if (least is { } low && most is { } high && high.SI < low.SI)
        {
            problems.Add(path, "range-reversed", ("least", low), ("most", high));
        }
    }

    private int Index(string id) => machine.Tanks.ToList().FindIndex(t => t.Id == id);

    private string TankIds() => string.Join(", ", machine.Tanks.Select(t => t.Id));
}
