using CsCheck;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;
using Rinsewright.Knowledge;
using static Rinsewright.Engine.Tests.Visits.InventedVisit;

namespace Rinsewright.Engine.Tests.Visits;

/// <summary>What holds of every visit, whatever is in it.</summary>
public sealed class VisitLaws
{
    private static readonly Gen<Visit> Some = Gen.Select(Gen.Int[0, 2], Gen.Int[0, 255], Gen.Double[0, 150])
        .Select(
            (which, keep, chlorine) =>
            {
                var visit = which switch
                {
                    0 => Conveyor(),
                    1 => ConveyorSet(),
                    _ => Door(Math.Round(chlorine)),
                };
                return visit with { Readings = [.. visit.Readings.Where((_, i) => (keep >> (i % 8) & 1) == 1)] };
            }
        );

    // Sixty visits of each law: each is a whole judgement of a machine.
    private const int Times = 60;

    [Fact]
    public void A_line_that_was_not_read_never_improves_the_standing()
    {
        Gen.Select(Some, Gen.Int[0, VisitReadingKinds.All.Count - 1], Gen.Int[0, 2])
            .Sample(
                (visit, kind, moment) =>
                {
                    var with = visit with
                    {
                        Readings = [.. visit.Readings, new VisitReading(VisitReadingKinds.All[kind].Id, null, (VisitMoment)moment)],
                    };
                    Assert.True(Judge(with).Standing <= Judge(visit).Standing);
                },
                iter: Times,
                threads: 1
            );
    }

    [Fact]
    public void Every_danger_of_the_knowledge_stops_a_machine_that_is_proved_otherwise()
    {
        var trade = BuiltInKnowledge.Trade;
        var machine = Conveyor();
        Assert.Equal(Outcome.Proven, Judge(machine).After.Verdict.Outcome);
        var dangers = trade
            .Faults.Values.Where(f =>
                f is { Impact: "safety", StopUse: "yes", Sanitizing: not "chemical" } && trade.Fits(f.Machines, "conveyor-2")
            )
            .SelectMany(f => f.Confirm.By)
            .Concat(trade.Observables.Checks.Where(c => c.First).Select(c => c.Id))
            .Concat(trade.Observables.Symptoms.Where(s => s.First).Select(s => s.Id))
            .Distinct(StringComparer.Ordinal)
            .ToList();

        Assert.True(dangers.Count >= 12, $"{dangers.Count} dangers");
        foreach (var danger in dangers)
        {
            var result = Judge(machine with { Findings = [new VisitFinding(danger, true, VisitMoment.AsFound)] });
            Assert.True(result.Standing == VisitStanding.StopUse, danger);
            Assert.True(result.Stops[0] is { Kind: StopKind.Danger, Open: true }, danger);
            Assert.Equal("visit.do.stop", result.YouDo.Parts[0].Key);
            Assert.Equal("visit.because.stop", result.Because[0].Key);
        }
    }

    [Fact]
    public void A_danger_stands_until_it_was_looked_for_at_the_end_and_was_gone()
    {
        VisitFinding Look(bool found, VisitMoment moment) => new("chk-wet-wiring", found, moment);
        var visit = Conveyor();
        VisitStanding Of(params VisitFinding[] looks) => Judge(visit with { Findings = looks }).Standing;

        Assert.Equal(VisitStanding.StopUse, Of(Look(true, VisitMoment.AsFound)));
        Assert.Equal(VisitStanding.StopUse, Of(Look(true, VisitMoment.AsFound), Look(false, VisitMoment.Between)));
        Assert.Equal(
            VisitStanding.StopUse,
            Of(Look(true, VisitMoment.AsFound), Look(false, VisitMoment.AsLeft), Look(true, VisitMoment.AsLeft))
        );
        Assert.NotEqual(VisitStanding.StopUse, Of(Look(true, VisitMoment.AsFound), Look(false, VisitMoment.AsLeft)));
        // Repairing is not looking.
        Assert.Equal(VisitStanding.StopUse, Judge(ConveyorSet() with { Findings = [Look(true, VisitMoment.AsFound)] }).Standing);
    }

    [Fact]
    public void Order_of_entry_changes_nothing()
    {
        Gen.Select(Some, Gen.Int[1, 1000])
            .Sample(
                (visit, seed) =>
                {
                    var shuffled = visit with
                    {
                        Readings = [.. visit.Readings.OrderBy(r => (r.GetHashCode() * 31L ^ seed) % 997).ThenBy(r => r.At)],
                        Findings = [.. visit.Findings.Reverse()],
                    };
                    Assert.Equal(Told(Judge(visit)), Told(Judge(shuffled)));
                },
                iter: Times,
                threads: 1
            );
    }

    // The values are exact in both units or far from every printed limit, so that rounding of a limit printed twice (180 °F, 82 °C) decides nothing.
    [Fact]
    public void Unit_of_entry_changes_nothing()
    {
        Gen.Select(Some, Gen.Bool, Gen.Bool)
            .Sample(
                (visit, heat, pressure) =>
                {
                    Amount? Turned(Amount? a) =>
                        heat && a is { Unit.Dimension: Dimension.Temperature } t ? t.In(Units.Celsius)
                        : pressure && a is { Unit.Dimension: Dimension.GaugePressure } p ? p.In(Units.Kilopascal)
                        : a;
                    var turned = visit with { Readings = [.. visit.Readings.Select(r => r with { Value = Turned(r.Value) })] };
                    var (one, other) = (Judge(visit), Judge(turned));
                    Assert.Equal(one.Standing, other.Standing);
                    Assert.Equal(one.Readings.Select(r => (r.Status, r.Band)), other.Readings.Select(r => (r.Status, r.Band)));
                    Assert.Equal(one.Acceptance.Select(a => a.Standing), other.Acceptance.Select(a => a.Standing));
                    Assert.Equal(one.Next.On, other.Next.On);
                },
                iter: Times,
                threads: 1
            );
    }

    [Fact]
    public void Every_change_demands_the_whole_acceptance_test()
    {
        foreach (var kind in Enum.GetValues<ChangeKind>())
        {
            foreach (var area in Enum.GetValues<AcceptanceArea>())
            {
                Demands(Conveyor() with { Changes = [new VisitChange(kind, "something", [area]) { After = Fahrenheit(160) }] });
            }
        }

        Demands(Conveyor() with { PartsUsed = [new PartUse("Long curtain", 1, PartWhere.Fitted)] });
        Demands(Conveyor() with { Supplies = [new SupplyCount("Detergent", FedProduct.Detergent, 2) { Changed = true, Primed = true }] });
        Assert.All(Judge(Conveyor()).Acceptance, a => Assert.Equal(AcceptanceStanding.NotNeeded, a.Standing));

        static void Demands(Visit visit)
        {
            var result = Judge(visit);
            Assert.All(result.Acceptance, a => Assert.Equal(AcceptanceStanding.NotRun, a.Standing));
            Assert.Equal(5, result.Missing.Count(m => m.Blocks && m.Says.Key == "visit.missing.acceptance"));
            Assert.False(result.MayBeSigned);
            Assert.True(result.Standing <= VisitStanding.NotProved);
        }
    }

    [Fact]
    public void Bands_are_of_the_state_that_was_read()
    {
        Gen.Select(Gen.Enum<MachineKind>(), Gen.Int[0, VisitReadingKinds.All.Count - 1], Gen.Enum<OperatingState>())
            .Sample(
                (machine, place, state) =>
                {
                    var kind = VisitReadingKinds.All[place];
                    var reads = state switch
                    {
                        OperatingState.Load => kind.UnderLoad,
                        OperatingState.Idle => kind.WithoutRacks,
                        OperatingState.HeatUp => kind.FromCold,
                        _ => null,
                    };
                    // Without an observable of that state there is no band, whatever other states have.
                    Assert.True(reads is not null || OwnBands.Of(TypicalMachines.Of(machine)).Find(kind, state) is null);
                },
                iter: 200,
                threads: 1
            );
    }

    [Theory] // Two routes, one band: drawn a slice at a time for the screen, and at once
    [InlineData(MachineKind.DoorHotWater)]
    [InlineData(MachineKind.RackConveyorTwoTank)]
    public void Bands_that_come_in_slices_are_the_same_bands(MachineKind machine)
    {
        var (whole, coming) = (OwnBands.Of(TypicalMachines.Of(machine)), OwnBands.Coming(TypicalMachines.Of(machine)));
        var wash = VisitReadingKinds.Find("rd-wash-temp")!;
        Assert.Null(coming.Find(wash, OperatingState.Load)); // absent until it is here
        while (coming.Next()) { }

        foreach (var kind in VisitReadingKinds.All)
        {
            foreach (var state in Enum.GetValues<OperatingState>())
            {
                Assert.Equal(whole.Find(kind, state), coming.Find(kind, state));
            }
        }
    }

    [Fact]
    public void A_rack_that_passes_is_not_called_proved_while_the_test_is_open()
    {
        var visit = InventedVisit.Conveyor() with
        {
            Changes = [InventedVisit.Thermostat],
            Readings = [.. InventedVisit.ConveyorReadings(VisitMoment.AsLeft, 60).Take(5)],
        };
        var result = InventedVisit.Judge(visit);

        Assert.Equal(VisitStanding.NotProved, result.Standing);
        Assert.DoesNotContain(result.Done.Parts, p => p.Key.StartsWith("visit.done.proved", StringComparison.Ordinal));
    }

    // Everything that is said, as text.
    private static string Told(VisitResult r) =>
        string.Join(
            '\n',
            (string[])
                [
                    r.Standing.ToString(),
                    .. r.Because.Select(Text),
                    .. r.Readings.Select(l => $"{l.Reading.Kind} {l.Reading.Value} {l.Status} {l.Band}"),
                    .. r.Clashes.Select(c => Text(c.Says)),
                    .. r.Acceptance.Select(a => $"{a.Area} {a.Standing}"),
                    .. r.Missing.Select(m => Text(m.Says)),
                    r.Next.On.ToString("yyyy-MM-dd"),
                    Text(r.Next.Because),
                    .. r.Done.Parts.Select(Text),
                ]
        );

    private static string Text(Statement s) =>
        $"{s.Key}({string.Join(", ", s.Values.Select(v => v.Value is Statement i ? Text(i) : v.Value.ToString()))})";
}
