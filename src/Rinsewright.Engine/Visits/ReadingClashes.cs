using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Engine.Visits;

/// <summary>Readings that cannot both be true: by the balance of the machine (K15, K17 of Machines), by the second law (V6), by two instruments in one water (V7).</summary>
internal static class ReadingClashes
{
    private static readonly string[] Waters = ["rd-wash-temp", "rd-power-rinse-temp", "rd-final-rinse-temp"];

    public static IReadOnlyList<ReadingClash> Of(Visit visit, IReadOnlyList<JudgedReading> lines)
    {
        var read = lines
            .Select((line, place) => (Line: line, Place: place))
            .Where(l => l.Line.Reading.Value is not null && VisitProofs.Refused(visit, l.Line.Reading) is null)
            .ToList();
        List<ReadingClash> clashes = [];
        foreach (var moment in (VisitMoment[])[VisitMoment.AsFound, VisitMoment.AsLeft])
        {
            var then = read.Where(l => l.Line.Reading.Moment == moment).ToList();
            // The balance is a steady one: a machine that is filled anew with every rack has none.
            clashes.AddRange(visit.Machine.Cycle is { Refill: not null } ? [] : Balance(visit, then));
            clashes.AddRange(Hotter(visit, then));
            clashes.AddRange(TwoInstruments(visit, then));
        }

        return clashes;
    }

    private static IEnumerable<ReadingClash> Balance(Visit visit, List<(JudgedReading Line, int Place)> read)
    {
        List<MachineReading> readings = [];
        List<int> places = [];
        foreach (var (line, place) in read)
        {
            var r = line.Reading;
            var kind = VisitReadingKinds.Find(r.Kind)!;
            // A figure of a load is only taken from a load; a gauge of the machine is in doubt itself.
            if (
                kind.Figure is not { } figure
                || (figure.NeedsRate && r.State != OperatingState.Load)
                || r.Method == ReadingMethod.MachineGauge
            )
            {
                continue;
            }

            readings.Add(
                new MachineReading(figure.Id, r.Value!.Value, visit.On)
                {
                    Part = kind.Tank is { } duty ? visit.Machine.Tanks.First(t => t.Duty == duty).Id : null,
                    RacksPerHour = figure.NeedsRate ? r.RacksPerHour ?? SteadyState.UsualRate(visit.Machine) : null,
                    Uncertainty = VisitProofs.InstrumentOf(visit, r)?.Uncertainty is not null
                        ? ReadingLines.HalfWidth(visit, r, r.Value!.Value.Unit)
                        : null,
                }
            );
            places.Add(place);
        }

        if (readings.Count < 2)
        {
            yield break;
        }

        // Where a single reading is off its own band already, the machine is not as described, and that was said: no two readings need to clash.
        var asDescribed = !places.Exists(p => read.Exists(l => l.Place == p && l.Line.Band is BandStanding.Below or BandStanding.Above));
        foreach (
            var found in MachineCalibration
                .From(visit.Machine, readings)
                .Contradictions.Where(c => c.Kind == ContradictionKind.HeatBalance || asDescribed)
        )
        {
            yield return new ReadingClash(
                Statement.Of(found.Kind == ContradictionKind.HeatBalance ? "visit.clash.heat" : "visit.clash.misfit"),
                [.. found.Readings.Select(p => places[p])]
            );
        }
    }

    // Nothing on the way gets hotter than the hottest water that touches it.
    private static IEnumerable<ReadingClash> Hotter(Visit visit, List<(JudgedReading Line, int Place)> read)
    {
        var waters = read.Where(l => Waters.Contains(l.Line.Reading.Kind, StringComparer.Ordinal)).ToList();
        var all = Waters
            .Where(w => VisitReadingKinds.Has(VisitReadingKinds.Find(w)!, visit.Machine))
            .All(w => waters.Exists(l => l.Line.Reading.Kind == w));
        if (!all || waters.Count == 0)
        {
            yield break;
        }

        double Highest(VisitReading r) =>
            r.Value!.Value.In(Units.Celsius).Value + ReadingLines.HalfWidth(visit, r, Units.CelsiusDifference);
        var hottest = waters.MaxBy(w => Highest(w.Line.Reading));
        foreach (
            var (line, place) in read.Where(l =>
                l.Line.Reading is { Kind: "rd-ware-surface-temp" } r && (r.Method != ReadingMethod.IrreversibleLabel || r.Reached == true)
            )
        )
        {
            var value = line.Reading.Value!.Value;
            var least = value.In(Units.Celsius).Value - ReadingLines.HalfWidth(visit, line.Reading, Units.CelsiusDifference);
            if (least > Highest(hottest.Line.Reading) + 1e-9)
            {
                yield return new ReadingClash(
                    Statement.Of("visit.clash.ware-hotter", ("ware", value), ("water", hottest.Line.Reading.Value!.Value)),
                    [hottest.Place, place]
                );
            }
        }
    }

    private static IEnumerable<ReadingClash> TwoInstruments(Visit visit, List<(JudgedReading Line, int Place)> read)
    {
        foreach (var group in read.GroupBy(l => (l.Line.Reading.Kind, l.Line.Reading.State)))
        {
            var lines = group.ToList();
            for (var i = 0; i < lines.Count; i++)
            {
                for (var j = i + 1; j < lines.Count; j++)
                {
                    var (a, b) = (lines[i].Line.Reading, lines[j].Line.Reading);
                    if ((a.Instrument, a.Method) == (b.Instrument, b.Method) || a.Reached is not null || b.Reached is not null)
                    {
                        continue;
                    }

                    var unit = a.Value!.Value.Unit;
                    double left = ReadingLines.HalfWidth(visit, a, unit),
                        right = ReadingLines.HalfWidth(visit, b, unit);
                    if (left > 0 && right > 0 && Math.Abs(a.Value.Value.Value - b.Value!.Value.In(unit).Value) > left + right)
                    {
                        yield return new ReadingClash(
                            Statement.Of("visit.clash.instruments", ("one", a.Value.Value), ("other", b.Value.Value)),
                            [lines[i].Place, lines[j].Place]
                        );
                    }
                }
            }
        }
    }
}
