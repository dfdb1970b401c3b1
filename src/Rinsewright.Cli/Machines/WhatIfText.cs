using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Cli.Machines;

/// <summary>What a change does to use, limits and cost, from the settled machine.</summary>
internal sealed class WhatIfText(TextWriter writer, Words words)
{
    private readonly TextPage page = new(writer);

    public void Write(WhatIfSide before, WhatIfSide after)
    {
        page.Line();
        Rows(
            "cli.whatif.per-rack",
            [
                Row("water", before.PerRack.WaterLitre, after.PerRack.WaterLitre, 2, "L"),
                Row("energy", before.PerRack.EnergyKilowattHour, after.PerRack.EnergyKilowattHour, 3, "kWh"),
                Row("detergent", before.PerRack.DetergentGram, after.PerRack.DetergentGram, 2, "g"),
                Row("additive", before.PerRack.RinseAdditiveGram, after.PerRack.RinseAdditiveGram, 2, "g"),
                Row("sanitizer", before.PerRack.SanitizerGram, after.PerRack.SanitizerGram, 2, "g"),
            ]
        );
        page.Line();
        page.Line("  " + words["cli.whatif.limits"]);
        foreach (var (was, now) in before.Limits.Zip(after.Limits).Where(p => p.First.Met is not null || p.Second.Met is not null))
        {
            page.Paragraph($"{Limit(was)}: {Met(was)} → {Met(now)}", 2, 4);
        }

        if (before.Day is { } today && after.Day is { } then)
        {
            page.Line();
            Rows(
                "cli.whatif.day",
                [
                    .. today.Lines.Select(l =>
                        (string[])[words[$"cli.whatif.cost.{l.Id}"], Cost(l), Cost(then.Lines.FirstOrDefault(n => n.Id == l.Id))]
                    ),
                    [words["cli.whatif.total"], Total(today), Total(then)],
                ]
            );
        }
    }

    private void Rows(string title, IReadOnlyList<string[]> rows) =>
        page.Table([words[title], words["cli.machine.before"], words["cli.machine.after"]], rows, new HashSet<int> { 1, 2 });

    private string[] Row(string id, double before, double after, int digits, string unit) =>
        [words[$"cli.whatif.{id}"], $"{words.Fixed(before, digits)}\u00a0{unit}", $"{words.Fixed(after, digits)}\u00a0{unit}"];

    private string Limit(LimitCheck check) =>
        $"{words[Wire.WordKey(check.Limit.Point)]}, {words[Wire.WordKey(check.Limit.Sense)]} {words.Show(Wire.From(check.Limit.Printed[0]))}";

    private string Met(LimitCheck check)
    {
        var value = check.Value is { } v ? words.Show(Wire.From(Rounded(v))) + ", " : "";
        return value
            + words[
                check.Met switch
                {
                    true => "cli.whatif.met",
                    false => "cli.whatif.not-met",
                    _ => "cli.whatif.open",
                }
            ];
    }

    // One figure of a heat dose, whole degrees: no finer than the model knows.
    private static Amount Rounded(Amount a) =>
        a.Unit.Dimension == Dimension.HeatUnits && a.Value > 0
            ? a with
            {
                Value = Math.Round(a.Value / Math.Pow(10, Math.Floor(Math.Log10(a.Value)))) * Math.Pow(10, Math.Floor(Math.Log10(a.Value))),
            }
            : a with
            {
                Value = Math.Round(a.Value),
            };

    private string Cost(CostLine? line)
    {
        if (line is null)
        {
            return "";
        }

        var unit = line.Id switch
        {
            "electricity" or "fuel" => "kWh",
            "water" or "hotWater" => "m³",
            _ => "kg",
        };
        var quantity = $"{words.Fixed(line.Quantity, 2)}\u00a0{unit}";
        return line.Cost is { } cost ? $"{quantity} = {words.Fixed(cost, 2)}" : quantity;
    }

    private string Total(DayCost day) => day.Total is { } total ? words.Fixed(total, 2) : words["cli.whatif.price-missing"];
}
