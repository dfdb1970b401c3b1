using System.CommandLine;
using System.Globalization;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Cli.Sanitization;

/// <summary>Reads what was typed after an option; what cannot be read is refused with the option's name and an example.</summary>
internal sealed class TypedAmounts(ParseResult parsed, Words words)
{
    /// <summary>The amount of an option about a place; null where the option is absent.</summary>
    public AmountDto? Read(Option<string?> option, Dimension dimension, MeasuringPoint point = MeasuringPoint.Unknown) =>
        parsed.GetValue(option) is { } text ? Read(text, dimension, option.Name, point) : null;

    /// <summary>An amount in a piece of what was typed.</summary>
    public AmountDto Read(string text, Dimension dimension, string option, MeasuringPoint point = MeasuringPoint.Unknown)
    {
        if (!AmountText.TryParse(text, dimension, out var amount, out var problem))
        {
            throw Refused(option, words.Say(problem!.Key, ("text", problem.Text), ("example", Example(dimension))));
        }

        var refusal = dimension == Dimension.TemperatureDifference ? TypedRange.AccuracyRefusal(amount) : TypedRange.Refusal(point, amount);
        return refusal is null ? Wire.From(amount) : throw Refused(option, words.Say(Wire.From(refusal)));
    }

    private UsageException Refused(string option, string why) => new(words.Say("cli.error.option", ("option", option), ("problem", why)));

    /// <summary>The date of an option; null where the option is absent.</summary>
    public DateOnly? Date(Option<string?> option)
    {
        if (parsed.GetValue(option) is not { } text)
        {
            return null;
        }

        return DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : throw new UsageException(words.Say("cli.error.date", ("option", option.Name), ("value", text)));
    }

    private static string Example(Dimension dimension) =>
        dimension switch
        {
            Dimension.Temperature => "182 F",
            Dimension.TemperatureDifference => "0.9 F",
            Dimension.GaugePressure => "20 psi",
            Dimension.MassConcentration => "50 mg/L",
            Dimension.Hardness => "120 mg/L",
            Dimension.Acidity => "7.5",
            _ => "10 s",
        };
}
