using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>What changes, by how much, whether limits are kept, what it costs.</summary>
public sealed class WhatIfTests
{
    private static readonly Machine TwoTank = TypicalMachines.Of(MachineKind.RackConveyorTwoTank);

    [Fact] // row R52: flow goes with the root of the pressure, 2.8 gal/min at 20 psi gives 3.70405 at 35
    public void More_rinse_pressure_takes_more_water_in_the_ratio_of_the_roots()
    {
        var higher = TwoTank with { FinalRinse = TwoTank.FinalRinse! with { Pressure = new(new Amount(35, Units.Psi)) } };
        // The description says which flow belongs to which pressure, so the flow at the new pressure is told with it.
        higher = higher with
        {
            FinalRinse = higher.FinalRinse! with { Flow = new(new Amount(3.70405, Units.GallonPerMinute)) },
        };
        var result = WhatIf.Compare(new Situation(TwoTank, 150), new Situation(higher, 150));

        Relative.Equal(3.70405 / 2.8, result.After.PerRack.WaterLitre / result.Before.PerRack.WaterLitre, 1e-5);
        Assert.True(result.After.Reading.Number(Observables.BoosterPower) > result.Before.Reading.Number(Observables.BoosterPower));
        Assert.Contains(result.Differences, d => d.Observable == Observables.FinalRinsePressure && d.Shows);
        Assert.Contains(result.Differences, d => d.Observable == Observables.WashArmPressure && !d.Shows);
    }

    [Fact] // reference of the model, section 0.4: half the booster fails the 180 °F of the manifold while the plate still gathers 3600 HUE
    public void One_limit_never_excuses_another()
    {
        var half = MachineFaults.Find("booster-line-lost")!.At(1);
        var side = WhatIf.Of(new Situation(TwoTank, 150, [half]));

        Assert.False(Met(side, MeasuringPoint.FinalRinseManifold, "final-rinse"));
        Assert.True(Met(side, MeasuringPoint.WareSurface, "heat-dose"));
        Assert.All(
            side.Limits.Where(l => l.Limit.Dimension is Dimension.Temperature && l.Limit.Point == MeasuringPoint.Unknown),
            l => Assert.Null(l.Met)
        );
    }

    [Fact]
    public void A_typical_machine_keeps_every_limit_the_model_can_speak_to()
    {
        var side = WhatIf.Of(new Situation(TwoTank, 150));

        Assert.NotEmpty(side.Limits);
        Assert.DoesNotContain(side.Limits, l => l.Met == false);
        Assert.True(side.Limits.Count(l => l.Met == true) >= 4);
    }

    [Fact] // arithmetic: 1000 racks at 150 an hour and 3 h of stand-by, each price for its own quantity
    public void A_day_is_priced_line_by_line()
    {
        var tariff = new Tariff(0.12, null, 4, 3, 5, 6, 7);
        var side = WhatIf.Of(new Situation(TwoTank, 150), new WhatIfTerms(Day: new DayOfUse(1000, 3, 0), Tariff: tariff));
        double load = 1000 / side.Reading.Number(Observables.RacksPerHour),
            kilowattHours = (load * side.Reading.Load.ElectricKilowatt) + (3 * side.Reading.StandBy.ElectricKilowatt);

        var lines = side.Day!.Lines.ToDictionary(l => l.Id);
        Relative.Equal(kilowattHours, lines["electricity"].Quantity, 1e-12);
        Relative.Equal(kilowattHours * 0.12, lines["electricity"].Cost!.Value, 1e-12);
        Assert.DoesNotContain("fuel", lines.Keys);
        Assert.DoesNotContain("sanitizer", lines.Keys);
        Relative.Equal(side.Day.Lines.Sum(l => l.Cost!.Value), side.Day.Total!.Value, 1e-12);
        // Row R63: 33.1 kW at 150 racks an hour.
        Relative.Equal(33.141, side.Reading.Load.ElectricKilowatt, 0.005);
    }

    [Fact]
    public void A_price_nobody_has_said_leaves_the_total_undetermined()
    {
        var side = WhatIf.Of(new Situation(TwoTank, 150), new WhatIfTerms(Day: new DayOfUse(1000, 3)));

        Assert.Null(side.Day!.Total);
        Assert.All(side.Day.Lines, l => Assert.Null(l.Cost));
    }

    [Fact]
    public void Impossible_questions_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => WhatIf.Of(new Situation(TwoTank, 0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => WhatIf.Of(new Situation(TwoTank, 150), new WhatIfTerms(Day: new DayOfUse(-1, 0))));
        Assert.Throws<ArgumentException>(() => WhatIf.Of(new Situation(TwoTank, 150, [MachineFaults.Find("door-left-open")!.At(1)])));
    }

    [Fact] // the ride is on the conveyor's time: 1.68 m and 30 s behind it at 0.033 m/s
    public void A_plate_rides_through_every_zone()
    {
        var ride = SteadyState.Of(TwoTank, 150).Ride;

        Assert.Equal((1.68 / 0.033) + 30, ride.Seconds[^1], 1e-6);
        Assert.Equal(["gap", "wash", "gap", "rinse", "gap", "final-rinse", "gap", "room"], Runs(ride.Places));
        Assert.Equal(ride.Seconds.Count, ride.Surface.Count);
        Assert.All(ride.HeatUnits.Zip(ride.HeatUnits.Skip(1)), h => Assert.True(h.Second >= h.First));
    }

    private static IEnumerable<string> Runs(IReadOnlyList<string> places) => places.Where((p, i) => i == 0 || places[i - 1] != p);

    private static bool? Met(WhatIfSide side, MeasuringPoint point, string id) =>
        side.Limits.First(l => l.Limit.Point == point && l.Limit.Id.Contains(id, StringComparison.Ordinal)).Met;
}
