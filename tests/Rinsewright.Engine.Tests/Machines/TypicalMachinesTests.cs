using System.Collections;
using System.Reflection;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>The typical machines against what follows from their figures by hand.</summary>
public sealed class TypicalMachinesTests
{
    public static TheoryData<MachineKind> Kinds() => new(Enum.GetValues<MachineKind>());

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Nobody_has_looked_at_any_figure(MachineKind kind)
    {
        var machine = TypicalMachines.Of(kind);
        var bases = Figures(machine).Select(f => f.GetType().GetProperty("Basis")!.GetValue(f)).ToList();

        Assert.Equal(kind, machine.Kind);
        Assert.Null(machine.Plate);
        Assert.InRange(bases.Count, 40, 150);
        Assert.All(bases, b => Assert.Equal(Provenance.Typical, b));
    }

    [Fact]
    public void A_kind_that_does_not_exist_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => TypicalMachines.Of((MachineKind)99));

    [Theory]
    // R55 by hand: 3600 x 0.0330 / 0.508; single tank likewise with 0.0284.
    [InlineData(MachineKind.RackConveyorTwoTank, 233.86)]
    [InlineData(MachineKind.RackConveyorOneTank, 201.26)]
    [InlineData(MachineKind.Flight, 233.86)]
    public void Conveyor_carries_its_racks(MachineKind kind, double racksPerHour)
    {
        var machine = TypicalMachines.Of(kind);
        var seconds = machine.Ware.RackLength.Value.InMetre / machine.Conveyor!.Speed.Value.InMetrePerSecond;
        Assert.Equal(racksPerHour, 3600 / seconds, 0.005);
    }

    [Theory]
    // Sums of the phases: 45+3+11+3+8, 105+4+12+4+25, 45+8+21+20+2+8 seconds.
    [InlineData(MachineKind.DoorHotWater, 70)]
    [InlineData(MachineKind.Undercounter, 150)]
    [InlineData(MachineKind.DoorChemical, 104)]
    public void Cycle_takes_its_time(MachineKind kind, double seconds)
    {
        var c = TypicalMachines.Of(kind).Cycle!;
        var sum =
            c.Wash.Value.InSecond
            + c.Dwell.Value.InSecond
            + (c.Refill?.Value.InSecond ?? 0)
            + c.Rinse.Value.InSecond
            + c.End.Value.InSecond
            + c.Load.Value.InSecond;
        Assert.Equal(seconds, sum, 1e-9);
    }

    [Theory]
    // R56 for a lone rack on the conveyors (rack length plus switch stretch over speed, times flow); phase times flow on the doors.
    [InlineData(MachineKind.RackConveyorTwoTank, 0.88808)]
    [InlineData(MachineKind.RackConveyorOneTank, 0.95822)]
    [InlineData(MachineKind.DoorHotWater, 0.91667)]
    [InlineData(MachineKind.Undercounter, 0.80000)]
    public void Lone_rack_takes_its_rinse_water(MachineKind kind, double gallons)
    {
        var m = TypicalMachines.Of(kind);
        var zone = m.Zones.Single(z => z.Spray == SprayKind.Fresh);
        var seconds = m.Cycle is { } cycle
            ? cycle.Rinse.Value.InSecond
            : (m.Ware.RackLength.Value.InMetre + zone.SwitchTo!.Value.Value.InMetre - zone.SwitchFrom!.Value.Value.InMetre)
                / m.Conveyor!.Speed.Value.InMetrePerSecond;
        Assert.Equal(gallons, m.FinalRinse!.Flow.Value.InGallonPerMinute * seconds / 60, 1e-5);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_zone_sprays_between_the_walls_of_its_tank_and_every_tank_stands_in_the_machine(MachineKind kind)
    {
        var m = TypicalMachines.Of(kind);
        Assert.All(m.Tanks, t => Assert.InRange(t.From.Value.InMetre, 0, t.To.Value.InMetre));
        Assert.True(m.Tanks[^1].To.Value < m.Length.Value);
        Assert.All(
            m.Zones.Where(z => z.Tank is not null && kind is not MachineKind.DoorChemical),
            z =>
            {
                var tank = m.Tanks.Single(t => t.Id == z.Tank);
                Assert.InRange(z.From.Value.InMetre, tank.From.Value.InMetre, z.To.Value.InMetre);
                Assert.InRange(z.To.Value.InMetre, z.From.Value.InMetre, tank.To.Value.InMetre);
            }
        );
        Assert.Equal(m.Curtains.OrderBy(c => c.At.Value), m.Curtains);
        Assert.Equal(kind == MachineKind.DoorChemical, m.FinalRinse is null);
        Assert.Equal(m.Conveyor is null, m.Cycle is not null);
    }

    [Fact]
    public void Set_points_stand_above_the_limits_of_the_code()
    {
        // [wac-246-215]: wash at least 150 degF (door dual temperature, multitank), 160 (single-tank conveyor), 120 (chemical); final rinse at least 180.
        Assert.All(Enum.GetValues<MachineKind>().Except([MachineKind.DoorChemical]), k => Assert.True(Booster(k) > 180));
        Assert.True(Wash(MachineKind.RackConveyorOneTank) > 160);
        Assert.True(Wash(MachineKind.RackConveyorTwoTank) > 150);
        Assert.True(Wash(MachineKind.DoorHotWater) > 150);
        Assert.True(Wash(MachineKind.DoorChemical) > 120);
        Assert.Equal(SanitizingMethod.Chlorine, TypicalMachines.Of(MachineKind.DoorChemical).Sanitizing);
    }

    [Fact]
    public void Prewash_stands_in_front_and_moves_the_rest_by_its_length()
    {
        var (two, three) = (TypicalMachines.Of(MachineKind.RackConveyorTwoTank), TypicalMachines.Of(MachineKind.RackConveyorThreeTank));
        Assert.Equal(["prewash", "wash", "rinse"], three.Tanks.Select(t => t.Id));
        Assert.Equal(["prewash", "wash"], three.Tanks.Select(t => t.SpillsTo).OfType<string>());
        Assert.All(
            two.Zones.Zip(three.Zones.Skip(1)),
            pair => Assert.Equal(0.55, pair.Second.From.Value.InMetre - pair.First.From.Value.InMetre, 1e-12)
        );
        Assert.Equal(2.23, three.Length.Value.InMetre, 1e-12);
        Assert.Equal(["load", "prewash-wash", "wash-rinse", "rinse-final", "unload"], three.Curtains.Select(c => c.Slot));
    }

    private static double Booster(MachineKind kind) => TypicalMachines.Of(kind).Booster!.Thermostat.SetPoint.Value.InFahrenheit;

    private static double Wash(MachineKind kind) =>
        TypicalMachines.Of(kind).Tanks.Single(t => t.Duty == TankDuty.Wash).Thermostat!.SetPoint.Value.InFahrenheit;

    private static IEnumerable<object> Figures(object? node)
    {
        if (node is null or string || node.GetType().IsPrimitive || node.GetType().IsEnum)
        {
            return [];
        }

        if (node.GetType() is { IsGenericType: true } type && type.GetGenericTypeDefinition() == typeof(Figure<>))
        {
            return [node];
        }

        if (node is IEnumerable many)
        {
            return many.Cast<object>().SelectMany(Figures);
        }

        return node.GetType()
            .GetProperties(BindingFlags.Instance | BindingFlags.Public)
            .Where(p => p.GetIndexParameters().Length == 0)
            .SelectMany(p => Figures(p.GetValue(node)));
    }
}
