using System.Text.Json.Serialization;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Cli.Machines;

/// <summary>What <c>machine check --json</c> prints.</summary>
/// <param name="Schema">Format id.</param>
/// <param name="Sound">Whether the file can be used.</param>
/// <param name="Problems">What cannot be.</param>
internal sealed record MachineCheckDto(string Schema, bool Sound, IReadOnlyList<MachineProblemDto> Problems)
{
    public const string CurrentSchema = "rinsewright.machine-check/1";
}

/// <summary>One problem.</summary>
/// <param name="Path">Place in the file.</param>
/// <param name="Text">The sentence in the language asked for.</param>
/// <param name="Says">Key and values of the sentence.</param>
internal sealed record MachineProblemDto(string Path, string Text, StatementDto Says);

/// <summary>What <c>machine show --json</c> prints.</summary>
/// <param name="Schema">Format id.</param>
/// <param name="Kind">Kind, as in the file.</param>
/// <param name="Name">Name; absent where nobody named it.</param>
/// <param name="Kitchen">Kitchen; absent where not said.</param>
/// <param name="Figures">Every figure with where it comes from.</param>
/// <param name="Healthy">What it should read, healthy, at a usual rate.</param>
/// <param name="Bands">How far that may lie from it, by id: nine of ten draws of what nobody has measured.</param>
internal sealed record MachineShowDto(
    string Schema,
    string Kind,
    string? Name,
    string? Kitchen,
    IReadOnlyList<MachineFigureDto> Figures,
    RunDto Healthy,
    IReadOnlyDictionary<string, BandDto> Bands
)
{
    public const string CurrentSchema = "rinsewright.machine-show/1";
}

/// <summary>One figure.</summary>
/// <param name="Path">Place in the file.</param>
/// <param name="Value">As written.</param>
/// <param name="Unit">UCUM code.</param>
/// <param name="Basis"><c>measured</c>, <c>dataPlate</c> or <c>typical</c>.</param>
/// <param name="Source">Reading or place it was taken from.</param>
/// <param name="On">Day of the reading.</param>
internal sealed record MachineFigureDto(string Path, double Value, string Unit, string Basis, string? Source, DateOnly? On);

/// <summary>A band, in the observable's unit.</summary>
/// <param name="Low">One draw in twenty lies below.</param>
/// <param name="Middle">Half of them lie below.</param>
/// <param name="High">One in twenty lies above.</param>
/// <param name="Unit">UCUM code.</param>
internal sealed record BandDto(double Low, double Middle, double High, string Unit)
{
    public static BandDto Of(Band band) => new(band.Low.Value, band.Middle.Value, band.High.Value, band.Observable.Unit.Ucum);
}

/// <summary>JSON of the machine commands.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull
)]
[JsonSerializable(typeof(MachineCheckDto))]
[JsonSerializable(typeof(MachineShowDto))]
[JsonSerializable(typeof(RunDto))]
[JsonSerializable(typeof(WhatIfDto))]
[JsonSerializable(typeof(CalibrationDto))]
internal sealed partial class MachinesJson : JsonSerializerContext;
