using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Cli.Machines;

/// <summary>Observables as text: each group by when it is read.</summary>
internal sealed class ObservableText(TextWriter writer, Words words)
{
    private const double LongSeconds = 120;
    private readonly TextPage page = new(writer);

    /// <summary>A settled machine, and how far each figure may lie from it.</summary>
    public void Write(Machine machine, SteadyReading reading, MachineBands bands)
    {
        Head(machine, Scenario.Steady(reading.RacksPerHour), reading.RacksPerHour);
        foreach (var during in Enum.GetValues<ReadDuring>())
        {
            var rows = reading.Observables.Where(o => o.Observable.During == during).ToList();
            if (rows.Count == 0)
            {
                continue;
            }

            page.Line();
            page.Table(
                [words[Wire.WordKey(during)], "", words["cli.machine.nine-of-ten"]],
                [.. rows.Select(o => (string[])[Name(o.Observable), Show(o), Range(o, bands.Of(o.Observable.Id))])],
                new HashSet<int> { 1, 2 }
            );
        }

        page.Line();
        page.Paragraph(words.Say("cli.machine.bands", ("draws", words.Number(bands.Draws, 0))));
        Claims();
    }

    /// <summary>One run.</summary>
    public void Write(Machine machine, RunResult result, double racks)
    {
        Head(machine, result.Scenario, racks);
        Faults(result);
        foreach (var during in Enum.GetValues<ReadDuring>())
        {
            var rows = result.Observables.Where(o => o.Observable.During == during).ToList();
            if (rows.Count == 0)
            {
                continue;
            }

            page.Line();
            page.Table(
                [words[Wire.WordKey(during)], ""],
                [.. rows.Select(o => (string[])[Name(o.Observable), Show(o)])],
                new HashSet<int> { 1 }
            );
        }

        Claims();
    }

    /// <summary>Two runs side by side; rows whose difference shows are marked.</summary>
    public void Write(Machine machine, RunResult before, RunResult after, double racks)
    {
        Head(machine, before.Scenario, racks);
        Faults(before);
        foreach (var during in Enum.GetValues<ReadDuring>())
        {
            var rows = before
                .Observables.Where(b => b.Observable.During == during)
                .Select(b => (Before: b, After: after.Of(b.Observable.Id)))
                .Where(p => p.After is not null)
                .Select(p => (string[])[Name(p.Before.Observable), Show(p.Before), Show(p.After!), Shows(p.Before, p.After!) ? "*" : ""])
                .ToList();
            if (rows.Count > 0)
            {
                page.Line();
                page.Table(
                    [words[Wire.WordKey(during)], words["cli.machine.before"], words["cli.machine.after"], ""],
                    rows,
                    new HashSet<int> { 1, 2 }
                );
            }
        }

        page.Line();
        page.Paragraph(words["cli.machine.marked"]);
        Claims();
    }

    /// <summary>Whether the difference is more than gauges and eyes tell.</summary>
    public static bool Shows(Observed before, Observed after) =>
        (before.Value, after.Value) switch
        {
            ({ } a, { } b) => Math.Abs(b.Value - a.Value) >= before.Observable.Threshold,
            (null, null) => false,
            _ => true,
        };

    private void Head(Machine machine, Scenario gone, double racks)
    {
        var scenario = words[$"cli.scenario.{gone.Id}"];
        page.Paragraph(
            gone.Stages.Any(s => s.RacksPerHour > 0)
                ? words.Say(
                    "cli.machine.run-racks",
                    ("machine", machine.Name ?? words[Wire.WordKey(machine.Kind)]),
                    ("scenario", scenario),
                    ("racks", words.Number(racks, 0))
                )
                : words.Say("cli.machine.run", ("machine", machine.Name ?? words[Wire.WordKey(machine.Kind)]), ("scenario", scenario))
        );
    }

    private void Faults(RunResult result)
    {
        foreach (var fault in result.Faults)
        {
            page.Paragraph(words.Say("cli.machine.fault", ("fault", fault.Fault.Id), ("severity", words.Number(fault.Severity, 2))), 2);
        }
    }

    private void Claims()
    {
        page.Line();
        page.Paragraph(words["cli.machine.run-claims"]);
    }

    private string Name(Observable observable) => words[$"observable.{observable.Id}"];

    // No finer than gauges and eyes tell, and one figure of a heat dose, which is all the model knows of it.
    private string Show(Observed o)
    {
        if (o.Value is not { } value)
        {
            return words[$"cli.machine.{Wire.Name(o.Absence)}"];
        }

        var unit = UnitFor(o.Observable, value.Value);
        return $"{Number(o.Observable, value.Value, unit)}\u00a0{unit.Symbol}".TrimEnd('\u00a0');
    }

    // As on the screen: long times in minutes.
    private static Unit UnitFor(Observable observable, double value) =>
        observable.Unit == Units.Second && value >= LongSeconds ? Units.Minute : observable.Unit;

    private string Number(Observable observable, double value, Unit unit)
    {
        var digits = unit == Units.Minute ? 1 : Math.Clamp((int)Math.Ceiling(-Math.Log10(observable.Threshold)), 0, 2);
        return observable.Dimension == Dimension.HeatUnits
            ? words.Number(OneFigure(value), 0)
            : words.Fixed(new Amount(value, observable.Unit).In(unit).Value, digits);
    }

    // Nothing where all draws look alike; in the unit of the value beside it.
    private string Range(Observed o, Band? band)
    {
        if (o.Value is not { } value || band is null)
        {
            return "";
        }

        var unit = UnitFor(o.Observable, value.Value);
        var (low, high) = (Number(o.Observable, band.Low.Value, unit), Number(o.Observable, band.High.Value, unit));
        return low == high ? "" : words.Say("cli.machine.range", ("low", low), ("high", high));
    }

    private static double OneFigure(double value)
    {
        if (value <= 0)
        {
            return 0;
        }

        var ten = Math.Pow(10, Math.Floor(Math.Log10(value)));
        return Math.Round(value / ten) * ten;
    }
}
