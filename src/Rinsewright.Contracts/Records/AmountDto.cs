namespace Rinsewright.Contracts.Records;

/// <summary>A value with its UCUM unit, as it travels.</summary>
public sealed record AmountDto(double Value, string Unit);

/// <summary>A value with its bounds.</summary>
public sealed record BoundedDto(double Value, double Low, double High);

/// <summary>A citation as it travels; <c>Basis</c> in camel case, for example <c>commonPractice</c>.</summary>
public sealed record CitationDto(string Source, string Locator, string Title, string? Jurisdiction, string? Edition, string Basis);

/// <summary>A statement as it travels: key and values; the words are in the language files.</summary>
public sealed record StatementDto(string Key, IReadOnlyList<StatementValueDto> Values);

/// <summary>One value of a statement: exactly one of the fields besides the name is set.</summary>
public sealed record StatementValueDto(
    string Name,
    AmountDto? Amount = null,
    double? Number = null,
    string? Text = null,
    DateTime? Time = null,
    string? Word = null,
    CitationDto? Citation = null,
    StatementDto? Statement = null,
    DateOnly? Date = null
);

/// <summary>An instrument as it travels.</summary>
public sealed record InstrumentDto(
    string Name,
    AmountDto? Uncertainty = null,
    DateOnly? CalibratedOn = null,
    DateOnly? CalibrationDue = null,
    AmountDto? Division = null,
    string? Serial = null
);

/// <summary>A reading as it travels; point and method in camel case, for example <c>finalRinseManifold</c>, <c>irreversibleLabel</c>.</summary>
public sealed record ReadingDto(
    string Point,
    AmountDto Value,
    string Method,
    InstrumentDto? Instrument = null,
    DateTimeOffset? At = null,
    bool? Reached = null,
    string? Lot = null,
    DateOnly? Expires = null
);
