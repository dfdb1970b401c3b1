using System.CommandLine;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Cli.Sanitization;

/// <summary>What is printed on the machine's data plate and on the sanitizer's label.</summary>
internal sealed class PlateOptions
{
    private readonly Option<string?> wash = Options.One("--plate-wash", "TEMP");
    private readonly Option<string?> pumpedRinse = Options.One("--plate-pumped-rinse", "TEMP");
    private readonly Option<string?> finalRinse = Options.One("--plate-final-rinse", "TEMP");
    private readonly Option<string?> finalRinseMaximum = Options.One("--plate-final-rinse-max", "TEMP");
    private readonly Option<string?> pressureMinimum = Options.One("--plate-pressure-min", "PRESSURE");
    private readonly Option<string?> pressureMaximum = Options.One("--plate-pressure-max", "PRESSURE");
    private readonly Option<string?> sanitizerMinimum = Options.One("--plate-sanitizer-min", "STRENGTH");
    private readonly Option<string?> sanitizerMaximum = Options.One("--plate-sanitizer-max", "STRENGTH");
    private readonly Option<string?> productMinimum = Options.One("--product-min", "STRENGTH");
    private readonly Option<string?> productMaximum = Options.One("--product-max", "STRENGTH");
    private readonly Option<string?> productHardness = Options.One("--product-hardness-max", "HARDNESS");
    private readonly Option<string?> productTemperature = Options.One("--product-temperature-min", "TEMP");
    private readonly Option<string?> productContact = Options.One("--product-contact-min", "TIME");
    private readonly Option<string?> productAcidity = Options.One("--product-ph-max", "PH");

    public Option[] Plate =>
        [wash, pumpedRinse, finalRinse, finalRinseMaximum, pressureMinimum, pressureMaximum, sanitizerMinimum, sanitizerMaximum];

    public Option[] Product => [productMinimum, productMaximum, productHardness, productTemperature, productContact, productAcidity];

    /// <summary>The data plate; null where nothing of it was typed.</summary>
    public DataPlateDto? ReadPlate(ParseResult parsed, Words words)
    {
        var amounts = new TypedAmounts(parsed, words);
        var plate = new DataPlateDto(
            amounts.Read(wash, Dimension.Temperature),
            amounts.Read(pumpedRinse, Dimension.Temperature),
            amounts.Read(finalRinse, Dimension.Temperature),
            amounts.Read(finalRinseMaximum, Dimension.Temperature),
            amounts.Read(pressureMinimum, Dimension.GaugePressure),
            amounts.Read(pressureMaximum, Dimension.GaugePressure),
            amounts.Read(sanitizerMinimum, Dimension.MassConcentration),
            amounts.Read(sanitizerMaximum, Dimension.MassConcentration)
        );
        return plate == new DataPlateDto() ? null : plate;
    }

    /// <summary>The sanitizer product's label; null where nothing of it was typed.</summary>
    public SanitizerLabelDto? ReadProduct(ParseResult parsed, Words words)
    {
        var amounts = new TypedAmounts(parsed, words);
        var label = new SanitizerLabelDto(
            amounts.Read(productMinimum, Dimension.MassConcentration),
            amounts.Read(productMaximum, Dimension.MassConcentration),
            amounts.Read(productHardness, Dimension.Hardness),
            amounts.Read(productTemperature, Dimension.Temperature),
            amounts.Read(productContact, Dimension.Duration),
            amounts.Read(productAcidity, Dimension.Acidity)
        );
        return label == new SanitizerLabelDto() ? null : label;
    }
}
