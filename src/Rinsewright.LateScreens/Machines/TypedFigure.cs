using System.Globalization;
using System.Text.Json.Nodes;
using Rinsewright.Client.Parts;
using Rinsewright.Contracts.Machines;
using Rinsewright.Contracts.Records;
using Rinsewright.Drawing;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;
using MachineReading = Rinsewright.Contracts.Machines.MachineReading;

namespace Rinsewright.Client.Machines;

/// <summary>Figures as a person types them from a plate or a reading.</summary>
public static class TypedFigure
{
    /// <summary>
    /// The figures of a machine that have a field: what is absent has none, and vents are a list without names. Typical ones in the units of the trade, those somebody has
    /// written as they were written.
    /// </summary>
    public static IEnumerable<FigureView> Shown(Machine machine, UnitDisplay units) =>
        MachineFile
            .Figures(machine)
            .Where(f => f.Written is not null && !f.Path.StartsWith("vents", StringComparison.Ordinal))
            .Select(f => f.Basis == Provenance.Typical ? f with { Written = InTrade(f.Written!.Value, units) } : f);

    private static Amount InTrade(Amount amount, UnitDisplay units)
    {
        var si = units == UnitDisplay.Si;
        var unit = amount.Unit.Dimension switch
        {
            Dimension.Speed => si ? Units.MetrePerMinute : Units.FootPerMinute,
            Dimension.Length when amount.Unit == Units.Millimetre && amount.Value >= 25 && !si => Units.Inch,
            _ => Rinsewright.Contracts.Records.Shown.UnitFor(amount.Unit, units),
        };
        return unit == amount.Unit ? amount : new Amount(Math.Round(amount.In(unit).Value, 2), unit);
    }

    /// <summary>The machine with one figure typed anew.</summary>
    /// <param name="machine">The machine as it stands.</param>
    /// <param name="figure">The figure.</param>
    /// <param name="text">What was typed: a number, with its unit or in the figure's own.</param>
    /// <param name="basis">Where it comes from; typical gives back the typical figure of the kind, whatever was typed.</param>
    /// <param name="on">Today.</param>
    public static MachineReading Set(Machine machine, FigureView figure, string text, Provenance basis, DateOnly on)
    {
        if (basis == Provenance.Typical)
        {
            var typical = MachineFile.Figures(TypicalMachines.Of(machine.Kind)).FirstOrDefault(f => f.Path == figure.Path)?.Written;
            text = typical is { } t ? t.ToString() : "none";
        }

        var reading = MachineFile.With(machine, [new MachineChange(figure.Path, Plain(text, figure.Written?.Unit))]);
        return reading.Machine is { } changed && basis != Provenance.Typical
            ? MachineFile.Read(Based(changed, figure.Path, basis, on))
            : reading;
    }

    // A decimal comma becomes a point; a number alone has the unit it had before.
    private static string Plain(string text, Unit? unit)
    {
        var trimmed = text.Trim();
        var end = 0;
        while (end < trimmed.Length && (char.IsAsciiDigit(trimmed[end]) || trimmed[end] is '.' or ',' or '-' or '+'))
        {
            end++;
        }

        var (number, rest) = (trimmed[..end], trimmed[end..].Trim());
        if (DecimalText.Read(number) is { Item1: DecimalReading.Number } read)
        {
            number = read.Item2.ToString("R", CultureInfo.InvariantCulture);
        }

        return rest.Length > 0 || unit is null ? $"{number} {rest}".Trim() : $"{number} {unit.Ucum}";
    }

    private static string Based(Machine machine, string path, Provenance basis, DateOnly on)
    {
        var file = JsonNode.Parse(MachineFile.Write(machine))!;
        var at = path.Split('.').Aggregate<string, JsonNode?>(file, (node, name) => node?[name]);
        if (at is JsonObject figure)
        {
            figure["basis"] = basis == Provenance.Measured ? "measured" : "dataPlate";
            if (basis == Provenance.Measured)
            {
                figure["on"] = on.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            }
            else
            {
                figure.Remove("on");
            }
        }

        return file.ToJsonString();
    }
}
