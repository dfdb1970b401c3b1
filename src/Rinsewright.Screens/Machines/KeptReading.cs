using System.Text.Json.Serialization;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Client.Machines;

/// <summary>A reading kept with its machine.</summary>
/// <param name="Kind">Id of its kind.</param>
/// <param name="Value">What was read.</param>
/// <param name="On">Day.</param>
/// <param name="Part">Tank or <c>booster</c>; null where the kind belongs to none.</param>
/// <param name="From">Temperature at the start; null where the kind times no change.</param>
/// <param name="To">Temperature at the end.</param>
/// <param name="Over">Time it took.</param>
/// <param name="RacksPerHour">Racks an hour meanwhile.</param>
public sealed record KeptReading(
    string Kind,
    AmountDto Value,
    DateOnly On,
    string? Part = null,
    AmountDto? From = null,
    AmountDto? To = null,
    AmountDto? Over = null,
    double? RacksPerHour = null
)
{
    /// <summary>As the engine takes it.</summary>
    [JsonIgnore]
    public Engine.Machines.MachineReading Plain =>
        new(Kind, Wire.To(Value, "value"), On)
        {
            Part = Part,
            From = Wire.ToOptional(From, "from"),
            To = Wire.ToOptional(To, "to"),
            Over = Wire.ToOptional(Over, "over"),
            RacksPerHour = RacksPerHour,
        };

    /// <summary>The observable that reads the same thing; null where none does.</summary>
    [JsonIgnore]
    public Observable? SameAs =>
        (Kind, Part) switch
        {
            ("tankTemperature", "wash") => Observables.WashTankTemperature,
            ("tankTemperature", "rinse") => Observables.RinseTankTemperature,
            ("tankTemperature", "prewash") => Observables.PrewashTankTemperature,
            ("finalRinseTemperature", _) => Observables.FinalRinseTemperature,
            ("rinsePressure", _) => Observables.FinalRinsePressure,
            ("fillTime", "wash") => Observables.FillTime,
            _ => null,
        };

    /// <summary>Parts of a machine that a kind of reading may belong to.</summary>
    public static IReadOnlyList<string> Parts(ReadingKind kind, Machine machine) =>
        kind.Part switch
        {
            ReadingPart.Tank => [.. machine.Tanks.Select(t => t.Id)],
            ReadingPart.FilledTank => [.. machine.Tanks.Where(t => t.Fill is not null).Select(t => t.Id)],
            ReadingPart.HeatedTank => [.. machine.Tanks.Where(t => t.Heater is not null).Select(t => t.Id)],
            ReadingPart.Heater =>
            [
                .. machine.Tanks.Where(t => t.Heater is not null).Select(t => t.Id),
                .. machine.Booster is null ? Array.Empty<string>() : ["booster"],
            ],
            _ => [],
        };
}
