using Rinsewright.Contracts.Records;

namespace Rinsewright.Contracts.Sanitization;

/// <summary>
/// What a person sets for a proof, the same for the browser, the server and the command line. Machine: <c>stationaryRackSingleTemperature</c>,
/// <c>stationaryRackDualTemperature</c>, <c>singleTankConveyor</c>, <c>multitankConveyor</c>. Method: <c>hotWater</c>, <c>chlorine</c>, <c>iodine</c>,
/// <c>quaternaryAmmonium</c>. Everything absent is either read from the file or said to be assumed.
/// </summary>
public sealed record ProofRequest(
    string Machine = "multitankConveyor",
    string Method = "hotWater",
    string RuleSet = "fda-food-code",
    string? RuleSetJson = null,
    DataPlateDto? Plate = null,
    SanitizerLabelDto? Label = null,
    InstrumentDto? Instrument = null,
    IReadOnlyList<ReadingDto>? Readings = null,
    DialectOverrides? Dialect = null,
    IReadOnlyList<ChannelOverride>? Channels = null,
    string Language = "en"
);

/// <summary>Data plate figures; absent where the plate does not say.</summary>
public sealed record DataPlateDto(
    AmountDto? WashMinimum = null,
    AmountDto? PumpedRinseMinimum = null,
    AmountDto? FinalRinseMinimum = null,
    AmountDto? FinalRinseMaximum = null,
    AmountDto? PressureMinimum = null,
    AmountDto? PressureMaximum = null,
    AmountDto? SanitizerMinimum = null,
    AmountDto? SanitizerMaximum = null
);

/// <summary>Sanitizer product label; absent where not read.</summary>
public sealed record SanitizerLabelDto(
    AmountDto? Minimum = null,
    AmountDto? Maximum = null,
    AmountDto? WaterHardnessMaximum = null,
    AmountDto? TemperatureMinimum = null,
    AmountDto? ContactTimeMinimum = null,
    AmountDto? AcidityMaximum = null
);

/// <summary>
/// What the person says about the file instead of the reader's own decision. Encoding: <c>utf-8</c>, <c>utf-16le</c>, <c>utf-16be</c>,
/// <c>windows-1252</c>. Separator: <c>comma</c>, <c>semicolon</c>, <c>tab</c>, <c>spaces</c>. DecimalMark: <c>point</c>, <c>comma</c>.
/// DateOrder: <c>ymd</c>, <c>dmy</c>, <c>mdy</c>. UtcOffset: <c>+01:00</c>. HeaderLine: number of the heading line, 0 for none. Unit: UCUM, for every
/// temperature channel that has no own override. FaultMarks: extra values that mean no reading. Sheet: worksheet name.
/// </summary>
public sealed record DialectOverrides(
    string? Encoding = null,
    string? Separator = null,
    string? DecimalMark = null,
    string? DateOrder = null,
    string? UtcOffset = null,
    int? HeaderLine = null,
    string? Unit = null,
    IReadOnlyList<string>? FaultMarks = null,
    string? Sheet = null
);

/// <summary>What the person says about one column. Index counts the file's columns from 0. Role: a measuring point in camel case, or <c>ignore</c>.</summary>
public sealed record ChannelOverride(int Index, string? Name = null, string? Role = null, string? Unit = null);
