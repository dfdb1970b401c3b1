using System.CommandLine;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;

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
            amounts.Read(wash, Dimension.Temperature, MeasuringPoint.WashTank),
            amounts.Read(pumpedRinse, Dimension.Temperature, MeasuringPoint.PumpedRinseTank),
            amounts.Read(finalRinse, Dimension.Temperature, MeasuringPoint.FinalRinseManifold),
            amounts.Read(finalRinseMaximum, Dimension.Temperature, MeasuringPoint.FinalRinseManifold),
            amounts.Read(pressureMinimum, Dimension.GaugePressure, MeasuringPoint.FinalRinseLine),
            amounts.Read(pressureMaximum, Dimension.GaugePressure, MeasuringPoint.FinalRinseLine),
            amounts.Read(sanitizerMinimum, Dimension.MassConcentration, MeasuringPoint.SanitizingSolution),
            amounts.Read(sanitizerMaximum, Dimension.MassConcentration, MeasuringPoint.SanitizingSolution)
        );
        return plate == new DataPlateDto() ? null : plate;
    }

    /// <summary>The sanitizer product's label; null where nothing of it was typed.</summary>
    public SanitizerLabelDto? ReadProduct(ParseResult parsed, Words words)
    {
        var amounts = new TypedAmounts(parsed, words);
        var label = new SanitizerLabelDto(
            amounts.Read(productMinimum, Dimension.MassConcentration, MeasuringPoint.SanitizingSolution),
            amounts.Read(productMaximum, Dimension.MassConcentration, MeasuringPoint.SanitizingSolution),
            amounts.Read(productHardness, Dimension.Hardness, MeasuringPoint.SanitizingSolution),
            amounts.Read(productTemperature, Dimension.Temperature, MeasuringPoint.SanitizingSolution),
            amounts.Read(productContact, Dimension.Duration, MeasuringPoint.SanitizingSolution),
            amounts.Read(productAcidity, Dimension.Acidity, MeasuringPoint.SanitizingSolution)
        );
        return label == new SanitizerLabelDto() ? null : label;
    }
}
