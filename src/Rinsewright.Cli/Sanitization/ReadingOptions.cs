using System.CommandLine;
using Rinsewright.Cli;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

namespace Rinsewright.Cli.Sanitization;

/// <summary>Readings typed in: tanks, manifold, pressure, label, thermometer, strip.</summary>
internal sealed class ReadingOptions
{
    private readonly (Option<string?> Option, MeasuringPoint Point, Dimension Dimension, ReadingMethod Method)[] plain =
    [
        (Options.One("--wash", "TEMP"), MeasuringPoint.WashTank, Dimension.Temperature, ReadingMethod.Probe),
        (Options.One("--pumped-rinse", "TEMP"), MeasuringPoint.PumpedRinseTank, Dimension.Temperature, ReadingMethod.Probe),
        (Options.One("--final-rinse", "TEMP"), MeasuringPoint.FinalRinseManifold, Dimension.Temperature, ReadingMethod.Probe),
        (Options.One("--pressure", "PRESSURE"), MeasuringPoint.FinalRinseLine, Dimension.GaugePressure, ReadingMethod.MachineGauge),
        (Options.One("--maximum-thermometer", "TEMP"), MeasuringPoint.WareSurface, Dimension.Temperature, ReadingMethod.MaximumThermometer),
        (Options.One("--chlorine", "STRENGTH"), MeasuringPoint.SanitizingSolution, Dimension.MassConcentration, ReadingMethod.Strip),
        (Options.One("--iodine", "STRENGTH"), MeasuringPoint.SanitizingSolution, Dimension.MassConcentration, ReadingMethod.Strip),
        (Options.One("--quat", "STRENGTH"), MeasuringPoint.SanitizingSolution, Dimension.MassConcentration, ReadingMethod.Strip),
        (Options.One("--ph", "PH"), MeasuringPoint.SanitizingSolution, Dimension.Acidity, ReadingMethod.Strip),
        (Options.One("--solution-temperature", "TEMP"), MeasuringPoint.SanitizingSolution, Dimension.Temperature, ReadingMethod.Probe),
        (Options.One("--hardness", "HARDNESS"), MeasuringPoint.WaterSupply, Dimension.Hardness, ReadingMethod.TestKit),
        (Options.One("--contact-time", "TIME"), MeasuringPoint.SanitizingSolution, Dimension.Duration, ReadingMethod.Stopwatch),
    ];

    private readonly Option<string[]> label = Options.Many("--label", "TEMP=reached|not-reached");

    /// <summary>All of them, in the order of the help.</summary>
    public Option[] All => [.. plain.Take(4).Select(p => p.Option), label, .. plain.Skip(4).Select(p => p.Option)];

    /// <summary>The method that a typed sanitizer strength implies; null where none or several were typed.</summary>
    public string? MethodImplied(ParseResult parsed, Words words)
    {
        var typed = plain
            .Select(p => p.Option)
            .Where(o => o.Name is "--chlorine" or "--iodine" or "--quat" && parsed.GetValue(o) is not null)
            .ToList();
        return typed.Count switch
        {
            0 => null,
            1 => TradeWords.Find(TradeWords.Methods, typed[0].Name.TrimStart('-'), typed[0].Name, words),
            _ => throw new UsageException(words.Say("cli.error.one-sanitizer", ("options", string.Join(", ", typed.Select(o => o.Name))))),
        };
    }

    /// <summary>The readings; the instrument goes with the temperatures where no logger file is there to carry it.</summary>
    public List<ReadingDto> Read(ParseResult parsed, Words words, InstrumentDto? instrument)
    {
        var amounts = new TypedAmounts(parsed, words);
        var readings = new List<ReadingDto>();
        foreach (var (option, point, dimension, method) in plain)
        {
            if (amounts.Read(option, dimension, point) is { } value)
            {
                readings.Add(
                    new ReadingDto(Wire.Name(point), value, Wire.Name(method), dimension == Dimension.Temperature ? instrument : null)
                );
            }
        }

        foreach (var text in parsed.GetValue(label) ?? [])
        {
            readings.Add(Label(text, amounts, words));
        }

        return readings;
    }

    private ReadingDto Label(string text, TypedAmounts amounts, Words words)
    {
        var at = text.LastIndexOf('=');
        bool? reached =
            at < 0
                ? null
                : text[(at + 1)..].Trim().ToLowerInvariant() switch
                {
                    "reached" or "turned" or "yes" => true,
                    "not-reached" or "not-turned" or "no" => false,
                    _ => null,
                };
        return reached is null
            ? throw new UsageException(words.Say("cli.error.label", ("value", text)))
            : new ReadingDto(
                Wire.Name(MeasuringPoint.WareSurface),
                amounts.Read(text[..at], Dimension.Temperature, label.Name, MeasuringPoint.WareSurface),
                Wire.Name(ReadingMethod.IrreversibleLabel),
                Reached: reached
            );
    }
}
