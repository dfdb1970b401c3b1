using System.Text.Json.Serialization;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Drawing.Bench;
using Rinsewright.Engine.Bench;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Cli.Bench;

/// <summary>What <c>bench --json</c> prints.</summary>
/// <param name="Schema">Format id.</param>
/// <param name="Tool">Tool.</param>
/// <param name="Inputs">Figures it was worked with, usual ones included.</param>
/// <param name="Choices">Choices it was worked with.</param>
/// <param name="Usual">Ids of inputs and choices that are usual figures: nobody typed them and no machine says them.</param>
/// <param name="Results">Figures it gives, by id.</param>
/// <param name="Steps">Working.</param>
/// <param name="Notes">What the figures say and assume, in the language asked for.</param>
/// <param name="Cautions">What can hurt, in the language asked for.</param>
/// <param name="Sensitivities">Change of the first result for a change of each figure.</param>
internal sealed record BenchDto(
    string Schema,
    string Tool,
    IReadOnlyDictionary<string, AmountDto> Inputs,
    IReadOnlyDictionary<string, string> Choices,
    IReadOnlyList<string> Usual,
    IReadOnlyDictionary<string, BenchResultDto> Results,
    IReadOnlyList<BenchStepDto> Steps,
    IReadOnlyList<BenchNoteDto> Notes,
    IReadOnlyList<BenchNoteDto> Cautions,
    IReadOnlyList<BenchSensitivityDto> Sensitivities
)
{
    public const string CurrentSchema = "rinsewright.bench/1";

    public static BenchDto Of(
        BenchTool tool,
        BenchInput typed,
        BenchAnswer answer,
        IReadOnlySet<string> taken,
        Words words,
        UnitDisplay units
    )
    {
        var input = BenchShown.Turned(tool, typed, units);
        BenchNoteDto Note(Engine.Records.Statement s) => new(s.Key, words.Say(Wire.From(s)));
        return new BenchDto(
            CurrentSchema,
            tool.Id,
            tool.Fields.Where(f => tool.Asks(f, input) && input.Find(f.Id) is not null)
                .ToDictionary(f => f.Id, f => Wire.From(input.Find(f.Id)!.Value), StringComparer.Ordinal),
            tool.Choices.Where(c => tool.Asks(c, input))
                .ToDictionary(c => c.Id, c => input.FindChoice(c.Id) ?? c.Usual, StringComparer.Ordinal),
            [.. taken.Order(StringComparer.Ordinal)],
            answer.Results.ToDictionary(r => r.Id, r => BenchResultDto.Of(r, units), StringComparer.Ordinal),
            [.. answer.Steps.Select(s => new BenchStepDto(s.Formula, s.Equation, s.Source, BenchWords.Source(words, s.Source)))],
            [.. answer.Notes.Select(Note)],
            [.. answer.Cautions.Select(Note)],
            [
                .. tool.Sensitivities(input, u => Shown.UnitFor(u, units))
                    .Select(s => new BenchSensitivityDto(s.Field, Wire.From(s.Step), Wire.From(s.Change))),
            ]
        );
    }
}

/// <summary>A figure; value absent where it cannot be told.</summary>
internal sealed record BenchResultDto(double? Value, string? Unit, double? Low, double? High)
{
    public static BenchResultDto Of(BenchResult r, UnitDisplay units)
    {
        Amount? Turned(Amount? amount) => amount?.In(Shown.UnitFor(amount.Value.Unit, units));
        var value = Turned(r.Value);
        return new(value?.Value, value?.Unit.Ucum, Turned(r.Low)?.Value, Turned(r.High)?.Value);
    }
}

/// <summary>A line of the working; <c>source</c> is a stable key, <c>cited</c> says it in the language asked for.</summary>
internal sealed record BenchStepDto(string Formula, string Equation, string Source, string Cited);

/// <summary>A note with its stable key.</summary>
internal sealed record BenchNoteDto(string Key, string Text);

/// <summary>What the first result hangs on.</summary>
internal sealed record BenchSensitivityDto(string Field, AmountDto Step, AmountDto Change);

/// <summary>JSON of the Bench.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull
)]
[JsonSerializable(typeof(BenchDto))]
internal sealed partial class BenchJson : JsonSerializerContext;
