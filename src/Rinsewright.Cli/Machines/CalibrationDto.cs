using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Cli.Machines;

/// <summary>What <c>machine calibrate --json</c> prints.</summary>
/// <param name="Schema">Format id.</param>
/// <param name="Figures">Every figure that can be estimated, by id.</param>
/// <param name="Unknown">Figures that stay unknown, with the reading that would tell.</param>
/// <param name="Readings">Readings against the calibrated machine.</param>
/// <param name="Contradictions">Readings that cannot all be right.</param>
/// <param name="Problems">Readings that could not be used.</param>
internal sealed record CalibrationDto(
    string Schema,
    IReadOnlyDictionary<string, CalibratedFigureDto> Figures,
    IReadOnlyList<UnknownFigureDto> Unknown,
    IReadOnlyList<ReadingFitDto> Readings,
    IReadOnlyList<ContradictionDto> Contradictions,
    IReadOnlyList<ReadingProblemDto> Problems
)
{
    public const string CurrentSchema = "rinsewright.machine-calibration/1";

    public static CalibrationDto Of(CalibrationResult result, IReadOnlyList<MachineReading> readings) =>
        new(
            CurrentSchema,
            result.Figures.ToDictionary(f => f.Id, CalibratedFigureDto.Of, StringComparer.Ordinal),
            [.. result.Unknown.Select(u => new UnknownFigureDto(u.Id, u.Kind, u.Part))],
            [
                .. result.Fits.Select(f => new ReadingFitDto(
                    readings[f.Reading].Kind,
                    readings[f.Reading].Part,
                    Wire.From(readings[f.Reading].Value),
                    f.Expected is { } e ? Wire.From(e) : null,
                    f.Off
                )),
            ],
            [.. result.Contradictions.Select(c => new ContradictionDto(Wire.Name(c.Kind), [.. c.Readings.Select(i => readings[i].Kind)]))],
            [.. result.Problems.Select(p => new ReadingProblemDto(readings[p.Reading].Kind, p.Code))]
        );
}

/// <summary>One figure.</summary>
internal sealed record CalibratedFigureDto(AmountDto? Before, double Value, double Low, double High, string Unit, bool Told)
{
    public static CalibratedFigureDto Of(CalibratedFigure f) =>
        new(
            f.Before is { } b ? Wire.From(b) : null,
            f.Value.Value,
            f.Low.In(f.Value.Unit).Value,
            f.High.In(f.Value.Unit).Value,
            f.Value.Unit.Ucum,
            f.Told
        );
}

/// <summary>A figure that stays unknown.</summary>
internal sealed record UnknownFigureDto(string Id, string? WouldTell, string? Part);

/// <summary>A reading against the calibrated machine; <c>off</c> in its standard uncertainties.</summary>
internal sealed record ReadingFitDto(string Kind, string? Part, AmountDto Value, AmountDto? Expected, double Off);

/// <summary>Readings that cannot all be right.</summary>
internal sealed record ContradictionDto(string Kind, IReadOnlyList<string> Readings);

/// <summary>A reading that could not be used.</summary>
internal sealed record ReadingProblemDto(string Kind, string Code);
