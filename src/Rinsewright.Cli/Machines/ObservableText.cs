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

    /// <summary>One run.</summary>
    public void Write(Machine machine, RunResult result, double racks)
    {
        Head(machine, result, racks);
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
        Head(machine, before, racks);
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

    private void Head(Machine machine, RunResult result, double racks)
    {
        var scenario = words[$"cli.scenario.{result.Scenario.Id}"];
        page.Paragraph(
            result.Scenario.Stages.Any(s => s.RacksPerHour > 0)
                ? words.Say(
                    "cli.machine.run-racks",
                    ("machine", machine.Name ?? words[Wire.WordKey(machine.Kind)]),
                    ("scenario", scenario),
                    ("racks", words.Number(racks, 0))
                )
                : words.Say("cli.machine.run", ("machine", machine.Name ?? words[Wire.WordKey(machine.Kind)]), ("scenario", scenario))
        );
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

        // As on the screen: long times in minutes.
        if (value.Unit == Units.Second && value.Value >= LongSeconds)
        {
            return $"{words.Fixed(value.In(Units.Minute).Value, 1)}\u00a0{Units.Minute.Symbol}";
        }

        var digits = Math.Clamp((int)Math.Ceiling(-Math.Log10(o.Observable.Threshold)), 0, 2);
        var number =
            value.Unit.Dimension == Dimension.HeatUnits ? words.Number(OneFigure(value.Value), 0) : words.Fixed(value.Value, digits);
        return $"{number}\u00a0{value.Unit.Symbol}".TrimEnd('\u00a0');
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
