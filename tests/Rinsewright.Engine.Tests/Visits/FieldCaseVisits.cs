using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;
using Rinsewright.Knowledge;
using static Rinsewright.Engine.Tests.Visits.InventedVisit;

namespace Rinsewright.Engine.Tests.Visits;

/// <summary>
/// Visits after public trouble reports (inspection comments, care-home surveys, a ship inspection), paraphrased: the numbers and what they proved to be are the report's, the rest of each visit is
/// invented.
/// </summary>
public sealed class FieldCaseVisits
{
    // Care home: no colour on the strip; a new drum that nobody had primed.
    [Fact]
    public void A_drum_that_was_never_primed_is_said_before_signing_and_the_strip_stops_the_sanitizing()
    {
        var result = Judge(
            Door(0) with
            {
                Supplies = [new SupplyCount("Sanitizer, chlorine 8.4 %", FedProduct.Sanitizer, 2) { Changed = true }],
            }
        );

        Assert.Equal(Outcome.NotProven, result.Before.Verdict.Outcome);
        Assert.Contains(result.Missing, m => m.Blocks && m.Says.Key == "visit.missing.primed");
        var primed = Judge(
            Door(0) with
            {
                Supplies = [new SupplyCount("Sanitizer, chlorine 8.4 %", FedProduct.Sanitizer, 2) { Changed = true, Primed = true }],
                Readings = [.. DoorReadings(VisitMoment.AsFound, 5, 0), .. DoorReadings(VisitMoment.AsLeft, 50, 75)],
            }
        );
        Assert.DoesNotContain(primed.Missing, m => m.Says.Key == "visit.missing.primed");
        Assert.Equal((Outcome.NotProven, Outcome.Proven), (primed.Before.Verdict.Outcome, primed.After.Verdict.Outcome));
        Assert.Contains(primed.Done.Parts, p => p.Key == "visit.done.container-primed");
    }

    // Care home, large conveyor: the dials read again after a repair, and the strips stayed white. Two faults; 'fixed' was judged by the dials alone.
    [Fact]
    public void A_repair_judged_by_the_dials_alone_is_not_accepted()
    {
        var visit = Door(0) with
        {
            Changes = [new VisitChange(ChangeKind.Repaired, "Dials", [AcceptanceArea.Heat]) { At = Morning.AddMinutes(30) }],
            Readings =
            [
                .. DoorReadings(VisitMoment.AsFound, 5, 0),
                Read("rd-wash-temp", Fahrenheit(134), VisitMoment.AsLeft, 50) with
                {
                    Method = ReadingMethod.MachineGauge,
                },
                Read("rd-final-rinse-temp", Fahrenheit(132), VisitMoment.AsLeft, 51) with
                {
                    Method = ReadingMethod.MachineGauge,
                },
            ],
        };
        var areas = Judge(visit).Acceptance.ToDictionary(a => a.Area);

        Assert.Equal(AcceptanceStanding.Passed, areas[AcceptanceArea.Heat].Standing);
        Assert.Equal(AcceptanceStanding.NotRun, areas[AcceptanceArea.Chemistry].Standing);
        Assert.Contains("rd-sanitizer", areas[AcceptanceArea.Chemistry].Needs);
        var read = Judge(visit with { Readings = [.. visit.Readings, Strip(0, VisitMoment.AsLeft, 52)] });
        Assert.Equal(AcceptanceStanding.Failed, read.Acceptance.Single(a => a.Area == AcceptanceArea.Chemistry).Standing);
        Assert.Equal(VisitStanding.NotSanitary, read.Standing);
    }

    // Care home, single-tank conveyor: wash 152 °F, "150 is enough"; this one's plate asked for 160 °F.
    [Fact]
    public void A_wash_of_152_is_out_of_range_where_the_plate_asks_160()
    {
        var machine = TypicalMachines.Of(MachineKind.RackConveyorOneTank) with { Plate = new DataPlate(WashMinimum: Fahrenheit(160)) };
        var result = Judge(
            new Visit
            {
                Machine = machine,
                Began = Morning,
                Readings = [Read("rd-wash-temp", Fahrenheit(152), VisitMoment.AsFound, 5)],
            }
        );
        var line = result.Readings.Single(l => l.Reading.Kind == "rd-wash-temp");

        Assert.Equal(ReadingStatus.OutOfRange, line.Status);
        Assert.Equal((LimitForce.DataPlate, Fahrenheit(160)), (line.Rule!.Limit!.Force, line.Rule.Limit.Printed[0]));
    }

    // Ship, flight machine: 170 °F at start-up, 150 to 155 °F at 08:45 in use; the engineers found nothing wrong on the empty machine.
    [Fact]
    public void A_machine_that_fails_only_under_load_is_not_accepted_on_an_empty_run()
    {
        var visit = ConveyorSet();
        var idle = Judge(
            visit with
            {
                Readings =
                [
                    .. visit.Readings.Select(r =>
                        r is { Moment: VisitMoment.AsLeft, Kind: "rd-final-rinse-temp" } ? r with { State = OperatingState.Idle } : r
                    ),
                ],
            }
        );
        var heat = idle.Acceptance.Single(a => a.Area == AcceptanceArea.Heat);

        Assert.Equal((AcceptanceStanding.NotRun, "visit.accept.empty-run"), (heat.Standing, heat.Because.Key));
        Assert.Equal(["rd-final-rinse-temp"], heat.Needs);
        Assert.Equal(AcceptanceStanding.Passed, Judge(visit).Acceptance.Single(a => a.Area == AcceptanceArea.Heat).Standing);
    }

    // Lodge: plate peak 118 °F, rinse dial about 140 °F; elements bought months ago and never fitted.
    [Fact]
    public void Parts_on_the_shelf_are_said_and_bring_the_visit_forward()
    {
        var result = Judge(
            new Visit
            {
                Machine = TypicalMachines.Of(MachineKind.DoorHotWater),
                Began = Morning,
                Readings = [Read("rd-ware-surface-temp", Fahrenheit(118), VisitMoment.AsFound, 5)],
                PartsUsed = [new PartUse("Heating elements", 3, PartWhere.OnSite)],
            }
        );

        Assert.Equal(VisitStanding.NotSanitary, result.Standing);
        Assert.Contains(result.Warnings, w => w.Key == "visit.warn.on-site");
        Assert.Equal(new DateOnly(2026, 11, 25), result.Next.On);
        Assert.Contains(result.Next.Others, n => n.Because.Key == "visit.next.on-site");
    }

    // Convenience store and care home: a strip of another chemistry reads zero though the dose is right, or is dipped on a machine that sanitizes by heat.
    [Theory]
    [InlineData(MachineKind.DoorChemical, "quat strips")]
    [InlineData(MachineKind.RackConveyorTwoTank, "chlorine strips")]
    public void A_strip_of_another_chemistry_shows_nothing(MachineKind kind, string strips)
    {
        var visit = kind == MachineKind.DoorChemical ? Door() : Conveyor();
        var read = Strip(0, VisitMoment.AsFound, 30) with { Supply = strips };
        var result = Judge(visit with { Readings = [.. visit.Readings, read] });
        var line = result.Readings.Single(l => ReferenceEquals(l.Reading, read));

        Assert.Equal("visit.reading.wrong-strip", Assert.Single(line.Says).Key);
        Assert.Equal(ReadingStatus.NoLimit, line.Status);
        Assert.Equal(Judge(visit).Standing, result.Standing);
    }

    // Public trouble report: all three pick-up tubes in the sanitizer drum; chlorine far above range, detergent none.
    [Fact]
    public void Swapped_lines_are_a_danger_before_any_reading()
    {
        var result = Judge(Door(300) with { Findings = [new VisitFinding("chk-lines-swapped", true, VisitMoment.AsFound)] });

        Assert.Equal(VisitStanding.StopUse, result.Standing);
        Assert.Equal("chem-lines-swapped", result.Stops[0].Id);
        Assert.NotEmpty(result.Stops[0].Hazards);
        Assert.Equal(BuiltInKnowledge.Trade.Faults["chem-lines-swapped"].Cure, result.Stops[0].Cure);
    }

    // Vendor's strip three times and again: of several racks the worst counts.
    [Fact]
    public void One_pale_strip_of_three_is_not_excused_by_the_other_two()
    {
        var visit = Door() with
        {
            Readings =
            [
                .. DoorReadings(VisitMoment.AsFound, 5, 75).Where(r => r.Kind != "rd-sanitizer"),
                Strip(75, VisitMoment.AsFound, 7),
                Strip(10, VisitMoment.AsFound, 8),
                Strip(75, VisitMoment.AsFound, 9),
            ],
        };

        Assert.Equal(Outcome.Proven, Judge(Door()).After.Verdict.Outcome);
        Assert.Equal(VisitStanding.NotSanitary, Judge(visit).Standing);
        Assert.Equal(
            [ReadingStatus.InRange, ReadingStatus.OutOfRange, ReadingStatus.InRange],
            Judge(visit).Readings.Where(l => l.Reading.Kind == "rd-sanitizer").Select(l => l.Status)
        );
    }

    // Inspection comment: chlorine strips long out of date.
    [Fact]
    public void An_expired_strip_proves_nothing_and_never_reads_as_in_range()
    {
        var visit = Door();
        var old = Judge(
            visit with
            {
                Readings = [.. visit.Readings.Select(r => r.Kind == "rd-sanitizer" ? r with { Supply = "old strips" } : r)],
            }
        );

        Assert.NotEqual(Outcome.Proven, old.After.Verdict.Outcome);
        Assert.All(old.Readings.Where(l => l.Reading.Kind == "rd-sanitizer"), l => Assert.NotEqual(ReadingStatus.InRange, l.Status));
    }
}
